#pragma once

#include "blockwright/measure/fitting.hpp"

#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace blockwright {

/// A correction that answers what is seen: its words, with row and direction, and in one line what
/// it does to the paper.
struct FoundCorrection {
  const CorrectionWords* words = nullptr;
  std::string_view cure;
  BodySide side = BodySide::Both;  ///< that she named with the fault that it answers
};

/// What she speaks of.
enum class SaidOf {
  Fault,       ///< what is seen on the bodice
  NoFault,     ///< "the neck is fine", "waist isn't loose"
  Sleeve,      ///< a bodice block has none
  BelowWaist,  ///< where the bodice block has ended
};

/// The answer to what a fitter says she sees.
struct FoundCorrections {
  std::vector<FoundCorrection> best;  ///< at most kMostFound, the likeliest first
  std::vector<std::string>
      not_understood;              ///< words that mean nothing here, as typed, at most five
  BodySide side = BodySide::Both;  ///< the one side that she named, wherever
  bool is_whole = false;           ///< a part of the body and what is seen there
  bool is_nowhere = false;         ///< what is seen, and not where: "too long"
  /// The first of her words that names no fault of a bodice, and is answered by no correction.
  SaidOf set_aside = SaidOf::Fault;
};

inline constexpr std::size_t kMostFound = 5;

/// The corrections that answer words such as "armhole digs in" or "waist loose at the left".
///
/// Words are read as what they mean (src/measure/symptoms/vocabulary.cpp: a part of the body, where
/// on it, what is seen there) and compared with the sayings of each correction
/// (src/measure/symptoms/symptoms_*.cpp). 1. What is at a part that she named comes before all
/// else. 2. Nothing is found that answers the opposite ("waist tight", take_in waist), and where
/// something is seen no two answers are opposites. 3. What is said not to be there is no fault
/// (src/measure/symptoms/clauses.hpp). 4. Who says what she wants gets that ("make it longer").
/// 5. The same words give the same answer. 6. The words of a correction itself
/// ("lower front_neck") find it first, and so does its name, said alone ("shoulder shorter"). 7. Of
/// several faults ("left shoulder lower, and the neck gapes") each is answered in turn, with the
/// side that was said of it, unless one correction answers them all. Cost: one comparison with each
/// of some 500 sayings.
FoundCorrections find_corrections(std::string_view seen);

/// A part of the body, and all corrections there.
struct FittingPart {
  std::string_view name;
  std::vector<FoundCorrection> corrections;
};
/// All corrections, by the parts of the body from the top down. Each stands once.
std::span<const FittingPart> fitting_parts();
/// The part of that name, the plural of it or what else it is called; null if there is none.
const FittingPart* fitting_part(std::string_view name);

/// The correction in one line. Requires: one of correction_words().
std::string_view cure_of(const CorrectionWords& words);

}  // namespace blockwright
