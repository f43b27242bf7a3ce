#pragma once

#include "survey.hpp"

#include <array>

namespace blockwright {

/// What the survey leads one to expect of a measurement: the mean and the SD round it, in mm
/// (degrees for the slope).
struct Expectation {
  double value = 0.0;
  double sd = 0.0;
};

/// The survey's joint normal distribution, conditioned on the values learnt so far. Exact for a
/// normal population; the order of learning does not matter. Learning one value costs about 250
/// multiplications; nothing is allocated.
///
/// Method: the sweep operator on the covariance matrix (Beaton 1964, "The use of special matrix
/// operators in statistical calculus"; from memory). After sweeping the learnt rows L, the block LL
/// holds the inverse of the learnt covariance with its sign changed, LU the regression coefficients
/// of the others and UU their covariance round the regression.
class Regression {
 public:
  /// Requires: `name` is in the survey and was not learnt before.
  void learn(MeasurementName name, double value);

  /// Requires: `name` is in the survey and was not learnt.
  [[nodiscard]] Expectation expected(MeasurementName name) const;

  /// What all other learnt values lead one to expect of one that was learnt.
  /// Requires: `name` was learnt.
  [[nodiscard]] Expectation expected_from_others(MeasurementName name) const;

 private:
  [[nodiscard]] double pull_on(std::size_t place) const;

  SurveyMatrix swept_ = survey_covariance();     // lower triangle only
  std::array<double, kSurveySize> deviation_{};  // of the learnt values, in the variables' units
};

}  // namespace blockwright
