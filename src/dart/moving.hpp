#pragma once

#include "aim.hpp"

#include <vector>

namespace blockwright {

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

/// Warns of a dart wider than one should be, or too narrow to sew; throws "dart.wide" over the
/// limit and "dart.part" where there is nothing to sew. `had` is its angle before.
Problems judged_width(const Opened& open, const std::string& name, Angle had);

}  // namespace blockwright
