#pragma once

#include "blockwright/geometry/path.hpp"

namespace blockwright_tests {

/// Area of the outline grown by `width` mm, by GEOS (buffer with mitres of limit 2), in mm2.
double buffered_area(const blockwright::Path& closed, double width);
/// True if GEOS finds the flattened outline valid and simple.
bool is_simple_ring(const blockwright::Path& closed);

}  // namespace blockwright_tests
