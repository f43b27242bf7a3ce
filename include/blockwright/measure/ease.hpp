#pragma once

#include "blockwright/measure/client.hpp"

namespace blockwright {

/// The most that an ease may be, either way, in mm (degrees for the shoulder slope). Common
/// practice, no source: no block has more.
double most_ease(MeasurementName name);

/// What is added to each measurement, in mm on the whole girth, width or length (degrees for the
/// shoulder slope).
class Ease {
 public:
  /// The defaults of a close-fitting toile: the eases of the table of measurements.
  static Ease of_toile();
  /// The defaults with the client's overrides.
  static Ease of(const Client& client);

  [[nodiscard]] double operator[](MeasurementName name) const {
    return values_[static_cast<std::size_t>(name)];
  }
  void set(MeasurementName name, double ease) { values_[static_cast<std::size_t>(name)] = ease; }

 private:
  std::array<double, kMeasurementCount> values_{};
};

}  // namespace blockwright
