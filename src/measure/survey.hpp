#pragma once

#include "blockwright/measure/measurement_name.hpp"

#include <array>
#include <cstddef>
#include <optional>

namespace blockwright {

/// One measurement of the survey: its mean over the 2,208 women and the unit its covariances are
/// counted in (its SD; of one that follows another, the other's). In mm; the shoulder slope in
/// degrees.
struct SurveyVariable {
  MeasurementName name = MeasurementName::BustGirth;
  double mean = 0.0;
  double unit = 1.0;
};

consteval std::size_t count_filled_in(FillIn::By by) {
  std::size_t count = 0;
  for (const MeasurementInfo& entry : kMeasurements) count += entry.fill_in.by == by ? 1 : 0;
  return count;
}

/// The table of measurements less those that the draft derives by rule.
inline constexpr std::size_t kSurveySize = kMeasurementCount - count_filled_in(FillIn::By::Draft);

using SurveyMatrix = std::array<std::array<double, kSurveySize>, kSurveySize>;

const std::array<SurveyVariable, kSurveySize>& survey_variables();

/// Covariances in the variables' own units (correlations, but for those that follow another).
const SurveyMatrix& survey_covariance();

/// Where a measurement stands in the survey; empty if it is not in it.
std::optional<std::size_t> survey_place(MeasurementName name);

}  // namespace blockwright
