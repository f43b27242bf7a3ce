#pragma once

#include "blockwright/measure/client.hpp"

#include <string>

namespace blockwright {

/// "cm", "in", or "degrees" for an angle in either unit.
std::string_view unit_name(Unit unit, MeasurementKind kind);

/// "cm", "inches", or "degrees": what a number counts, in a sentence.
std::string_view unit_word(Unit unit, MeasurementKind kind);

/// A value as a person reads it off the tape: "92.5 cm", "36 1/2 in", "25.5 degrees". `value` is in
/// mm, or degrees for an angle.
std::string measure_text(double value, MeasurementKind kind, Unit unit);

}  // namespace blockwright
