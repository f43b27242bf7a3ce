#pragma once

#include "blockwright/dart/pivot.hpp"
#include "blockwright/pattern/pattern.hpp"

#include <optional>

namespace blockwright {

/// Where a bodice ends; lengths in mm. One of the first two is given, or it is the waist.
struct HemDesign {
  std::optional<double> above_waist;       ///< along centre and side seam, up from the waist
  std::optional<double> below_bust_point;  ///< down from the level of the bust point
  /// Along the side seams, up from the waist; as at the centre front without it.
  std::optional<double> side_above_waist = {};
  /// Along the centre back, up from the waist; as at the centre front without it.
  std::optional<double> back_above_waist = {};
  /// The point of each front, so far under the level at the centre front; 0: none.
  double point_drop = 0.0;
  double point_from_centre = 0.0;  ///< square from the centre line; 0: one point, on it
};

/// A hem this near to the waist all round is the waist. Ours: less cannot be sewn apart from it.
inline constexpr double kLeastAboveWaist = 5.0;
/// A hem keeps this far off the underarm, in mm. Ours: less leaves no side seam.
inline constexpr double kLeastUnderHem = 40.0;
/// Nearer under the bust point, in mm, a hem rides up on the bust. From memory of handbooks: 80 to
/// 90.
inline constexpr double kUsualUnderBust = 80.0;
/// From centre to side a hem rises or falls by no more than this share of its length. Ours: steeper
/// it hangs from the bust like a bag or bares the side.
inline constexpr double kMostHemSlope = 0.25;
/// A point is at least so deep, and so far from the centre line if it is not on it, in mm. Ours:
/// less is no point.
inline constexpr double kLeastPoint = 5.0;
/// A point keeps this far off a dart that is folded towards it, in mm. Ours.
inline constexpr double kLeastBesidePoint = 10.0;
/// On its way up from a point a hem crosses darts no further than this under the waist, in mm: they
/// are led on straight, while the body grows wider. Ours; at 20 mm it is under 5 mm a half.
inline constexpr double kMostUnderWaist = 20.0;
/// From its point a hem rises no steeper than this against the level. Ours: the tip would curl.
inline constexpr Angle kSteepestPoint = Angle::degrees(60.0);

/// Cuts fronts and backs off along a line above the waist, level or rising or falling from centre
/// to side: the new edge "hem" takes the place of the waist. It is drawn with the darts closed as
/// they are stitched, square to the centre, at the same height of the side seam on both pieces,
/// where the joined hem runs on, and is as smooth as sewn however wide a dart is. Darts keep their
/// stitching lines; what lay below goes.
///
/// With a point the hem of the front falls straight from the centre to it and rises in an arc that
/// ends at the side, or sooner where it would cross a dart too far under the waist.
///
/// A level that is not above the waist leaves the waist as it is, with a note. Throws InputError
/// "garment.hem": two levels, an amount off its limits, no room under the underarm, a piece that is
/// cut into panels, or a hem that a style has drawn already; "dart.blocked" where it would run past
/// the point of a dart.
MovedDarts draw_hem(const Pattern& pattern, const HemDesign& design);

}  // namespace blockwright
