#include "slips.hpp"

#include "blockwright/base/number_text.hpp"
#include "blockwright/text/units.hpp"
#include "measure_text.hpp"
#include "tape_error.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>

namespace blockwright {
namespace {

using enum MeasurementName;

// Of two explanations the second may be right as well if it costs no more than that beyond the
// first. Ours.
constexpr double kAsWell = 2.0;

// The number that a text is with two of its digits the other way round.
std::optional<double> with_swapped(std::string typed, std::array<std::size_t, 2> digits) {
  if (typed[digits[0]] == typed[digits[1]]) return std::nullopt;
  std::swap(typed[digits[0]], typed[digits[1]]);
  return typed.find('/') == std::string::npos ? number_in<double>(typed) : inches_of(typed);
}

// Neighbours, over the point too; of inches those of the whole ones, as the rest is a fraction.
std::vector<double> swapped(const Written& written) {
  const std::string& typed = written.typed;
  const std::string_view within = written.unit == Unit::Inch ? "0123456789" : "0123456789.";
  const std::size_t end = std::min(typed.find_first_not_of(within), typed.size());
  std::vector<double> numbers;
  for (std::size_t i = 0; i + 1 < end; ++i) {
    const std::size_t next = typed[i + 1] == '.' ? i + 2 : i + 1;
    if (typed[i] == '.' || next >= end) continue;
    if (const auto number = with_swapped(typed, {i, next})) numbers.push_back(*number);
  }
  return numbers;
}

std::vector<double> ten_off(const Written& written) {
  return {written.number + 10.0, written.number - 10.0};
}

// A tape is 150 cm or 60 inches long and has figures from either end.
std::vector<double> from_other_end(const Written& written) {
  return {(written.unit == Unit::Cm ? 150.0 : 60.0) - written.number};
}

std::vector<double> from_upright(const Written& written) { return {90.0 - written.number}; }

constexpr std::array<SlipRow, 16> make_slips() {
  using enum SlipRow::In;
  using enum SlipRow::Of;
  constexpr bool pen = true, tape = false;
  constexpr double of_her = 2.3, most = 5.0, any = 6.5;
  return {{
      {"swapped_digits", "two digits swapped", 0.0, of_her, pen, Any, All, 0.0, swapped},
      {"ten_times", "ten times as much was written: mm, or a lost decimal point", 2.0, any, pen, Cm,
       All, 0.1},
      {"ten_times", "ten times as much was written: a lost decimal point", 2.0, any, pen, Inch, All,
       0.1},
      {"ten_times", "ten times as much was written: a lost decimal point", 2.0, any, pen, Degrees,
       All, 0.1},
      {"tenth", "a tenth was written", 2.0, any, pen, Lengths, All, 10.0},
      {"inches", "inches were written; the unit here is cm", 2.0, most, pen, Cm, All, 2.54},
      {"metres", "metres were written; the unit here is cm", 2.0, most, pen, Cm, All, 100.0},
      {"cm", "cm were written; the unit here is inches", 2.0, most, pen, Inch, All, 1.0 / 2.54},
      {"mm", "mm were written; the unit here is inches", 2.0, most, pen, Inch, All, 1.0 / 25.4},
      {"half", "half was written; girths and widths are taken whole", 2.0, most, pen, Lengths,
       Whole, 2.0},
      {"radians", "radians were written; the slope is in degrees", 2.0, most, pen, Degrees, All,
       180.0 / std::numbers::pi},
      {"upright", "measured from the upright; the slope is taken from the level", 4.0, of_her, tape,
       Degrees, All, 0.0, from_upright},
      {"ten_off", "a ten read wrong on the tape", 8.0, of_her, tape, Lengths, All, 0.0, ten_off},
      {"other_end", "the tape read from its other end", 8.0, of_her, tape, Lengths, Whole, 0.0,
       from_other_end},
      {"feet", "feet were written; the unit here is cm", 2.0, most, pen, Cm, OfStature, 30.48},
      {"feet", "feet were written; the unit here is inches", 2.0, most, pen, Inch, OfStature, 12.0},
  }};
}
constexpr std::array<SlipRow, 16> kSlips = make_slips();

bool is_in(const SlipRow& slip, const MeasurementInfo& entry, Unit unit) {
  using enum SlipRow::In;
  const bool angle = entry.kind == MeasurementKind::Angle;
  if (slip.in == Any) return true;
  if (angle || slip.in == Degrees) return angle && slip.in == Degrees;
  return slip.in == Lengths || (slip.in == Cm) == (unit == Unit::Cm);
}

bool is_of(const SlipRow& slip, const MeasurementInfo& entry) {
  using enum MeasurementKind;
  if (slip.of == SlipRow::Of::Whole) return entry.kind == Girth || entry.kind == Width;
  return slip.of == SlipRow::Of::All || entry.name == Stature;
}

void add_meant(const SlipRow& slip, const MeasurementInfo& entry, const Written& written,
               std::vector<Meant>& all) {
  if (!is_in(slip, entry, written.unit) || !is_of(slip, entry)) return;
  const std::vector<double> numbers =
      slip.meant != nullptr ? slip.meant(written) : std::vector{slip.factor * written.number};
  for (const double number : numbers) {
    const Measure value = measured(number, entry.kind, written.unit);
    if (entry.allows(value)) all.push_back({&slip, value});
  }
}

// Those of the levels: how far the tape begins or ends beside the place meant. A shoulder taken 20
// mm down the arm, which falls there by 60 degrees, makes the slope of 26 degrees 30 (geometry).
std::vector<CommonCause> make_causes() {
  return {
      {"waist_level",
       "the waist was taken too low",
       "the waist was taken too high",
       "Let the tied waist tape settle where the body bends to the side, and take them again",
       Length::mm(30),
       4.0,
       3.2,
       {{BackWaistLength, 1.0},
        {FrontWaistLength, 1.0},
        {SideNeckToWaist, 1.0},
        {SideLength, 1.0},
        {FrontShoulderSlant, 1.0},
        {BackShoulderSlant, 1.0},
        {WaistToHip, -1.0, true}}},
      {"nape",
       "they began too high, above the nape",
       "they began too low, under the nape",
       "Bend the head: the nape is the bone that stands out most. Take both again from there",
       Length::mm(20),
       9.0,
       kDoubtfulSd,
       {{BackWaistLength, 1.0}, {ScyeDepth, 1.0}}},
      {"underarm_level",
       "the level of the armpits was taken too low",
       "the level of the armpits was taken too high",
       "Hold a ruler level under the arm, and take both again to its top edge",
       Length::mm(20),
       9.0,
       kDoubtfulSd,
       {{ScyeDepth, 1.0}, {SideLength, -1.0}}},
      {"side_neck",
       "they began too far back, behind the side neck point",
       "they began too far forward, before the side neck point",
       "Mark the side neck point where the shoulder meets the base of the neck, and take both "
       "again",
       Length::mm(20),
       9.0,
       kDoubtfulSd,
       {{SideNeckToBustPoint, 1.0}, {SideNeckToWaist, 1.0}}},
      {"shoulder_to_arm",
       "the shoulder was taken out on to the arm",
       "",
       "Feel for the outer end of the shoulder bone with the arm hanging, and take both again",
       Length::mm(25),
       9.0,
       kDoubtfulSd,
       {{ShoulderLength, 1.0}, {ShoulderSlope, 0.2}}},
  };
}

}  // namespace

Written written_of(const Readings& readings, Unit unit) {
  const double number = in_unit(readings.median(), unit);
  return {readings.values.size() == 1 ? trimmed(number, 2) : "", number, unit};
}

std::vector<Meant> possibly_meant(const MeasurementInfo& entry, const Written& written) {
  std::vector<Meant> all;
  for (const SlipRow& slip : kSlips) add_meant(slip, entry, written, all);
  return all;
}

std::vector<Meant> likely_ones(std::vector<Meant> all, const Expectation& expected,
                               double most_sd) {
  const auto oddness = [&](const Meant& meant) {
    return std::abs((meant.value - expected.value) / expected.sd);
  };
  const auto cost = [&](const Meant& meant) {
    return oddness(meant) * oddness(meant) + meant.slip->cost;
  };
  std::erase_if(all, [&](const Meant& meant) { return oddness(meant) > most_sd; });
  std::ranges::stable_sort(all, {}, cost);
  const auto unlikely = [&](const Meant& meant) {
    return cost(meant) > cost(all.front()) + kAsWell;
  };
  all.erase(std::ranges::find_if(all, unlikely), all.end());
  return all;
}

std::optional<Meant> likeliest(std::vector<Meant> all, const Expectation& expected) {
  std::erase_if(all, [&](const Meant& meant) {
    const double odd = std::abs((meant.value - expected.value) / expected.sd);
    return odd > meant.slip->guessed_within;
  });
  const std::vector<Meant> likely = likely_ones(std::move(all), expected, kDoubtfulSd);
  return likely.empty() ? std::nullopt : std::optional(likely.front());
}

std::vector<Meant> meant_of_fuller_waist(std::vector<Meant> all, bool within_bust) {
  std::erase_if(all, [&](const Meant& meant) {
    return !meant.slip->of_pen || (within_bust && meant.slip->meant == swapped);
  });
  return all;
}

Wording odd_reading_words(const MeasurementInfo& entry, const Readings& readings, Unit typed_in) {
  const Measure middle = readings.median();
  const auto off = [&](Measure value) { return abs(value - middle).number(); };
  std::vector<Measure> others = readings.values;
  const auto odd = std::ranges::max_element(others, {}, off);
  const Measure value = *odd;
  others.erase(odd);
  const double usual = kUsualSpread.of(entry.name).number() + kRounding;
  if (others.size() < 2 || Readings{others}.spread().number() > usual) return {};
  const double number = in_unit(value, typed_in);
  for (const Meant& meant : possibly_meant(entry, {trimmed(number, 2), number, typed_in})) {
    if (!meant.slip->of_pen || off(meant.value) > usual) continue;
    return Wording(value) + " looks like " + meant.value + " (" + std::string(meant.slip->words) +
           "); ";
  }
  return Wording(value) + " lies apart from the others; ";
}

std::string meant_text(const Meant& meant, Unit unit) {
  return fmt::format("{} ({})", measure_text(meant.value, unit), meant.slip->words);
}

const std::vector<CommonCause>& common_causes() {
  static const std::vector<CommonCause> causes = make_causes();
  return causes;
}

bool is_fuller_waist(MeasurementName name, Measure value, const std::optional<Measure>& bust) {
  constexpr double most_of_survey = 0.92;  // 998 in 1,000 of its women have less
  return name == WaistGirth && bust && value > most_of_survey * *bust;
}

}  // namespace blockwright
