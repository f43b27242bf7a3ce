#pragma once

#include "blockwright/geometry/path.hpp"

#include <span>

namespace blockwright {

/// Directions at the ends of a line; the null vector where the line itself decides.
struct EndDirections {
  Vec leaving = {}, arriving = {};
};

/// A smooth line through the points. At each point it runs along the circle through it and its
/// neighbours. Requires: at least two points, none twice in a row.
Path smooth_through(std::span<const Point> points, const EndDirections& ends);

}  // namespace blockwright
