#include "blockwright/measure/body.hpp"

#include "survey.hpp"

namespace blockwright {
namespace {

void take_taped(Body& body, const Session& session) {
  for (const MeasurementInfo& entry : measurement_catalogue()) {
    const auto& readings = session.tape[entry.name];
    if (!readings) continue;
    body.measurements[entry.name] = {.value = readings->median(),
                                     .source = Source::Taped,
                                     .doubt = readings->spread(),
                                     .sure = session.sure.has(entry.name),
                                     .readings = readings->values.size()};
  }
}

Measure within_limits(MeasurementName name, Measure value) {
  return std::clamp(value, info(name).least, info(name).most);
}

void estimate_the_rest(Body& body, const Regression& regression) {
  const bool extrapolated = beyond_survey(body[MeasurementName::BustGirth]) != 0.0;
  for (const SurveyVariable& variable : survey_variables()) {
    if (body.has(variable.name)) continue;
    const Expectation expected = regression.expected(variable.name);
    body.measurements[variable.name] = {.value = within_limits(variable.name, expected.value),
                                        .source = Source::Estimated,
                                        .doubt = expected.sd,
                                        .extrapolated = extrapolated};
  }
}

void keep_estimates_within_limits(Body& body) {
  for (const SurveyVariable& variable : survey_variables()) {
    if (body.taped(variable.name)) continue;
    Measure& value = body.measurements[variable.name]->value;
    value = within_limits(variable.name, value);
  }
}

double survey_mean(MeasurementName name) { return survey_variables()[*survey_place(name)].mean; }

// The cups of the simulated torsos from which the eases were found: beyond them nothing is added.
constexpr double kLeastCup = 60.0, kMostCup = 260.0;

// Bust less underbust girth, over that of the survey's mean woman, in mm.
double cup_over_usual(const Body& body) {
  using enum MeasurementName;
  const double cup = (body.length(BustGirth) - body.length(UnderbustGirth)).mm();
  const double usual = survey_mean(BustGirth) - survey_mean(UnderbustGirth);
  return std::clamp(cup, kLeastCup, kMostCup) - usual;
}

}  // namespace

Body fill_in(const Session& session) {
  Body body;
  take_taped(body, session);
  estimate_the_rest(body, learnt_from(body));
  keep_shares(body);
  keep_order(body);
  keep_estimates_within_limits(body);
  return body;
}

Measure most_ease(MeasurementName name) {
  constexpr ByKind most{
      .girth = Length::mm(200), .length = Length::mm(200), .angle = Measure::degrees(15)};
  return most.of(name);
}

Ease Ease::of(const Client& client) {
  using enum MeasurementName;
  Ease ease = of_toile();
  if (const auto& bust = client.ease[BustGirth]) ease.set(FrontBustWidth, 0.5 * *bust);
  for (const MeasurementInfo& entry : kMeasurements) {
    if (const auto& own = client.ease[entry.name]) ease.set(entry.name, *own);
  }
  return ease;
}

Ease Ease::worn_by(const Body& body) const {
  const double fullness = cup_over_usual(body);
  Ease worn;
  for (const MeasurementInfo& entry : kMeasurements) {
    const double more = per_cup_[static_cast<std::size_t>(entry.name)] * fullness;
    const Measure usual = (*this)[entry.name];
    worn.set(entry.name, more == 0.0 ? usual : usual + measure_of(entry.name, more));
  }
  return worn;
}

}  // namespace blockwright
