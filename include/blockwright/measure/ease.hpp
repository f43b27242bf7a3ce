#pragma once

#include "blockwright/measure/client.hpp"

#include <algorithm>

namespace blockwright {

/// The most that an ease may be, either way. Common practice, no source: no block has more.
Measure most_ease(MeasurementName name);

/// What is added to each measurement, on the whole girth, width or length.
class Ease {
 public:
  /// The defaults of a close-fitting toile: the eases of the table of measurements.
  static Ease of_toile() { return {}; }
  /// The defaults with the client's overrides.
  static Ease of(const Client& client);

  [[nodiscard]] Measure operator[](MeasurementName name) const {
    return values_[static_cast<std::size_t>(name)];
  }
  [[nodiscard]] Length length(LengthName name) const { return (*this)[name].length(); }
  void set(MeasurementName name, Measure ease) { values_[static_cast<std::size_t>(name)] = ease; }

 private:
  std::array<Measure, kMeasurementCount> values_ = [] {
    std::array<Measure, kMeasurementCount> eases;
    std::ranges::transform(kMeasurements, eases.begin(), [](auto& row) { return row.ease.by; });
    return eases;
  }();
};

}  // namespace blockwright
