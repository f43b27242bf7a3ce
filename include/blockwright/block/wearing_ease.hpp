#pragma once

#include <array>
#include <string_view>

namespace blockwright {

/// How much larger than the body a garment is, and how its armhole lies, in mm; girths are whole
/// and as sewn.
struct WearingEase {
  std::string_view name = {};  ///< one of kWearingEases; empty where lengths were given
  double bust = 0.0;           ///< below 0: smaller than the body
  double waist = 0.0;
  double raise_underarm = 0.0;  ///< up the side seam
  double shoulder_in = 0.0;     ///< the shoulder point, along the shoulder
  bool has_armhole = true;      ///< false: it is cut away, and need not be round
};

/// Eases by the kind of garment, of woven cloth, each from the middle of what is usual. Common
/// practice and from memory, no source.
inline constexpr auto kWearingEases = std::to_array<WearingEase>({
    {"sleeved", 60.0, 25.0},                     // bust 50 to 75, waist 20 to 30
    {"sleeveless", 35.0, 20.0, 12.0, 15.0},      // 30 to 40, 15 to 25; up 10 to 15, in 10 to 20
    {"close", 20.0, 15.0, 12.0, 15.0},           // 15 to 30, 10 to 20; up and in as above
    {"strapless", -20.0, 5.0, 0.0, 0.0, false},  // -40 to 0, 0 to 10
});

/// What may be asked for. The least bust is what a boned bodice takes, the least waist the body
/// itself; from memory. The most are ours: beyond them it is another block.
inline constexpr WearingEase kLeastWearingEase{"", -40.0};
inline constexpr WearingEase kMostWearingEase{"", 150.0, 150.0, 20.0, 40.0};

}  // namespace blockwright
