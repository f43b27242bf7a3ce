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

}  // namespace blockwright
