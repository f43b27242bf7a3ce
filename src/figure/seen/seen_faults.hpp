#pragma once

#include "blockwright/figure/seen_figure.hpp"
#include "outlines.hpp"

#include <vector>

namespace blockwright {

/// One mark of a fault, in body mm as body_points.hpp has them.
struct SeenMark {
  enum class Kind {
    Crease,  ///< a tight fold
    Fold,    ///< a loose one
    Edge,    ///< an edge or a level line where it lies on the body
    Arrow,
  };
  Kind kind = Kind::Crease;
  Point from = {}, to = {};
  double bow = 0.0;  ///< of an edge: how far its middle lies to the left of its chord
  BodyLine::Sides sides = BodyLine::Sides::Both;
};

/// What is seen, and from where.
struct SeenFault {
  CorrectionRow row;
  int sign;
  TapeFigure view;  ///< Front, Back or Side
  ShortList<SeenMark, 8> marks;
  std::string_view place = {};  ///< empty: wherever no other line of the table has it
};

const SeenFault& fault_of(const SeenRow& seen);

/// The body of a view from neck to waist, and the toile on it.
const std::vector<BodyLine>& body_in_toile(TapeFigure view);
Box toile_frame(TapeFigure view);

}  // namespace blockwright
