#pragma once

#include "blockwright/measure/client.hpp"

#include <string>

namespace blockwright {

/// "cm", "in", or "degrees" for an angle in either unit.
std::string_view unit_name(Unit unit, MeasurementKind kind);

/// "cm", "inches", or "degrees": what a number counts, in a sentence.
std::string_view unit_word(Unit unit, MeasurementKind kind);

/// A value as a person reads it off the tape: "92.5 cm", "36 1/2 in", "25.5 degrees".
std::string measure_text(Measure value, Unit unit);

/// The number that a file has for a measure: in its unit, or in degrees.
double in_unit(Measure value, Unit unit);

/// What a number of a file measures: in its unit, or in degrees.
Measure measured(double written, MeasurementKind kind, Unit unit);

/// "60 to 160 cm", "23 5/8 to 62 15/16 in": the limits of a measurement in the file's unit, as a
/// tape shows them, rounded inwards.
std::string limits_text(const MeasurementInfo& entry, Unit unit);

}  // namespace blockwright
