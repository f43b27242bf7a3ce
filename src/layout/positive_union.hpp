#pragma once

#include "blockwright/geometry/path.hpp"

namespace blockwright {

/// The outer boundary of everything that a closed path winds round anticlockwise: loops that run
/// clockwise are dropped. The path is flattened to `tolerance` mm; of several boundaries the
/// largest is taken. The one place that knows the polygon library.
Path positive_union(const Path& closed, double tolerance);

}  // namespace blockwright
