#include "blockwright/measure/body_spread.hpp"

#include "survey.hpp"

#include <algorithm>
#include <cmath>

namespace blockwright {
namespace {

// Readings taken one after the other share the posture, the breath and the hand of that day: half
// of what a tape errs by. Ours.
constexpr double kSharedByReadings = 0.5;

// The mean range of so many readings, in SD. Source: tables of control charts (d2), e.g. the
// NIST/SEMATECH e-Handbook of Statistical Methods, 6.3.2; from memory.
constexpr std::array<double, 4> kMeanRange{1.128, 1.693, 2.059, 2.326};

double variance_of(const Readings& readings, MeasurementName name) {
  const double usual = tape_sd(name).number();
  const std::size_t count = readings.values.size();
  if (count < 2) return usual * usual;
  const double range = kMeanRange[std::min(count - 2, kMeanRange.size() - 1)];
  const double apart = readings.spread().number() / range;
  const double one = std::max(usual * usual * (1.0 - kSharedByReadings), apart * apart);
  return usual * usual * kSharedByReadings + one / static_cast<double>(count);
}

void add_tape_errors(const Session& session, const Body& body, BodySpread& spread) {
  for (const MeasurementInfo& entry : kMeasurements) {
    if (!body.taped(entry.name) || body.sure(entry.name)) continue;
    spread.set(entry.name, entry.name, variance_of(*session.tape[entry.name], entry.name));
  }
}

struct Surveyed {
  std::vector<MeasurementName> taped, estimated;
};

Surveyed surveyed_of(const Body& body) {
  Surveyed of;
  for (const SurveyVariable& variable : survey_variables()) {
    (body.taped(variable.name) ? of.taped : of.estimated).push_back(variable.name);
  }
  return of;
}

// An estimate moves with the errors of its tapes, and two estimates with the same ones.
void add_estimates(const Surveyed& of, const Regression& regression, BodySpread& spread) {
  for (const MeasurementName estimate : of.estimated) {
    for (const MeasurementName tape : of.taped) {
      spread.set(estimate, tape,
                 regression.coefficient(estimate, tape) * spread.covariance(tape, tape));
    }
  }
  for (const MeasurementName a : of.estimated) {
    for (const MeasurementName b : of.estimated) {
      double both = regression.covariance(a, b);
      for (const MeasurementName tape : of.taped) {
        both += regression.coefficient(a, tape) * spread.covariance(tape, b);
      }
      spread.set(a, b, both);
    }
  }
}

}  // namespace

Measure BodySpread::sd(MeasurementName name) const {
  return measure_of(name, std::sqrt(covariance(name, name)));
}

BodySpread spread_of(const Session& session, const Body& body) {
  BodySpread spread;
  add_tape_errors(session, body, spread);
  add_estimates(surveyed_of(body), learnt_from(body), spread);
  return spread;
}

}  // namespace blockwright
