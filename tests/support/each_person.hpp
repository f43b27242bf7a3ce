#pragma once

#include "support/each.hpp"
#include "support/people.hpp"

namespace blockwright {

/// survey_people(count, seed) one after the other, each named as "survey_people(200, 77)[13]" in
/// what fails during its turn.
///   for (const Session& session : each_person(200, 77)) ...
inline auto each_person(int count, unsigned seed) {
  return Each(count, Held<std::vector<Session>>{survey_people(count, seed)},
              [count, seed](int i, const Session&) {
                return numbered(
                    "survey_people(" + std::to_string(count) + ", " + std::to_string(seed) + ")",
                    i);
              });
}

/// The same of people_at_bust(bust_mm, count, seed).
inline auto each_at_bust(int bust_mm, int count, unsigned seed) {
  return Each(count, Held<std::vector<Session>>{people_at_bust(bust_mm, count, seed)},
              [=](int i, const Session&) {
                return numbered("people_at_bust(" + std::to_string(bust_mm) + ", " +
                                    std::to_string(count) + ", " + std::to_string(seed) + ")",
                                i);
              });
}

}  // namespace blockwright
