#include "support/people.hpp"

#include "survey.hpp"

#include <cmath>
#include <numbers>
#include <random>

namespace blockwright {
namespace {

// std::normal_distribution differs from library to library; this is Box and Muller's rule.
class Normal {
 public:
  explicit Normal(unsigned seed) : engine_(seed) {}

  double operator()() {
    const double radius = std::sqrt(-2.0 * std::log(1.0 - uniform()));
    return radius * std::cos(2.0 * std::numbers::pi * uniform());
  }

 private:
  // 53 bits make a double in [0, 1).
  double uniform() { return static_cast<double>(engine_() >> 11U) * 0x1p-53; }

  std::mt19937_64 engine_;
};

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

Session person(const Factor& factor, Normal& normal) {
  std::array<double, kSurveySize> draws{};
  for (double& draw : draws) draw = normal();
  Session session{.date = "1988-01-01", .by = "", .tape = {}};
  for (std::size_t i = 0; i < kSurveySize; ++i) {
    double deviation = 0.0;
    for (std::size_t k = 0; k <= i; ++k) deviation += factor[i][k] * draws[k];
    const SurveyVariable& variable = survey_variables()[i];
    tape(session, variable.name, as_read(variable.name, variable.mean + variable.unit * deviation));
  }
  return session;
}

}  // namespace

std::vector<Session> survey_people(int count, unsigned seed) {
  const Factor factor = factor_of(survey_covariance());
  Normal normal(seed);
  std::vector<Session> people;
  people.reserve(static_cast<std::size_t>(count));
  for (int i = 0; i < count; ++i) people.push_back(person(factor, normal));
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
