#pragma once

#include "blockwright/measure/body.hpp"

#include <array>

namespace blockwright {

/// On every body of the survey `times` x `smaller` is less than `larger`.
struct Ordering {
  MeasurementName smaller = MeasurementName::BustGirth;
  double times = 1.0;
  MeasurementName larger = MeasurementName::BustGirth;
  double gap = 0.0;  ///< mm that an estimate leaves between the two
  /// Of a taped set that breaks it. A note: builds that the survey's women, of 18 to 50 years, did
  /// not have.
  Severity severity = Severity::Warning;
};

const std::array<Ordering, 11>& orderings();

/// Moves estimates, never taped values, so that every ordering keeps its gap: the larger side gives
/// way where it is an estimate, else the smaller. Continuous in every value.
void keep_order(Body& body);

}  // namespace blockwright
