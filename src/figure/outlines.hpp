#pragma once

#include "blockwright/figure/tape_figure.hpp"
#include "blockwright/geometry/fair_path.hpp"

#include <vector>

namespace blockwright {

/// One smooth line of a body, in body mm.
struct BodyLine {
  FigureInk ink = FigureInk::Body;
  std::vector<Point> through;
  EndDirections ends = {};
  enum class Sides { One, Both } sides = Sides::Both;  ///< Both: also mirrored
};

/// The body of a figure, and the levels that its tapes begin or end at.
const std::vector<BodyLine>& outline_of(TapeFigure figure);

/// The part of the body that a figure shows, in body mm.
Box frame_of(TapeFigure figure);

}  // namespace blockwright
