#pragma once

#include "blockwright/measure/client.hpp"

#include <string>

namespace blockwright {

/// What a value outside its limits was most likely meant to be, as a hint: ten times too much, mm
/// or inches in a cm file, cm in an inch file, a lost decimal point, half of a girth. `written` is
/// the number in the file's unit (degrees for an angle).
std::string slip_hint(const MeasurementInfo& entry, double written, Unit unit);

/// Whether a value in mm or degrees lies within the limits of the measurement.
bool within(const MeasurementInfo& entry, double value);

/// "60 to 160 cm": the limits of a measurement in the file's unit, rounded inwards.
std::string limits_text(const MeasurementInfo& entry, Unit unit);

/// mm for a number in the file's unit; degrees stay degrees.
double in_mm(double written, MeasurementKind kind, Unit unit);

}  // namespace blockwright
