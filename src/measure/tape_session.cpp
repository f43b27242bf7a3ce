#include "blockwright/measure/tape_session.hpp"

#include "blockwright/base/number_text.hpp"
#include "blockwright/base/printable.hpp"
#include "blockwright/measure/tape_changes.hpp"
#include "blockwright/text/refuse.hpp"
#include "client/client_file.hpp"
#include "measure_text.hpp"
#include "slips.hpp"
#include "survey.hpp"
#include "tape_error.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <sstream>

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

// --- what was typed --------------------------------------------------------------------------

[[noreturn]] void refuse_reading(const MeasurementInfo& entry, std::string_view said,
                                 std::string hint, const Limit& limit = {}) {
  throw InputError({.severity = Severity::Error,
                    .code = "tape.reading",
                    .where = std::string(entry.key),
                    .message = std::string(said),
                    .hint = std::move(hint),
                    .measurements = {std::string(entry.key)},
                    .limit = limit});
}

// "74,5 cm" as "74.5".
std::string plain_number(std::string word) {
  std::ranges::replace(word, ',', '.');
  return word;
}

bool is_unit_word(std::string_view word, Unit unit, MeasurementKind kind) {
  if (kind == MeasurementKind::Angle) return word == "degrees" || word == "\u00b0";
  if (unit == Unit::Cm) return word == "cm";
  return word == "in" || word == "inches" || word == "\"" || word == "\u2033";
}

// Takes the unit from the end of "74cm" or "29\"".
std::string without_unit(std::string word, Unit unit, MeasurementKind kind) {
  const std::size_t end = word.find_last_of("0123456789") + 1;
  if (end > 0 && is_unit_word(word.substr(end), unit, kind)) word.resize(end);
  return word;
}

// The words of an answer, a fraction together with the whole inches before it.
std::vector<std::string> numbers_of(std::string_view answer, Unit unit, MeasurementKind kind) {
  std::vector<std::string> numbers;
  std::istringstream in{std::string(answer)};
  for (std::string word; in >> word;) {
    if (is_unit_word(word, unit, kind) && !numbers.empty()) continue;
    word = without_unit(plain_number(word), unit, kind);
    const bool fraction = word.find('/') != std::string::npos;
    const bool after_whole =
        !numbers.empty() && number_in<unsigned>(numbers.back()).has_value() && fraction;
    if (after_whole) {
      numbers.back() += " " + word;
    } else {
      numbers.push_back(word);
    }
  }
  return numbers;
}

double number_typed(const std::string& typed, const MeasurementInfo& entry, Unit unit) {
  const bool inches = unit == Unit::Inch && entry.kind != MeasurementKind::Angle;
  const auto number = inches ? inches_of(typed) : std::nullopt;
  if (number) return *number;
  if (const auto decimal = number_in<double>(typed); decimal && std::isfinite(*decimal)) {
    return *decimal;
  }
  const std::string fraction = inches ? std::string() : fraction_in_cm(typed);
  refuse_reading(entry, "'" + shown(typed) + "' is no number",
                 !fraction.empty() ? fraction
                 : inches          ? "type inches as on the tape, 29 1/4, or with a point, 29.25"
                                   : "type a number, 74.5, or several with spaces between");
}

Measure reading_of(const std::string& typed, const MeasurementInfo& entry, Unit unit,
                   const std::optional<Measure>& bust) {
  const double written = number_typed(typed, entry, unit);
  const Measure reading = measured(written, entry.kind, unit);
  if (entry.allows(reading)) return reading;
  refuse_reading(entry,
                 fmt::format("{} {} is outside {}", shown(typed), unit_name(unit, entry.kind),
                             limits_text(entry, unit)),
                 range_hint(entry, {typed, written, unit}, bust), {entry.least, entry.most});
}

// --- what is to be said of it ----------------------------------------------------------------

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
  remarks.sentences.push_back(
      fmt::format("{} would be unusual: by what you took so far it is {}, give or take {}.{}{}",
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

TypedReadings readings_typed(std::string_view answer, MeasurementName name, Unit unit,
                             const std::optional<Measure>& bust) {
  const MeasurementInfo& entry = info(name);
  TypedReadings all;
  all.typed = numbers_of(answer, unit, entry.kind);
  if (all.typed.empty()) refuse_reading(entry, "there is no number", "type one, or skip");
  if (all.typed.size() > kMostReadings) {
    refuse_reading(entry, fmt::format("{} readings, over {}", all.typed.size(), kMostReadings),
                   "type the last few");
  }
  for (const std::string& typed : all.typed) {
    all.readings.values.push_back(reading_of(typed, entry, unit, bust));
  }
  return all;
}

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
