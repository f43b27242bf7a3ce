#include "measure_text.hpp"

#include "blockwright/base/number_text.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>
#include <numbers>
#include <span>

namespace blockwright {
namespace {

enum class Of { All, Halves, Stature };

struct Slip {
  double factor;  // what cures it
  std::string_view reading;
  Of of = Of::All;
};

constexpr std::string_view kHalf = "looks like half of it; girths and widths are taken whole";

constexpr std::array<Slip, 6> kCmSlips{{
    {0.1, "looks ten times too large: mm, or a lost decimal point"},
    {10.0, "looks ten times too small"},
    {2.54, "looks like inches; this file's unit is cm"},
    {100.0, "looks like metres; this file's unit is cm"},
    {2.0, kHalf, Of::Halves},
    {30.48, "looks like feet; this file's unit is cm", Of::Stature},
}};

constexpr std::array<Slip, 6> kInchSlips{{
    {1.0 / 2.54, "looks like cm; this file's unit is in"},
    {1.0 / 25.4, "looks like mm; this file's unit is in"},
    {0.1, "looks ten times too large: a lost decimal point"},
    {10.0, "looks ten times too small"},
    {2.0, kHalf, Of::Halves},
    {12.0, "looks like feet; this file's unit is in", Of::Stature},
}};

constexpr std::array<Slip, 2> kAngleSlips{{
    {0.1, "looks ten times too large: a lost decimal point"},
    {180.0 / std::numbers::pi, "looks like radians; the slope is in degrees"},
}};

// A reading this near to its limit is no slip of unit or decimal point; common practice, no source.
constexpr double kNear = 1.1;
constexpr Measure kUpright = Measure::degrees(90);

std::span<const Slip> slips_of(MeasurementKind kind, Unit unit) {
  if (kind == MeasurementKind::Angle) return kAngleSlips;
  return unit == Unit::Cm ? std::span<const Slip>(kCmSlips) : std::span<const Slip>(kInchSlips);
}

// Some ways of drafting write down half of a girth or a width.
bool can_happen(const Slip& slip, const MeasurementInfo& entry) {
  using enum MeasurementKind;
  if (slip.of == Of::Halves) return entry.kind == Girth || entry.kind == Width;
  return slip.of == Of::All || entry.name == MeasurementName::Stature;
}

// How far the cured value lies from the middle of the limits, as a ratio; infinite outside them.
double oddness(const Slip& slip, const MeasurementInfo& entry, Measure value) {
  const Measure cured = slip.factor * value;
  if (!can_happen(slip, entry) || !entry.allows(cured)) {
    return std::numeric_limits<double>::infinity();
  }
  return std::abs(std::log(cured.number() / std::sqrt(entry.least.number() * entry.most.number())));
}

std::string take_again(const MeasurementInfo& entry) {
  return fmt::format("take it again: {}", entry.how);
}

// Requires: written > 0.
std::string likely_slip(const MeasurementInfo& entry, double written, Unit unit) {
  const Measure value = measured(written, entry.kind, unit);
  const std::span<const Slip> slips = slips_of(entry.kind, unit);
  const auto& likely = *std::ranges::min_element(
      slips, {}, [&](const Slip& slip) { return oddness(slip, entry, value); });
  if (std::isinf(oddness(likely, entry, value))) return take_again(entry);
  return fmt::format("did you mean {}? What is written {}", trimmed(likely.factor * written, 2),
                     likely.reading);
}

}  // namespace

std::string_view unit_name(Unit unit, MeasurementKind kind) {
  return kind == MeasurementKind::Angle ? "degrees" : unit_name(unit);
}

std::string_view unit_word(Unit unit, MeasurementKind kind) {
  return kind == MeasurementKind::Angle ? "degrees" : unit_word(unit);
}

double in_unit(Measure value, Unit unit) {
  if (value.is_angle()) return value.number();
  return unit == Unit::Cm ? value.length().cm() : value.length().inches();
}

std::string measure_text(Measure value, Unit unit) {
  if (value.is_angle()) return trimmed(value.number(), 1) + " degrees";
  return length_text(value.length(), unit);
}

Measure measured(double written, MeasurementKind kind, Unit unit) {
  if (kind == MeasurementKind::Angle) return Measure::degrees(written);
  return unit == Unit::Cm ? Length::cm(written) : Length::inches(written);
}

std::string limits_text(const MeasurementInfo& entry, Unit unit) {
  const double least = std::ceil(10.0 * in_unit(entry.least, unit)) / 10.0;
  const double most = std::floor(10.0 * in_unit(entry.most, unit)) / 10.0;
  return fmt::format("{} to {} {}", trimmed(least, 1), trimmed(most, 1),
                     unit_name(unit, entry.kind));
}

std::string slip_hint(const MeasurementInfo& entry, double written, Unit unit) {
  const Measure value = measured(written, entry.kind, unit);
  if (entry.allows(-value)) {
    return fmt::format("did you mean {}? A measurement has no minus sign", trimmed(-written, 2));
  }
  if (written <= 0.0) return "leave the key out if the measurement was not taken";
  if (value > entry.least / kNear && value < kNear * entry.most) return take_again(entry);
  if (entry.kind == MeasurementKind::Angle && value <= kUpright) {
    if (entry.allows(kUpright - value)) {
      return fmt::format("did you mean {}? What is written looks measured from the upright; {}",
                         trimmed((kUpright - value).number(), 2),
                         "the slope is taken from the level");
    }
    if (value > entry.most) return take_again(entry);
  }
  return likely_slip(entry, written, unit);
}

}  // namespace blockwright
