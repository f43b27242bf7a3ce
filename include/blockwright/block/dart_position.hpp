#pragma once

#include "blockwright/pattern/piece.hpp"

#include <string_view>

namespace blockwright {

/// Where on its edge a dart opens when no place is asked for.
enum class UsualPlace {
  Middle,
  AtNotch,        ///< the edge's notch, as on an armhole
  UnderApex,      ///< straight under or over the apex, as on a waist
  LevelWithApex,  ///< as on a centre edge, or on the back armhole
  UnderUnderarm,  ///< a little below the underarm
  OverWaist,      ///< a little above the waist: a french dart
};

/// A place where a dart may open, by its trade name: "side", "neck".
struct DartPosition {
  std::string_view name;  ///< "neck", "shoulder", "armhole", "side", "french", "waist" ...
  std::string_view edge;
  /// Fractions and distances along the edge count from the trade's end: the shoulder from the neck,
  /// the neckline from the centre, side and armhole from the underarm, the waist from the centre.
  bool from_path_end = false;
  /// Waist, shoulder and neck darts are pressed towards the centre, the others down.
  Leg pressed_to = Leg::First;
  UsualPlace usual = UsualPlace::Middle;
  /// How far the stitching stops short of the apex, for a small, a usual and a full bust, in mm.
  double small_hold_back = 20.0, usual_hold_back = 20.0, full_hold_back = 20.0;
  /// Wider mouths than this, in mm, rather become two darts or a seam.
  double widest_mouth = 40.0;
};

/// Narrower than this at the mouth, in mm, a dart is not drawn, and none is left by a fitting: it
/// lies below the pencil's width. Ours.
inline constexpr double kLeastMouth = 0.5;

/// Bust girth less underbust girth, in mm, of the women of the 1988 survey: what counts as usual.
inline constexpr double kUsualCup = 137.0;

/// Hold-back for a bust girth `cup` mm over the underbust: the usual one at kUsualCup, the small
/// bust's at 80 mm and less, the full bust's at 200 mm and more, straight between.
double hold_back(const DartPosition& position, double cup);

/// A dart of a block, named and pressed as its position is, its point held back and its peak drawn.
/// The seam arrives at the inner leg along `seam`.
Dart drafted_dart(const DartPosition& position, Point apex, const std::array<Point, 2>& legs,
                  double hold_back, Vec seam);

/// The dart with its point on the line from the apex to the middle of the mouth, `by` mm short of
/// the apex, but with at least half of its legs stitched.
Dart held_back(Dart dart, double by);

}  // namespace blockwright
