#pragma once

#include "blockwright/dart/pivot.hpp"
#include "blockwright/pattern/pattern.hpp"

#include <optional>

namespace blockwright {

/// How the armhole of a garment is cut, in mm, alike on both sides of the body. What is left empty
/// follows the shoulder point as far as the armhole needs it (block/armhole.hpp), the front by no
/// less than the back: behind, the arm needs the room.
struct ArmholeDesign {
  double shoulder_in = 0.0;        ///< the shoulder point in along the shoulder
  std::optional<double> front_in;  ///< the across front point in to the centre
  std::optional<double> back_in;   ///< the across back point in to the centre
  double raise = 0.0;              ///< the underarm up along the side seam
  /// How much shorter than cut flat the front edge becomes, so that it lies close.
  double close = 0.0;
};

/// An underarm is raised by at most this, in mm. Ours: more cuts in under any arm.
inline constexpr double kMostUnderarmRaise = 20.0;
/// An across point comes in by at most this, in mm. Ours: more is a halter.
inline constexpr double kMostAcrossIn = 80.0;
/// A front armhole edge becomes at most this much shorter, in mm. Common practice, no source: 6 to
/// 10 mm; more draws in the chest.
inline constexpr double kMostArmholeClose = 15.0;
/// A garment's armhole turns nowhere within less than this, in mm. Ours: a sharper one cannot be
/// faced or bound flat.
inline constexpr double kLeastArmholeRadius = 15.0;

/// Draws the armholes of front and back anew as a whole, as the block's are drawn through their
/// points, from the new underarm to the new shoulder point. Both shoulders and both side seams
/// change by the same, so that they are sewn as before; over them the armhole runs on as it did.
/// Darts that open on the armhole keep their stitching; notches keep their place on the cloth. A
/// note says how long the armholes are now, darts closed.
///
/// What the front edge becomes shorter by `close` is turned into the widest dart of the bust point;
/// a front without one keeps its edge, with a note.
///
/// Throws InputError "garment.armhole": an amount off its limits, with what can be; a shoulder of
/// less than kLeastShoulderLeft, an edge nearer than kLeastOffBust to the bust point
/// (drawn_neckline.hpp), an armhole that turns too sharply, gathers, a dart or panels in the way.
MovedDarts draw_armhole(const Pattern& pattern, const ArmholeDesign& design);

}  // namespace blockwright
