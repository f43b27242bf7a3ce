#pragma once

#include "blockwright/measure/symptom_search.hpp"
#include "terms.hpp"

#include <vector>

namespace blockwright {

struct Clause {
  Terms terms;  ///< without what is denied, and what is only compared with
  SaidOf of = SaidOf::Fault;
  /// "Waist and bust too tight": the places that one fault is said of, where they are several.
  std::vector<Concepts> places = {};
};

/// A part, or a front or back before what is said of it: "the back is short".
bool names_subject(const Terms& terms);

/// What was said, clause by clause: each ends at a comma, "and", "but". One without a fault of its
/// own is of the next; one without a place is of the place before it.
///
/// 1. "Waist isn't loose", "the neck is fine": denied. "Not right" and "does not fit" are not.
/// 2. "Not long enough" is short. 3. "Make it longer" is short. 4. "Longer than the back" is long;
/// "breasts lower than the darts" is darts that are high.
std::vector<Clause> clauses_of(std::string_view said);

}  // namespace blockwright
