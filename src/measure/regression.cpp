#include "blockwright/base/error.hpp"
#include "survey.hpp"

#include <algorithm>
#include <cmath>

namespace blockwright {
namespace {

// Added to each pivot, so that no set of tapes, however contradictory, divides by nothing. The
// smallest pivot of the whole table is 0.14, so it shifts no estimate by a part in 100,000.
constexpr double kRidge = 1e-6;

// The entry at (i, j) of a symmetric matrix of which only the lower triangle is kept up.
auto& entry(auto& matrix, std::size_t i, std::size_t j) {
  return i < j ? matrix[j][i] : matrix[i][j];
}

void sweep(SurveyMatrix& matrix, std::size_t k) {
  std::array<double, kSurveySize> column{};
  for (std::size_t i = 0; i < kSurveySize; ++i) column[i] = entry(matrix, i, k);
  const double pivot = column[k] + kRidge;
  for (std::size_t i = 0; i < kSurveySize; ++i) {
    const double factor = column[i] / pivot;
    for (std::size_t j = 0; j <= i; ++j) matrix[i][j] -= factor * column[j];
  }
  for (std::size_t i = 0; i < kSurveySize; ++i) entry(matrix, i, k) = column[i] / pivot;
  matrix[k][k] = -1.0 / pivot;
}

// Bust beyond the survey at which an estimate is doubted twice as much as within it: the rules
// there are a size table's, not a survey's. Ours.
constexpr double kDoubtDoubles = 600.0;

std::size_t place_of(MeasurementName name) {
  const auto place = survey_place(name);
  require(place.has_value(), "a measurement that the survey does not hold");
  return *place;
}

}  // namespace

void Regression::learn(MeasurementName name, Measure value) {
  const std::size_t place = place_of(name);
  const SurveyVariable& variable = survey_variables()[place];
  sweep(swept_, place);
  deviation_[place] = (value.number() - mean_of(variable)) / variable.unit;
}

double Regression::mean_of(const SurveyVariable& variable) const {
  return variable.mean + variable.beyond * beyond_;
}

double Regression::doubt_grown() const { return 1.0 + std::abs(beyond_) / kDoubtDoubles; }

// Values not learnt have no deviation, so the sum runs over the learnt ones alone.
double Regression::pull_on(std::size_t place) const {
  double sum = 0.0;
  for (std::size_t i = 0; i < kSurveySize; ++i) sum += entry(swept_, i, place) * deviation_[i];
  return sum;
}

Expectation Regression::expected(MeasurementName name) const {
  const std::size_t place = place_of(name);
  const SurveyVariable& variable = survey_variables()[place];
  const double sd = variable.unit * std::sqrt(swept_[place][place]);
  return {.value = measure_of(name, mean_of(variable) + variable.unit * pull_on(place)),
          .sd = measure_of(name, doubt_grown() * sd)};
}

Expectation Regression::expected(std::span<const SumPart> sum) const {
  std::array<std::size_t, kSurveySize> places{};
  std::array<double, kSurveySize> weights{};
  Measure value;
  double variance = 0.0;
  for (std::size_t i = 0; i < sum.size(); ++i) {
    value += sum[i].times * expected(sum[i].name).value;
    places[i] = place_of(sum[i].name);
    weights[i] = sum[i].times * survey_variables()[places[i]].unit;
    for (std::size_t j = 0; j <= i; ++j) {
      const double both = weights[i] * weights[j] * entry(swept_, places[i], places[j]);
      variance += i == j ? both : 2.0 * both;
    }
  }
  return {.value = value, .sd = Length::mm(doubt_grown() * std::sqrt(variance))};
}

double Regression::pull(MeasurementName name) const {
  const std::size_t place = place_of(name);
  const double per_unit = -pull_on(place) / survey_variables()[place].unit;
  return per_unit / (doubt_grown() * doubt_grown());
}

double Regression::precision(const std::array<MeasurementName, 2>& names) const {
  const std::size_t i = place_of(names[0]), j = place_of(names[1]);
  const double units = survey_variables()[i].unit * survey_variables()[j].unit;
  return -entry(swept_, i, j) / (units * doubt_grown() * doubt_grown());
}

double Regression::coefficient(MeasurementName of, MeasurementName learnt) const {
  const std::size_t i = place_of(of), j = place_of(learnt);
  return entry(swept_, i, j) * survey_variables()[i].unit / survey_variables()[j].unit;
}

double Regression::covariance(MeasurementName a, MeasurementName b) const {
  const std::size_t i = place_of(a), j = place_of(b);
  const double units = survey_variables()[i].unit * survey_variables()[j].unit;
  return doubt_grown() * doubt_grown() * units * entry(swept_, i, j);
}

Regression learnt_from(const Body& body, std::initializer_list<MeasurementName> but) {
  Regression regression(beyond_survey(body[MeasurementName::BustGirth]));
  for (const SurveyVariable& variable : survey_variables()) {
    if (!body.taped(variable.name) || std::ranges::find(but, variable.name) != but.end()) continue;
    regression.learn(variable.name, body[variable.name]);
  }
  return regression;
}

}  // namespace blockwright
