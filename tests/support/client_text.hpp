#pragma once

#include "blockwright/base/number_text.hpp"
#include "blockwright/measure/client.hpp"

#include <fmt/format.h>

#include <string>

namespace blockwright {

/// The client file of a generated person: her session alone, in cm, the first reading of each.
inline std::string client_text(const Session& session, int number) {
  std::string tape;
  for (std::size_t i = 0; i < kMeasurementCount; ++i) {
    const auto name = static_cast<MeasurementName>(i);
    const auto& readings = session.tape[name];
    if (!readings) continue;
    const double shown = info(name).kind == MeasurementKind::Angle ? 1.0 : 10.0;
    tape += (tape.empty() ? "" : ", ") +
            fmt::format("\"{}\": {}", info(name).key,
                        trimmed(readings->values.front().number() / shown, 2));
  }
  return fmt::format(R"({{"format": "blockwright-client-1", "name": "Person {}", "unit": "cm",
  "sessions": [{{"date": "2026-03-14", "tape": {{{}}}}}]}})",
                     number, tape);
}

}  // namespace blockwright
