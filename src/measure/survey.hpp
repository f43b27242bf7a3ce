#pragma once

#include "blockwright/measure/measurement_name.hpp"

#include <array>
#include <cstddef>
#include <optional>

namespace blockwright {

/// One measurement of the survey: its mean over the 2,208 women and the unit its covariances are
/// counted in (its SD; for across front the SD of across back). In mm; the shoulder slope in
/// degrees.
struct SurveyVariable {
  MeasurementName name = MeasurementName::BustGirth;
  double mean = 0.0;
  double unit = 1.0;
};

/// The catalogue less what neither the survey nor a rule holds: the two shoulder slants and the
/// front bust width.
inline constexpr std::size_t kSurveySize = 21;

using SurveyMatrix = std::array<std::array<double, kSurveySize>, kSurveySize>;

const std::array<SurveyVariable, kSurveySize>& survey_variables();

/// Covariances in the variables' own units (correlations, but for across front).
const SurveyMatrix& survey_covariance();

/// Where a measurement stands in the survey; empty if it is not in it.
std::optional<std::size_t> survey_place(MeasurementName name);

}  // namespace blockwright
