#pragma once

#include "said_words.hpp"
#include "vocabulary.hpp"

namespace blockwright {

/// Words that are one in meaning: "shoulder blade", "need room", "not".
struct Term {
  Concepts concepts;
  Speech speech = Speech::None;
  std::vector<SaidWord> words;
  bool is_comparative = false;  ///< "longer", "lower"
  bool is_unknown = false;
  [[nodiscard]] bool after_pause() const { return words.front().after_pause; }
  [[nodiscard]] bool has_sight() const { return concepts.has_any(is_sight); }
  [[nodiscard]] bool has_part() const { return concepts.has_any(is_part); }
};
using Terms = std::vector<Term>;

/// What was said from its first word to its last, the longest sayings of the vocabulary first,
/// slips of the pen mended; no saying runs over a comma.
Terms terms_of(std::string_view said);

}  // namespace blockwright
