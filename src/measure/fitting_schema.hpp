#pragma once

#include "blockwright/measure/client.hpp"

#include <nlohmann/json_fwd.hpp>

namespace blockwright {

/// Bounds of amounts and measurements have two places at most.
double floor_to_hundredth(double value);
double ceil_to_hundredth(double value);

/// The schema of the list of fittings, whose corrections have amounts in any unit.
nlohmann::ordered_json fittings_schema();
/// What holds of that list if the file is in this unit.
nlohmann::ordered_json fittings_schema_in(Unit unit);

}  // namespace blockwright
