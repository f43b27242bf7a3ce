#include "client_keys.hpp"

#include "blockwright/measure/measurement_name.hpp"

#include <algorithm>

namespace blockwright {

std::span<const std::string_view> measurement_keys() {
  static const auto keys = [] {
    std::array<std::string_view, kMeasurementCount> all{};
    std::ranges::transform(measurement_catalogue(), all.begin(), &MeasurementInfo::key);
    return all;
  }();
  return keys;
}

}  // namespace blockwright
