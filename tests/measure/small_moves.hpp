#pragma once

#include "blockwright/measure/body.hpp"
#include "support/people.hpp"

#include <catch2/catch.hpp>

namespace blockwright {

/// Moves each taped length by a tenth of a millimetre: no measurement of the body then moves by
/// half a millimetre (of the slope: half a degree).
inline void check_small_moves(const Session& session) {
  const Body before = fill_in(session);
  for (const MeasurementInfo& entry : measurement_catalogue()) {
    if (!session.tape[entry.name] || entry.kind == MeasurementKind::Angle) continue;
    Session moved = session;
    tape(moved, entry.name, before[entry.name].number() + 0.1);
    const Body after = fill_in(moved);
    for (const MeasurementInfo& other : measurement_catalogue()) {
      if (!before.has(other.name)) continue;
      INFO(entry.key << " moves " << other.key);
      CHECK(abs(after[other.name] - before[other.name]).number() < 0.5);
    }
  }
}

}  // namespace blockwright
