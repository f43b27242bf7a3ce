#pragma once

#include "blockwright/block/dart_position.hpp"
#include "blockwright/pattern/pattern.hpp"

#include <optional>
#include <string>
#include <vector>

namespace blockwright {

/// Dart moves by rotation. All of them keep, exactly but for rounding (1e-9 mm, 1e-9 rad):
/// 1. the sum of the angles at each apex; 2. the length of every edge with its darts closed, and of
/// edges that no mouth touched also as cut; 3. the area of the piece with its darts closed; 4. the
/// centre waist, which never turns, and with it the grain. A move and its reverse leave the outline
/// as it was. Darts are moved whole to their apex; the dart point only says where stitching ends.
///
/// All throw InputError with one of these codes, and change nothing then:
/// "dart.unknown" (no such piece, dart or place; names what there is), "dart.place" (a fraction or
/// distance off the edge, or within 5 mm of its corners), "dart.part" (a part or an angle that the
/// dart has not got), "dart.blocked" (the way from the apex is blocked by another dart or by the
/// outline; names the nearest place that can be reached). No dart is too wide to be drawn.

/// A wider dart lies better as a seam or as two. Common practice, no source ("over 35 degrees: no
/// single dart"); it is drawn and warned of all the same, with what to do (warning "dart.wide").
inline constexpr Angle kWidestDart = Angle::degrees(35.0);
/// A wider dart is hard to sew. Common practice, no source ("22 to 25 degrees").
inline constexpr Angle kWideToSew = Angle::degrees(25.0);
/// Darts keep this far from the corners of their edge, in mm. Our bound: a notch needs the room.
inline constexpr double kFromCorner = 5.0;

/// One dart moved to another place, in words: `dart` "front.shoulder"; `to` a position of the same
/// piece, with a fraction of its edge or a distance along it where not the usual place is meant:
/// "front.side", "front.side:0.25", "front.side:60mm", "front.side:2.5in", or another dart of the
/// same apex, which then takes the angle up.
struct PivotMove {
  std::string dart;
  std::string to;
  double part = 1.0;                     ///< share of the dart's angle, more than 0, at most 1
  std::optional<Angle> angle = {};       ///< in place of a part
  std::optional<double> hold_back = {};  ///< mm; else by position and bust size
  /// Where the usual place under the underarm lies, in mm down the side; else usual_side_place().
  std::optional<double> side_place = {};
};

/// How far under the underarm a dart opens on a side of that length when no place is asked for, in
/// mm: 60, or half way down a short side. Common practice, no source.
double usual_side_place(double side);

/// A pattern after a move, and what the maker should know of it: notes and warnings (codes
/// "dart.wide", "dart.narrow", "dart.fold", "dart.fullness").
struct MovedDarts {
  Pattern pattern;
  Problems remarks;
};

/// What is hard to sew of the darts as they are, whoever put them there: a mouth wider than usual
/// at its place, or a wide angle, above all on a short leg (warning "dart.wide"); a mouth under 6
/// mm (note "dart.narrow"). A move says the same of the darts that it changed. Panels are not
/// looked at.
Problems hard_to_sew(const Pattern& pattern);

/// `cup` is bust girth less underbust girth, in mm.
MovedDarts pivot(const Pattern& pattern, const PivotMove& move, double cup = kUsualCup);

/// How several darts on one edge lie to each other.
enum class DartGroup {
  Fanned,    ///< all point to the one apex
  Parallel,  ///< side by side, each with an apex of its own near the old one
};

/// One dart made several on its edge, `spacing` mm apart (measured with the darts closed), in the
/// shares given. Parallel darts turn about apexes of their own, chosen so that together they turn
/// the cloth exactly as the one dart did; merging them gives it back.
struct SplitMove {
  std::string dart;
  std::vector<double> shares = {0.5, 0.5};  ///< each more than 0, sum 1, at most 6
  double spacing = 25.0;                    ///< mm, 10 to 80
  DartGroup group = DartGroup::Fanned;
};
MovedDarts split(const Pattern& pattern, const SplitMove& move);

/// Two darts made one, at the place of the second: of one apex wherever they open, or neighbours
/// on one edge. Throws also "dart.apart": two apexes and not neighbours.
struct MergeMove {
  std::string dart;  ///< goes
  std::string into;  ///< stays, wider
};
MovedDarts merge(const Pattern& pattern, const MergeMove& move, double cup = kUsualCup);

/// Sets where the stitching of a dart ends: `hold_back` mm short of its apex, which stays what the
/// dart turns about. Throws also "dart.place": not from 0 to half of the leg.
struct PointMove {
  std::string dart;
  double hold_back = 0.0;
};
MovedDarts set_dart_point(const Pattern& pattern, const PointMove& move);

/// Sets which way the folded dart is pressed, by its leg that lies further there.
struct PressMove {
  enum class Towards { Centre, Side, Down, Up };
  std::string dart;
  Towards towards = Towards::Centre;
};
MovedDarts press(const Pattern& pattern, const PressMove& move);

}  // namespace blockwright
