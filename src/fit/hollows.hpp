#pragma once

#include "halves.hpp"

#include <array>
#include <string>
#include <vector>

namespace blockwright {

// How hollow corrections leave necklines and armholes.

/// What is judged of them.
struct Hollows {
  /// Hollows as shares of the straight line between the ends: of front armhole, back armhole, front
  /// neckline, back neckline.
  std::array<double, 4> shares{};
  double hook = 0.0;  ///< turn_at_end() of the front neckline

  Hollows operator-(const Hollows& other) const;
};
Hollows hollows_of(const HalfBlock& half);

/// What one correction did to them.
struct HollowChange {
  std::string correction;  ///< words_of() it
  Hollows by{};
};

/// Warnings of lines that corrections have made too flat or too deep, and of a front neckline with
/// a hook ("fit.curve"), each of the correction that did most of it.
Problems judge_hollows(const Redrawn& half, const std::vector<HollowChange>& corrections);

}  // namespace blockwright
