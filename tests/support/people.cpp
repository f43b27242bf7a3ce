#include "support/people.hpp"

#include "blockwright/base/error.hpp"
#include "support/random.hpp"
#include "survey.hpp"

#include <cmath>

namespace blockwright {
namespace {

using Factor = std::array<std::array<double, kSurveySize>, kSurveySize>;

// Two rows' product, up to the diagonal of the second.
double dot(const Factor& factor, std::array<std::size_t, 2> rows) {
  double sum = 0.0;
  for (std::size_t k = 0; k < rows[1]; ++k) sum += factor[rows[0]][k] * factor[rows[1]][k];
  return sum;
}

// Lower triangle L with L L^T = covariance (Cholesky).
Factor factor_of(const SurveyMatrix& covariance) {
  Factor factor{};
  for (std::size_t j = 0; j < kSurveySize; ++j) {
    factor[j][j] = std::sqrt(covariance[j][j] - dot(factor, {j, j}));
    for (std::size_t i = j + 1; i < kSurveySize; ++i) {
      factor[i][j] = (covariance[i][j] - dot(factor, {i, j})) / factor[j][j];
    }
  }
  return factor;
}

double as_read(MeasurementName name, double value) {
  const bool angle = info(name).kind == MeasurementKind::Angle;
  return angle ? std::round(2.0 * value) / 2.0 : std::round(value);
}

using Draws = std::array<double, kSurveySize>;

Draws drawn(Random& random) {
  Draws draws{};
  for (double& draw : draws) draw = random.normal();
  return draws;
}

// A person whose bust lies so far beyond the survey.
Session person(const Factor& factor, const Draws& draws, double beyond) {
  Session session{.date = "1988-01-01", .by = "", .tape = {}};
  for (std::size_t i = 0; i < kSurveySize; ++i) {
    double deviation = 0.0;
    for (std::size_t k = 0; k <= i; ++k) deviation += factor[i][k] * draws[k];
    const SurveyVariable& variable = survey_variables()[i];
    const double mean = variable.mean + variable.beyond * beyond;
    tape(session, variable.name, as_read(variable.name, mean + variable.unit * deviation));
  }
  return session;
}

}  // namespace

std::vector<Session> survey_people(int count, unsigned seed) {
  const Factor factor = factor_of(survey_covariance());
  Random random(seed);
  std::vector<Session> people;
  people.reserve(static_cast<std::size_t>(count));
  for (int i = 0; i < count; ++i) people.push_back(person(factor, drawn(random), 0.0));
  return people;
}

// The bust is the survey's first variable, so that the first draw alone decides on it.
std::vector<Session> people_at_bust(double bust_mm, int count, unsigned seed) {
  require(survey_place(MeasurementName::BustGirth) == 0, "the survey begins with the bust");
  const SurveyVariable& bust = survey_variables().front();
  const Factor factor = factor_of(survey_covariance());
  const double beyond = beyond_survey(Length::mm(bust_mm));
  Random random(seed);
  std::vector<Session> people;
  people.reserve(static_cast<std::size_t>(count));
  for (int i = 0; i < count; ++i) {
    Draws draws = drawn(random);
    draws.front() = (bust_mm - beyond - bust.mean) / bust.unit / factor[0][0];
    people.push_back(person(factor, draws, beyond));
  }
  return people;
}

Session bust_only(double bust_mm) {
  Session session{.date = "1988-01-01", .by = "", .tape = {}};
  tape(session, MeasurementName::BustGirth, bust_mm);
  return session;
}

void tape(Session& session, MeasurementName name, double value) { tape(session, name, {value}); }

void tape(Session& session, MeasurementName name, std::initializer_list<double> values) {
  Readings readings;
  for (const double value : values) readings.values.push_back(measure_of(name, value));
  session.tape[name] = readings;
}

}  // namespace blockwright
