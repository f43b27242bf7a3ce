#pragma once

#include "blockwright/measure/client.hpp"
#include "blockwright/text/json_document.hpp"

namespace blockwright {

/// The readings of one measurement, in mm or degrees: one number, one inch fraction, or a list of
/// them. Throws InputError ("client.type", "client.range", "client.size").
Readings read_readings(const JsonDocument& document, const JsonValue& value,
                       const MeasurementInfo& entry, Unit unit);

/// One override of the ease, in mm or degrees. Throws InputError ("client.type", "client.range").
double read_ease(const JsonDocument& document, const JsonValue& value, const MeasurementInfo& entry,
                 Unit unit);

}  // namespace blockwright
