#pragma once

#include "closed_top.hpp"

namespace blockwright {

/// A piece and the upper edge that is drawn on it with the darts that it crosses closed.
struct DrawnTop {
  Top top;
  TopCut cut;
  ClosedTop closed;
  TopSpan span;
  TopLine line;
  double moved_out = 0.0;  ///< how far the strap was moved off a dart
};

/// How far off the centre the middle of the strap lies, in mm.
double strap_off_centre(const TopSpan& span);

/// Refuses a design that gives something twice, or straps that are none.
void require_top_design(const TopEdgeDesign& design);

/// How high the edge ends at the centre front, over the level of the bust point, in mm.
double over_bust_level(const Top& top, const TopEdgeDesign& design);
/// How far down the centre the edge ends, in mm from the neck.
double down_centre_front(const Top& top, const TopEdgeDesign& design);
double down_centre_back(const Top& top, const TopEdgeDesign& design);

DrawnTop drawn_front(const Top& top, const TopEdgeDesign& design);
/// `front_strap`: how far off the centre the strap is set in front, in mm.
DrawnTop drawn_back(const Top& top, const TopEdgeDesign& design, double front_strap);

}  // namespace blockwright
