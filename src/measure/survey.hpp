#pragma once

#include "blockwright/measure/body.hpp"

#include <array>
#include <cstddef>
#include <initializer_list>
#include <optional>
#include <span>

namespace blockwright {

/// One measurement of the survey: its mean over the 2,208 women and the unit its covariances are
/// counted in (its SD; of one that follows another, the other's). In mm; the shoulder slope in
/// degrees.
struct SurveyVariable {
  MeasurementName name = MeasurementName::BustGirth;
  double mean = 0.0;
  double unit = 1.0;
  double beyond = 0.0;  ///< what it grows by for each mm of a bust beyond the survey
};

/// How far a bust girth lies beyond those that the survey knows well, 740 to 1170 mm: less than 0
/// for a smaller one, 0 between them.
double beyond_survey(Measure bust);

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

/// What the survey leads one to expect of a measurement: the mean and the SD round it.
struct Expectation {
  Measure value;
  Measure sd;
};

/// So many times a measurement, as a part of a sum.
struct SumPart {
  MeasurementName name = MeasurementName::NoMeasurement;
  double times = 0.0;
};

/// The survey's joint normal distribution, conditioned on the values learnt so far. Exact for a
/// normal population; the order of learning does not matter. Learning one value costs about 250
/// multiplications; nothing is allocated.
///
/// A bust beyond the survey is looked up at the survey's edge: each measurement is counted from
/// what it is there and has grown by since (SurveyVariable::beyond), and doubted more
/// (docs/decisions/013-larger-and-smaller-bodies.md). Within the survey that changes nothing.
///
/// Method: the sweep operator on the covariance matrix (Beaton 1964, "The use of special matrix
/// operators in statistical calculus"; from memory). After sweeping the learnt rows L, the block LL
/// holds the inverse of the learnt covariance with its sign changed, LU the regression coefficients
/// of the others and UU their covariance round the regression.
class Regression {
 public:
  Regression() = default;
  /// For people whose bust lies so far beyond the survey (beyond_survey()).
  explicit Regression(double beyond) : beyond_(beyond) {}

  /// Requires: `name` is in the survey and was not learnt before.
  void learn(MeasurementName name, Measure value);

  /// Requires: `name` is in the survey and was not learnt.
  [[nodiscard]] Expectation expected(MeasurementName name) const;

  /// The same of a sum of lengths. Requires: each is in the survey and was not learnt.
  [[nodiscard]] Expectation expected(std::span<const SumPart> sum) const;

  /// With v the learnt values less their means and C their covariance, of people as far beyond the
  /// survey: a row of C^-1 v, and an entry of C^-1, per mm (or degree). Requires: learnt.
  [[nodiscard]] double pull(MeasurementName name) const;
  [[nodiscard]] double precision(const std::array<MeasurementName, 2>& names) const;

  /// What the expected value of one grows by for each mm (or degree) of one that was learnt.
  /// Requires: both are in the survey; `of` was not learnt, `learnt` was.
  [[nodiscard]] double coefficient(MeasurementName of, MeasurementName learnt) const;

  /// How two that were not learnt vary together about what is expected of them, in their units.
  /// Requires: both are in the survey and were not learnt.
  [[nodiscard]] double covariance(MeasurementName a, MeasurementName b) const;

 private:
  [[nodiscard]] double pull_on(std::size_t place) const;
  [[nodiscard]] double mean_of(const SurveyVariable& variable) const;
  [[nodiscard]] double doubt_grown() const;

  double beyond_ = 0.0;
  SurveyMatrix swept_ = survey_covariance();     // lower triangle only
  std::array<double, kSurveySize> deviation_{};  // of the learnt values, in the variables' units
};

/// All values taped, but for those named.
Regression learnt_from(const Body& body, std::initializer_list<MeasurementName> but = {});

/// On every body of the survey `times` x `smaller` is less than `larger`.
struct Ordering {
  MeasurementName smaller = MeasurementName::BustGirth;
  double times = 1.0;
  MeasurementName larger = MeasurementName::BustGirth;
  Length gap;  ///< that an estimate leaves between the two
  /// Of a taped set that breaks it. A note: builds that the survey's women, of 18 to 50 years, did
  /// not have.
  Severity severity = Severity::Warning;
};

const std::array<Ordering, 11>& orderings();

/// Moves estimates, never taped values, so that each girth stays a share of the bust that a body
/// has. Continuous in every value. Requires: the bust girth has a value.
void keep_shares(Body& body);

/// Moves estimates, never taped values, so that every ordering keeps its gap: the larger side gives
/// way where it is an estimate, else the smaller. Across front and across back go with each other
/// and leave the arms room in the upper chest. Continuous in every value. Requires: a value for
/// each that is surveyed.
void keep_order(Body& body);

}  // namespace blockwright
