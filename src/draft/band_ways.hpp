#pragma once

#include "blockwright/draft/bands.hpp"

#include <array>
#include <vector>

namespace blockwright {

/// A way in which a body's numbers could be off: by how much each is moved, by one SD in all.
using BodyWay = std::array<double, kMeasurementCount>;

/// Ways that do not depend on one another and together make the spread: the columns of its Cholesky
/// factor. What has no spread of its own has no way.
std::vector<BodyWay> ways_of(const BodySpread& spread);

/// What each way does, or how two ways do it together.
using WayVector = std::vector<double>;
using WayTable = std::vector<WayVector>;

/// The reading that would bring all places closest, and the one after it. `moves` has a row for
/// each way: how far it moves each place.
std::vector<Retake> to_take_first(const Body& body, const std::vector<BodyWay>& ways,
                                  const WayTable& moves);

}  // namespace blockwright
