#pragma once

#include "blockwright/geometry/box.hpp"
#include "blockwright/geometry/path.hpp"

#include <vector>

namespace blockwright {

/// Shapes that marks are made of, in mm.

/// A circle as four cubics, anticlockwise from its rightmost point; true to 0.03 % of the radius.
Path circle(Point centre, double radius);
/// The four sides of a box, anticlockwise from its lower left corner, closed.
Path rectangle(const Box& box);
Box square_at(Point lower_left, double side);
/// Two strokes that cross upright in the middle.
std::vector<Path> cross_mark(Point centre, double size);
/// The head of an arrow as one path: barb, tip, barb. `pointing` need not be of unit length.
Path arrow_head(Point tip, Vec pointing, double size);

}  // namespace blockwright
