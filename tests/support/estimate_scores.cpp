#include "support/estimate_scores.hpp"

#include <cmath>

namespace blockwright {
namespace {

using enum MeasurementName;

Session only(const Session& person, std::initializer_list<MeasurementName> names) {
  Session part;
  for (const MeasurementName name : names) part.tape[name] = person.tape[name];
  return part;
}

void add(EstimateScore& score, double taped, const BodyMeasurement& estimate) {
  const double off = (taped - estimate.value.number()) / estimate.doubt.number();
  score.people += 1.0;
  score.mean += off;
  score.within_68 += std::abs(off) <= 1.0 ? 1.0 : 0.0;
  score.within_95 += std::abs(off) <= 1.96 ? 1.0 : 0.0;
  score.claimed_sd += estimate.doubt.number();
}

EstimateScore score_of(const std::vector<Session>& people, const Evidence& evidence,
                       MeasurementName name) {
  EstimateScore score{.name = name};
  for (const Session& person : people) {
    if (!person.tape[name]) continue;
    const Session part = evidence(person, name);
    if (part.tape[name]) continue;
    add(score, person.tape[name]->median().number(), *fill_in(part).measurements[name]);
  }
  for (double* sum : {&score.mean, &score.within_68, &score.within_95, &score.claimed_sd}) {
    *sum /= score.people;
  }
  return score;
}

}  // namespace

Session bust_alone(const Session& person, MeasurementName /*asked*/) {
  return only(person, {BustGirth});
}

Session bust_waist_and_back(const Session& person, MeasurementName /*asked*/) {
  return only(person, {BustGirth, WaistGirth, BackWaistLength});
}

Session all_but_that_one(const Session& person, MeasurementName asked) {
  Session part = person;
  if (asked != BustGirth) part.tape[asked].reset();
  return part;
}

std::vector<EstimateScore> score_estimates(const std::vector<Session>& people,
                                           const Evidence& evidence) {
  std::vector<EstimateScore> scores;
  for (const MeasurementInfo& entry : measurement_catalogue()) {
    const EstimateScore score = score_of(people, evidence, entry.name);
    if (score.people > 0.0) scores.push_back(score);
  }
  return scores;
}

}  // namespace blockwright
