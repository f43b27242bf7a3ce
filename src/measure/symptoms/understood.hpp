#pragma once

#include "clauses.hpp"

namespace blockwright {

/// Words that are named as not understood, at most.
inline constexpr std::size_t kMostUnknown = 5;

/// One fault of what was said: "left shoulder lower" of "left shoulder lower, and the neck gapes".
struct SaidFault {
  Concepts concepts;
  BodySide side = BodySide::Both;
  std::vector<std::string> stems = {};  ///< of its words
};

/// What was said, understood.
struct Understood {
  Concepts concepts;               ///< of all of it
  BodySide side = BodySide::Both;  ///< the one that is named
  std::vector<SaidFault> faults;   ///< each with its place; one where there is one place
  std::vector<std::string> unknown;
  std::vector<std::string> stems;    ///< of the words that name a fault
  SaidOf set_aside = SaidOf::Fault;  ///< the first clause that names none: of what it is
};
Understood understood(std::string_view said);

/// What a saying of the table means, word for word.
Concepts meaning_of(std::string_view saying);

}  // namespace blockwright
