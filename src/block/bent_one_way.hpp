#pragma once

#include "blockwright/geometry/curve.hpp"

namespace blockwright {

/// reshaped(), and the curve goes on bending one way: as the way to the corner of the end tangents
/// grows shorter, handles keep their share of it (`follows` 0) or rather their length (2), but
/// never reach beyond. `out` and `in` are unit vectors.
CubicCurve bent_one_way(const CubicCurve& old, Point from, Vec out, Point to, Vec in,
                        double follows);

}  // namespace blockwright
