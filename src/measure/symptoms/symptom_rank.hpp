#pragma once

#include "vocabulary.hpp"

#include <compare>
#include <utility>

namespace blockwright {

/// The place that she named comes first, then what is seen there.
struct Rank {
  int place = 0;  ///< 3: own words; 2: each part that she named; 1: some; 0: none
  int likeness = 0;
  bool is_elsewhere = false;  ///< of another part of the body
  bool has_all = false;       ///< each part and each sight that she named
  friend bool operator==(const Rank&, const Rank&) = default;
  friend auto operator<=>(const Rank& a, const Rank& b) {
    return std::pair(a.place, a.likeness) <=> std::pair(b.place, b.likeness);
  }
};

/// How well a saying of the table answers what was said; no likeness: not at all.
Rank rank_of(const Concepts& said, const Concepts& saying);

}  // namespace blockwright
