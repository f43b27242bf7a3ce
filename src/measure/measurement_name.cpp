#include "blockwright/measure/measurement_name.hpp"

#include <algorithm>

namespace blockwright {

std::optional<MeasurementName> measurement_named(std::string_view key) {
  const auto* const found = std::ranges::find(kMeasurements, key, &MeasurementInfo::key);
  if (found == kMeasurements.end()) return std::nullopt;
  return found->name;
}

}  // namespace blockwright
