#pragma once

#include <span>
#include <string_view>

namespace blockwright {

/// A correction by its words, what it does to the paper in one line, and what a fitter says who
/// sees the fault that it mends.
struct SymptomEntry {
  std::string_view action;
  std::string_view place;
  std::string_view cure;
  /// Sayings in the words of the vocabulary, with "; " between; the order of words does not matter.
  std::string_view sayings;
};

/// The corrections of a part of the body, the commonest first.
struct SymptomPart {
  std::string_view name;
  std::string_view also;  ///< what else it is called, with "; " between
  std::span<const SymptomEntry> entries;
};

/// From the top of the body down: symptoms_upper.cpp, symptoms_lower.cpp.
std::span<const SymptomPart> upper_symptoms();
std::span<const SymptomPart> lower_symptoms();

}  // namespace blockwright
