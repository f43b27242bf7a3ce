#pragma once

#include "joined_outline.hpp"

#include <optional>
#include <string>
#include <vector>

namespace blockwright {

/// What a line of a facing ends at.
enum class LineEnd {
  AtSeam,     ///< equally far along the shoulder or side as its mate
  OnFold,     ///< square to the fold, wherever it gets there
  AtOpening,  ///< at a centre that is no fold
  AtHem,      ///< wherever it gets to the hem
};

/// One edge of a facing, and what it lies on.
struct FacingRun {
  enum class Kind {
    Sewn,      ///< to a neckline, an armhole or the top edge
    OnFront,   ///< to the front edge beside buttons
    Shoulder,  ///< not sewn to the garment, but to the other facing
  };
  Kind kind = Kind::Sewn;
  std::string edge;  ///< its name on the facing
  EdgeRange range;   ///< of the traced edges
};

struct FacingLines {
  std::vector<Path> runs;  ///< an edge for each run, end to end in the direction of the traced line
  Path outer;              ///< in the same direction
};

/// How the ends of a traced line are finished, and how wide the facing is, in mm.
struct FacingShape {
  LineEnd before = LineEnd::AtSeam, after = LineEnd::AtSeam;
  double width = 0.0, roll = 0.0;
  double front_width = 0.0;  ///< along a front edge
  /// Down a centre that is no fold; without it as far as the outer edge asks for.
  std::optional<double> depth = {};
};

/// The edges of a facing and its outer edge. Nothing where they do not meet what they end at.
std::optional<FacingLines> facing_lines(const TracedEdge& traced,
                                        const std::vector<FacingRun>& runs,
                                        const FacingShape& shape);

}  // namespace blockwright
