#pragma once

#include "blockwright/base/angle.hpp"

namespace blockwright {

/// The full-bust move: the side of the front is turned about a hinge at the armhole until it has
/// opened a gap at the bust point.
struct FullBust {
  Angle turn;         ///< of the side part about the hinge, and what the bust darts gain
  double drop = 0.0;  ///< mm that the bust point's lower part comes down by
};

/// The turn that opens `width` mm across at a bust point that lies `aside` mm beside and `below` mm
/// under the hinge: (width, -drop) = (Rot(turn) - 1)(bust point - hinge). To first order turn =
/// width / below and drop = width aside / below. A negative width overlaps (the small-bust move).
/// Exact to rounding. Requires: below > 0, and the width can be reached: |width| < below.
/// Source: plane geometry; the trade's worked numbers in tests/fit.
FullBust full_bust(double width, double aside, double below);

}  // namespace blockwright
