#include "blockwright/base/number_text.hpp"
#include "blockwright/measure/body.hpp"
#include "measure_text.hpp"
#include "survey.hpp"
#include "tape_error.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <vector>

namespace blockwright {
namespace {

using enum MeasurementName;

// Ask for retaking beyond this.
constexpr double kRetakeSd = 4.5;

std::string retake_hint(MeasurementName name) {
  return fmt::format("take it again: {}", info(name).how);
}

void judge_spread(const MeasurementInfo& entry, const Readings& readings, Unit unit,
                  Problems& problems) {
  const Measure usual = kUsualSpread.of(entry.name);
  const Measure spread = readings.spread();
  if (spread.number() <= usual.number() + kRounding) return;
  const bool wide = spread.number() > 2.0 * usual.number() + kRounding;
  problems.push_back({.severity = wide ? Severity::Warning : Severity::Note,
                      .code = "measure.spread",
                      .where = std::string(entry.key),
                      .message = fmt::format(
                          "{} readings lie {} apart; {} is usual at most. Their median {} is used",
                          readings.values.size(), measure_text(spread, unit),
                          measure_text(usual, unit), measure_text(readings.median(), unit)),
                      .hint = retake_hint(entry.name),
                      .measurements = {std::string(entry.key)},
                      .limit = {.most = usual}});
}

// Values of the session that the survey can speak about.
std::vector<MeasurementName> evidence_of(const Body& body) {
  std::vector<MeasurementName> evidence;
  for (const SurveyVariable& variable : survey_variables()) {
    if (body.taped(variable.name)) evidence.push_back(variable.name);
  }
  return evidence;
}

// Two deviations that differ by less are the same but for rounding.
constexpr double kClearly = 1.0 + 1e-9;

struct Suspect {
  std::size_t index = 0;
  Expectation expected;
  double deviation = 0.0;  // in residual SD
};

// The value that all others make least likely. Two values alone contradict each other equally: then
// the later one of the catalogue is suspected, so never the bust girth.
Suspect least_likely(const std::vector<MeasurementName>& evidence, const Body& body) {
  // Without the bust among them nothing says how far beyond the survey the others are.
  const bool has_bust = std::ranges::find(evidence, BustGirth) != evidence.end();
  Regression regression(has_bust ? beyond_survey(body[BustGirth]) : 0.0);
  for (const MeasurementName name : evidence) regression.learn(name, body[name]);
  Suspect worst;
  for (std::size_t i = evidence.size(); i-- > 0;) {
    const Expectation expected = regression.expected_from_others(evidence[i]);
    const double deviation = std::abs((body[evidence[i]] - expected.value) / expected.sd);
    if (deviation > kClearly * worst.deviation) worst = {i, expected, deviation};
  }
  return worst;
}

Problem unlikely_value(MeasurementName name, const Suspect& suspect, const Body& body, Unit unit) {
  const bool retake = suspect.deviation > kRetakeSd;
  const double most = retake ? kRetakeSd : kDoubtfulSd;
  const auto& [expected, sd] = suspect.expected;
  return {.severity = Severity::Warning,
          .code = retake ? "measure.retake" : "measure.doubtful",
          .where = std::string(info(name).key),
          .message = fmt::format(
              "{} was taped; the other measurements lead one to expect {}, give or take {}. It is "
              "{} times that far off, and hardly anyone is more than {}",
              measure_text(body[name], unit), measure_text(expected, unit), measure_text(sd, unit),
              fixed(suspect.deviation, 1), trimmed(most, 1)),
          .hint = retake_hint(name) + " If it comes out the same, it is right: look at the others",
          .measurements = {std::string(info(name).key)},
          .limit = {.least = expected - most * sd, .most = expected + most * sd}};
}

// One value alone contradicts nothing.
void judge_likelihood(const Body& body, Unit unit, Problems& problems) {
  std::vector<MeasurementName> evidence = evidence_of(body);
  while (evidence.size() > 1) {
    const Suspect suspect = least_likely(evidence, body);
    if (suspect.deviation <= kDoubtfulSd) return;
    problems.push_back(unlikely_value(evidence[suspect.index], suspect, body, unit));
    evidence.erase(evidence.begin() + static_cast<std::ptrdiff_t>(suspect.index));
  }
}

void judge_order(const Ordering& order, const Body& body, Unit unit, Problems& problems) {
  if (!body.taped(order.smaller) || !body.taped(order.larger)) return;
  if (order.times * body[order.smaller] < body[order.larger]) return;
  problems.push_back(
      {.severity = order.severity,
       .code = "measure.order",
       .where = std::string(info(order.smaller).key),
       .message =
           fmt::format("{}{} ({}) is not less than {} ({}), as it is on every body of the survey",
                       order.times == 1.0 ? "" : "twice ", info(order.smaller).key,
                       measure_text(body[order.smaller], unit), info(order.larger).key,
                       measure_text(body[order.larger], unit)),
       .hint = fmt::format("check both. {}: {} {}: {}", info(order.smaller).key,
                           info(order.smaller).how, info(order.larger).key, info(order.larger).how),
       .measurements = {std::string(info(order.smaller).key),
                        std::string(info(order.larger).key)}});
}

}  // namespace

Problems judge(const Session& session, const Body& body, Unit unit) {
  Problems problems;
  for (const MeasurementInfo& entry : measurement_catalogue()) {
    if (const auto& readings = session.tape[entry.name]) {
      judge_spread(entry, *readings, unit, problems);
    }
  }
  judge_likelihood(body, unit, problems);
  for (const Ordering& order : orderings()) judge_order(order, body, unit, problems);
  return problems;
}

}  // namespace blockwright
