#pragma once

#include "blockwright/measure/body.hpp"

#include <string>
#include <string_view>
#include <vector>

namespace blockwright {

/// A taped value, and what it was likely meant to be or would have been.
struct SlippedValue {
  MeasurementName name;
  Measure read;
  Measure meant;
};

/// What most likely went wrong with a tape.
struct LikelySlip {
  /// "swapped_digits", "inches", "waist_level" and the like; "misread" or "loose" where only the
  /// size is known (src/measure/slips.cpp has them all).
  std::string_view name = {};
  std::string words = {};                 ///< "two digits swapped"
  std::vector<SlippedValue> values = {};  ///< one, or all that a common cause moved together
  std::string_view cure = {};             ///< of a common cause
  Measure expected = {}, doubt = {};      ///< of one value: what the others lead one to expect
  double off = 0.0;                       ///< how far off, in SD
  double gain = 0.0;                      ///< fall of the sum of squares, less what the slip costs
  bool exact = false;                     ///< what was meant is known to its last digit
  bool fuller_waist = false;              ///< may well be the body: only a note
};

/// The slips that would explain a session, the likeliest first; after each the values that it
/// explains are set aside and the rest is judged again, so that one slip throws no doubt on its
/// neighbours and two are both found.
///
/// What was taped, less what the survey expects of the mean woman, is v with covariance C. Each
/// slip moves one value, or several in known proportion, by a known size (digits swapped, inches
/// for cm) or by a free one, and v'C^-1 v falls when it is cured: that is what it gains. Less its
/// cost, how seldom it is made, the largest wins. Only values further off than 3 SD (of a waist
/// level 3.2) are asked about: at most one woman in a hundred is, by item. What the maker is sure
/// of is not named.
///
/// `typed_in` is the unit of the client file: digits swap as they were written. Requires: `body` is
/// fill_in(session). Cost: some 20 microseconds, and as many for each slip found.
std::vector<LikelySlip> likely_slips(const Session& session, const Body& body, Unit typed_in);

/// "measure.slip" where the slip has a name, else "measure.retake" beyond 4.5 SD and
/// "measure.doubtful".
Problem problem_of(const LikelySlip& slip);

}  // namespace blockwright
