#pragma once

#include "blockwright/measure/body.hpp"
#include "support/random.hpp"

#include <algorithm>

namespace blockwright {

/// A home maker who takes the tape: each reading errs by tape_sd(), one independent of the other.
class HandTape {
 public:
  explicit HandTape(unsigned seed) : random_(seed) {}

  Session taken_of(const Session& person) {
    Session session = person;
    for (const MeasurementInfo& entry : kMeasurements) {
      if (!person.tape[entry.name]) continue;
      const Measure error = measure_of(entry.name, tape_sd(entry.name).number() * random_.normal());
      const Measure read = person.tape[entry.name]->median() + error;
      session.tape[entry.name] = Readings{{std::clamp(read, entry.least, entry.most)}};
    }
    return session;
  }

 private:
  Random random_;
};

}  // namespace blockwright
