#pragma once

#include "drawn_top.hpp"

namespace blockwright {

/// The tops that a strap joins.
struct StrapEnds {
  const DrawnTop& front;
  const DrawnTop& back;
};

/// The straight way on the body from strap to strap over the shoulder that was cut away, in mm.
double way_over_shoulder(const StrapEnds& ends);

/// A strap of double width, to be folded lengthwise, for the side of the body that the ending says
/// (sided_name()), or for both. It stands upright at x > 0, its grain along.
Piece strap_piece(const StrapDesign& design, const StrapEnds& ends, std::string_view ending);

}  // namespace blockwright
