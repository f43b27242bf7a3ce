#include "blockwright/measure/tape_session.hpp"

#include "blockwright/measure/tape_changes.hpp"
#include "measure_text.hpp"
#include "slips.hpp"
#include "survey.hpp"
#include "tape_error.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace blockwright {
namespace {

using enum MeasurementName;

constexpr std::array<MeasurementName, kMeasurementCount> kTapeOrder{
    BustGirth, UnderbustGirth, WaistGirth, BackWaistLength, ShoulderLength, SideNeckToBustPoint,
    SideNeckToWaist, SideLength,
    // The rest.
    UpperChestGirth, NeckBaseGirth, ShoulderSlope, BackShoulderSlant, AcrossBack, ScyeDepth,
    FrontShoulderSlant, FrontWaistLength, AcrossFront, BustPointWidth, FrontBustWidth, ArmscyeGirth,
    UpperArmGirth, WaistToHip, HipGirth, Stature};

// Nineteen women of twenty lie within.
constexpr double kOrdinarySd = 2.0;

std::optional<Expectation> expectation(const Session& taken, MeasurementName name) {
  if (!survey_place(name) || !taken.tape[BustGirth] || name == BustGirth) return std::nullopt;
  return learnt_from(fill_in(taken), {name}).expected(name);
}

double oddness(Measure value, const Expectation& expected) {
  return std::abs((value - expected.value) / expected.sd);
}

// A slip in one that was taken before throws doubt on what is taken after it: whether there is one
// without which `entry` is no longer odd.
std::string earlier_slip(const MeasurementInfo& entry, const Session& taken, Unit unit) {
  const Body body = fill_in(taken);
  for (const MeasurementName name : kTapeOrder) {
    if (name == entry.name || !taken.tape[name] || !survey_place(name)) continue;
    const Measure value = taken.tape[name]->median();
    const Expectation expected = learnt_from(body, {name}).expected(name);
    if (oddness(value, expected) <= kDoubtfulSd) continue;
    const Written written = written_of(*taken.tape[name], unit);
    const auto slip = likeliest(possibly_meant(info(name), written), expected);
    if (!slip) continue;
    Session cured = taken;
    cured.tape[name] = Readings{{slip->value}};
    const auto then = expectation(cured, entry.name);
    if (!then || oddness(taken.tape[entry.name]->median(), *then) > kDoubtfulSd) continue;
    return fmt::format(" Or look at the {} of {}. Did you mean {}? \"back\" leads there.",
                       name_text(info(name).key), measure_text(value, unit),
                       meant_text(*slip, unit));
  }
  return "";
}

void say_unlikely(const TypedReadings& typed, const MeasurementInfo& entry, const Session& taken,
                  Unit unit, Remarks& remarks) {
  const auto expected = expectation(taken, entry.name);
  const Measure value = typed.readings.median();
  if (!expected || oddness(value, *expected) <= kDoubtfulSd) return;
  Session with_it = taken;
  with_it.tape[entry.name] = typed.readings;
  const Written written{typed.typed.front(), in_unit(typed.readings.values.front(), unit), unit};
  const Measure bust = taken.tape[BustGirth]->median();
  const bool fuller = is_fuller_waist(entry.name, value, bust);
  std::vector<Meant> meant = possibly_meant(entry, written);
  if (fuller) meant = meant_of_fuller_waist(std::move(meant), value <= bust);
  const auto slip = likeliest(std::move(meant), *expected);
  if (!slip && fuller) return;
  remarks.ask_again = true;
  remarks.sentences.push_back(fmt::format(
      "{} would be unusual: going by what you took so far, it is {}, give or take {}.{}{}",
      measure_text(value, unit), measure_text(expected->value, unit),
      measure_text(expected->sd, unit),
      slip ? " Did you mean " + meant_text(*slip, unit) + "?" : "",
      earlier_slip(entry, with_it, unit)));
}

void say_spread(const Readings& readings, const MeasurementInfo& entry, Unit unit,
                Remarks& remarks) {
  const Measure usual = kUsualSpread.of(entry.name);
  const Measure spread = readings.spread();
  if (spread.number() <= usual.number() + kRounding) return;
  const std::string odd = worded(odd_reading_words(entry, readings, unit), unit);
  remarks.sentences.push_back(fmt::format(
      "The readings lie {} apart; {} is usual at most. {} {}, is used.", measure_text(spread, unit),
      measure_text(usual, unit), odd.empty() ? "The middle one," : odd + "the middle one,",
      measure_text(readings.median(), unit)));
}

void say_change(const Readings& readings, const MeasurementInfo& entry, const Session& earlier,
                Unit unit, Remarks& remarks) {
  const auto& before = earlier.tape[entry.name];
  if (!before) return;
  const Measure change = readings.median() - before->median();
  if (tapes_differ_so({entry.name, change})) return;
  remarks.sentences.push_back(fmt::format("That is {} {} than on {}.",
                                          measure_text(abs(change), unit),
                                          change.number() > 0.0 ? "more" : "less", earlier.date));
}

}  // namespace

const std::array<MeasurementName, kMeasurementCount>& tape_order() { return kTapeOrder; }

const ByKind& usual_spread() { return kUsualSpread; }

std::optional<ExpectedRange> expected_range(const Session& taken, MeasurementName name) {
  const auto expected = expectation(taken, name);
  if (!expected) return std::nullopt;
  const auto within = [&](Measure value) {
    return std::clamp(value, info(name).least, info(name).most);
  };
  return ExpectedRange{within(expected->value - kOrdinarySd * expected->sd),
                       within(expected->value + kOrdinarySd * expected->sd)};
}

Remarks remarks_on(const TypedReadings& typed, MeasurementName name, const Session& taken,
                   const Session* earlier, Unit unit) {
  const MeasurementInfo& entry = info(name);
  Remarks remarks;
  say_spread(typed.readings, entry, unit, remarks);
  say_unlikely(typed, entry, taken, unit, remarks);
  if (earlier != nullptr) say_change(typed.readings, entry, *earlier, unit, remarks);
  return remarks;
}

}  // namespace blockwright
