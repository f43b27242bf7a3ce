#pragma once

#include "halves.hpp"

#include <array>
#include <string>
#include <vector>

namespace blockwright {

// How hollow corrections leave necklines and armholes.

/// Of an armhole or a neckline, its hollow as a share of the straight line between its ends: of
/// front armhole, back armhole, front neckline, back neckline.
using HollowShares = std::array<double, 4>;
HollowShares hollow_shares(const HalfBlock& half);

/// What one correction did to them.
struct HollowChange {
  std::string correction;  ///< words_of() it
  HollowShares by{};
};

/// Warnings of lines that corrections have made too flat or too deep ("fit.curve"), each of the
/// correction that did most of it.
Problems judge_hollows(const Redrawn& half, const std::vector<HollowChange>& corrections);

}  // namespace blockwright
