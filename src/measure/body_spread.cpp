#include "blockwright/measure/body_spread.hpp"

#include "survey.hpp"

#include <cmath>

namespace blockwright {
namespace {

void add_tape_errors(const Body& body, BodySpread& spread) {
  for (const MeasurementInfo& entry : kMeasurements) {
    if (!body.taped(entry.name) || body.sure(entry.name)) continue;
    const double sd = taped_sd(body, entry.name).number();
    spread.set(entry.name, entry.name, sd * sd);
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

BodySpread spread_of(const Body& body) {
  BodySpread spread;
  add_tape_errors(body, spread);
  add_estimates(surveyed_of(body), learnt_from(body), spread);
  return spread;
}

}  // namespace blockwright
