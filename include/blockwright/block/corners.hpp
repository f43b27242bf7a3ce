#pragma once

#include "blockwright/block/kinds.hpp"

#include <string>
#include <vector>

namespace blockwright {

/// How far a corner may be off and still be sewn as it was meant, in degrees. Ours: a right angle
/// by the set square, half a turn by eye.
inline constexpr double kSquareWithin = 1.0;
inline constexpr double kSmoothWithin = 3.0;

/// A corner that must be square, or two that a seam brings together to half a turn.
struct BlockCorner {
  std::string where;  ///< "front neckline and centre", "armhole at the closed side"
  double degrees = 0.0;
  double wanted = 0.0;
  double within = 0.0;

  [[nodiscard]] double off() const { return degrees - wanted; }
};

/// Every corner that the kinds of the pieces ask for, the square ones first. Seams of several edges
/// and pieces of no kind are left out.
std::vector<BlockCorner> block_corners(const Pattern& pattern);

}  // namespace blockwright
