#pragma once

#include "words.hpp"

#include <utility>
#include <vector>

namespace blockwright {

/// Where a dart is to go: onto another dart of its apex, or to a free place of an edge.
struct Aim {
  const DartPosition* position = nullptr;
  std::size_t edge = 0;
  double along = 0.0;               ///< mm of the closed edge; of a dart to merge into, its mouth
  std::optional<std::string> onto;  ///< name of the dart that takes the angle up
};

/// Finds the place that is meant. Without a fraction or distance it is the usual place: the middle
/// of shoulder and neckline, the notch of the armhole, 6 cm under the underarm, 4 cm over the waist
/// (french), straight under the apex (waist), level with it (centre); on the side, where a second
/// waist dart is in the way, the nearest place that the dart reaches on that half of the edge; or
/// the dart that the edge already has about the apex. `side_place` as in PivotMove. Throws
/// "dart.unknown", "dart.place".
Aim aim_of(const Opened& open, DartSpot from, const std::string& to,
           std::optional<double> side_place = {});

/// True if a straight way meets another path further than 1e-6 mm from both of its own ends.
bool meets(const Path& way, const Path& other);
/// What bars the straight way from an apex to a point of the outline, in words ("dart waist", "the
/// outline"), or nothing. Darts of the same apex bar nothing but their mouths.
std::optional<std::string> barrier(const Opened& open, Point apex, Point to);
/// The place on the aim's edge, in whole hundredths of it, that can be reached from the apex and
/// lies nearest to the fraction `wanted` (both from the trade's end), off the corners and off the
/// mouths of darts; nothing if there is none.
std::optional<double> nearest_reachable(const Opened& open, Point apex, const Aim& aim,
                                        double wanted);

/// Throws "dart.blocked" if the way from the apex to the aim is barred.
void require_reachable(const Opened& open, DartSpot from, const Aim& aim);

/// The part of a piece between two darts: what lies between the second leg of the first and the
/// first leg of the second, and is cut off by these legs. The centre waist is never in it.
class Part {
 public:
  /// Requires: first < second. Where the darts have two apexes, the part ends at the straight line
  /// between them.
  Part(const Opened& open, DartSpot first, DartSpot second);

  enum class Where { Inside, Outside, Mouth };
  /// Points on the outline count with their stretch, points on a leg with the leg; a point where
  /// the outline was only now cut belongs to the rest of the piece.
  [[nodiscard]] Where where(Point p) const;
  [[nodiscard]] bool holds(Point p) const { return where(p) == Where::Inside; }
  /// True for the apex of either dart, which both parts share.
  [[nodiscard]] bool is_apex(Point p) const;
  /// The legs of both darts: where a line passes from one part of the piece to another.
  [[nodiscard]] std::vector<Path> borders() const;

 private:
  Dart first_, second_;
  std::vector<Path> stretches_;
  Path ring_;
};

/// A line of the piece in its parts, in order; what is shorter than 1e-6 mm is left out.
std::vector<std::pair<Path, Part::Where>> parted(const Path& line, const Part& part);

/// Turns what lies between two darts of one apex about that apex, anticlockwise by `turn`: with a
/// positive turn the first opens and the second closes by it, with a negative one the reverse. The
/// rest of the piece stays; edges, darts, landmarks and balance lines between are carried along
/// unchanged, balance lines are led straight across the mouths.
///
/// Requires: first < second; both darts are about one apex; no leg of another dart is crossed.
/// Exact to rounding.
void turn_between(Opened& open, DartSpot first, DartSpot second, Angle turn);
/// The same by a straight shift: both mouths change alike, and their legs are no longer equal, so
/// that they must be bridged or joined after.
void shift_between(Opened& open, DartSpot first, DartSpot second, Vec by);

/// Takes the angle `by` from one dart and gives it to another of the same apex, turning what lies
/// between. A dart that is left with nothing is taken out and its edge joined. Darts are named, as
/// their places move.
void hand_over(Opened& open, const std::string& from, const std::string& to, Angle by);

/// Refuses ("dart.part") a dart of less than 0.01 degrees: its apex could not be found
/// from its mouth.
void require_some_width(const Opened& open, const std::string& name);

/// `wish`, or with a number behind it where the piece has a dart of that name.
std::string free_name(const Opened& open, const std::string& wish);

/// Makes darts that lie side by side out of one, or one out of two neighbours, each turning about
/// an apex of its own. What lies outside the group keeps its place exactly: turning by all of them
/// is one turn about one point.

/// One of the darts that a dart is split into.
struct DartShare {
  std::string name;
  Angle angle;
};
/// Puts the shares, in the order of the edge, in the place of one dart, their axes parallel, about
/// `spacing` mm apart along the closed edge. The angles' sum is the dart's. Returns false, and
/// changes nothing, if the edge has no room.
bool part_parallel(Opened& open, DartSpot one, const std::vector<DartShare>& shares,
                   double spacing);

/// Makes neighbours on one edge one dart, which keeps the name and place of `into`.
void join_neighbours(Opened& open, DartSpot first, bool into_second);

/// How far a new grainline keeps off every edge and dart, in mm. Common practice, no source.
inline constexpr double kGrainOffEdges = 15.0;
/// The piece with its grainline kept where it runs clear inside the piece, `least` mm off darts and
/// outline, and otherwise moved to the longest upright that keeps kGrainOffEdges off them. In a
/// piece too narrow for that it keeps 10, 7, 5, 3 or 1 mm off, whichever first leaves it 40 mm
/// long.
Piece with_clear_grain(Piece piece, double least = 0.0);

/// The pattern with the moved piece put together, and with what the move does to its centre front
/// said after `remarks`: a fold that a dart opens becomes a seam and the piece a pair; when it is
/// straight again, a fold. Throws "dart.blocked" if the outline came to cross itself or two darts
/// each other.
MovedDarts finished(const Pattern& pattern, const PieceWords& moved, const Opened& open,
                    Problems remarks = {});

/// Warns of a dart wider than one should be, or too narrow to sew; throws "dart.part" where there
/// is nothing to sew.
Problems judged_width(const Opened& open, const std::string& name);

}  // namespace blockwright
