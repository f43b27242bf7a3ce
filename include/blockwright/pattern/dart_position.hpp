#pragma once

#include "blockwright/pattern/piece.hpp"

#include <string>
#include <string_view>
#include <vector>

namespace blockwright {

/// A place where a dart may open, by its trade name: "front.side", "back.neck".
struct DartPosition {
  std::string_view piece;
  std::string_view name;  ///< "neck", "shoulder", "armhole", "side", "french", "waist" ...
  std::string_view edge;
  /// Fractions and distances along the edge count from the trade's end: the shoulder from the neck,
  /// the neckline from the centre, side and armhole from the underarm, the waist from the centre.
  bool from_path_end = false;
  /// Waist, shoulder and neck darts are pressed towards the centre, the others down.
  Leg pressed_to = Leg::First;
  /// How far the stitching stops short of the apex, for a small, a usual and a full bust, in mm.
  double small_hold_back = 20.0, usual_hold_back = 20.0, full_hold_back = 20.0;
  /// Wider mouths than this, in mm, rather become two darts or a seam.
  double widest_mouth = 40.0;
};

/// All places, the front's first. Hold-backs, ways of pressing and widest mouths: common practice,
/// no source; hold-backs from memory of handbooks.
const std::vector<DartPosition>& dart_positions();

/// The position of that name (or edge name) on the piece, which may be for one side of the body
/// ("front_left"); null if there is none.
const DartPosition* find_position(std::string_view piece, std::string_view name);

/// Bust girth less underbust girth, in mm, of the women of the 1988 survey: what counts as usual.
inline constexpr double kUsualCup = 137.0;

/// Hold-back for a bust girth `cup` mm over the underbust: the usual one at kUsualCup, the small
/// bust's at 80 mm and less, the full bust's at 200 mm and more, straight between.
double hold_back(const DartPosition& position, double cup);
double hold_back(std::string_view piece, std::string_view position, double cup);

/// The dart with its point on the line from the apex to the middle of the mouth, `by` mm short of
/// the apex, but with at least half of its legs stitched.
Dart held_back(Dart dart, double by);

}  // namespace blockwright
