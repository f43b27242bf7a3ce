#pragma once

#include "joined_outline.hpp"

#include <optional>

namespace blockwright {

/// What a line of a facing ends at.
enum class LineEnd {
  AtSeam,     ///< equally far along the shoulder or side as its mate
  OnFold,     ///< square to the fold, wherever it gets there
  AtOpening,  ///< at a centre that is no fold
};

struct FacingLines {
  Path edge;   ///< sewn to the garment, in the direction of the traced line
  Path outer;  ///< in the same direction
};

/// How the ends of a traced edge are finished, and how wide the facing is, in mm.
struct FacingShape {
  LineEnd before = LineEnd::AtSeam, after = LineEnd::AtSeam;
  double width = 0.0, roll = 0.0;
};

/// The edge of a facing and its outer edge. Nothing where they do not meet what they end at.
std::optional<FacingLines> facing_lines(const TracedEdge& traced, const FacingShape& shape);

}  // namespace blockwright
