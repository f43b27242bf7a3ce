#pragma once

#include "blockwright/base/problem.hpp"
#include "blockwright/dart/opened.hpp"
#include "words.hpp"

#include <string>

namespace blockwright {

/// Takes the angle `by` from one dart and gives it to another of the same apex, turning what lies
/// between. A dart that is left with nothing is taken out and its edge joined. Darts are named, as
/// their places move.
void hand_over(Opened& open, const std::string& from, const std::string& to, Angle by);

/// Refuses ("dart.part") a dart of less than 0.01 degrees: its apex could not be found
/// from its mouth.
void require_some_width(const Opened& open, const std::string& name);

/// `wish`, or with a number behind it where the piece has a dart of that name.
std::string free_name(const Opened& open, const std::string& wish);

/// The piece put together, with what a move does to its centre front said in `remarks`: a fold that
/// a dart opens becomes a seam and the piece a pair; when it is straight again, a fold. Throws
/// "dart.blocked" if the outline came to cross itself or two darts each other.
Piece finished(const Opened& open, const std::string& where, Problems& remarks);

/// Warns of a dart wider than one should be, or too narrow to sew; throws "dart.wide" over the
/// limit and "dart.part" where there is nothing to sew. `had` is its angle before.
void judge_width(const Opened& open, const std::string& name, Angle had, Problems& remarks);

}  // namespace blockwright
