#pragma once

#include "blockwright/dart/pivot.hpp"
#include "blockwright/pattern/pattern.hpp"

#include <optional>

namespace blockwright {

/// Where a bodice ends above the waist; one of the two is given, in mm.
struct HemLevel {
  std::optional<double> above_waist;       ///< along centre and side seam, up from the waist
  std::optional<double> below_bust_point;  ///< down from the level of the bust point
};

/// A hem this near to the waist is the waist. Ours: less cannot be sewn apart from it.
inline constexpr double kLeastAboveWaist = 5.0;
/// A hem keeps this far off the underarm, in mm. Ours: less leaves no side seam.
inline constexpr double kLeastUnderHem = 40.0;
/// Nearer under the bust point, in mm, a hem rides up on the bust. From memory of handbooks: 80 to
/// 90.
inline constexpr double kUsualUnderBust = 80.0;

/// Cuts fronts and backs off along a level line above the waist: the new edge "hem" takes the place
/// of the waist. It is drawn with the darts closed as they are stitched, square to the centre, at
/// the same height of the side seam on both pieces, where the joined hem runs on, and is as smooth
/// as sewn however wide a dart is. Darts keep their stitching lines; what lay below goes.
///
/// A level that is not above the waist leaves the waist as it is, with a note. Throws InputError
/// "garment.hem": no level or two, no room under the underarm, a piece that is cut into panels, or
/// a hem that a style has drawn already; "dart.blocked" where it would run past the point of a
/// dart.
MovedDarts draw_hem(const Pattern& pattern, const HemLevel& level);

}  // namespace blockwright
