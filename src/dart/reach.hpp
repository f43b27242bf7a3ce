#pragma once

#include "blockwright/block/dart_position.hpp"
#include "blockwright/dart/opened.hpp"

#include <optional>
#include <string>

namespace blockwright {

/// What bars the straight way from an apex to a point of the outline, in words ("dart waist", "the
/// outline"), or nothing. Darts of the same apex bar nothing but their mouths.
std::optional<std::string> barrier(const Opened& open, Point apex, Point to);

/// The place on an edge, in whole hundredths of it, that can be reached from the apex and lies
/// nearest to the fraction `wanted` (both from the trade's end), off the corners and off the mouths
/// of darts; nothing if there is none.
std::optional<double> nearest_reachable(const Opened& open, Point apex, std::size_t edge,
                                        const DartPosition& position, double wanted);

}  // namespace blockwright
