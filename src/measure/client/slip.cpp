#include "slip.hpp"

#include "blockwright/base/number_text.hpp"
#include "measure_text.hpp"

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
constexpr double kUpright = 90.0;

std::span<const Slip> slips_of(MeasurementKind kind, Unit unit) {
  if (kind == MeasurementKind::Angle) return kAngleSlips;
  return unit == Unit::Cm ? std::span<const Slip>(kCmSlips) : std::span<const Slip>(kInchSlips);
}

// Whether some way of drafting writes down half of the measurement.
bool is_halved(const MeasurementInfo& entry) {
  return entry.kind == MeasurementKind::Girth || entry.kind == MeasurementKind::Width;
}

bool can_happen(const Slip& slip, const MeasurementInfo& entry) {
  if (slip.of == Of::Halves) return is_halved(entry);
  return slip.of == Of::All || entry.name == MeasurementName::Stature;
}

// How far the cured value lies from the middle of the limits, as a ratio; infinite outside them.
double oddness(const Slip& slip, const MeasurementInfo& entry, double value) {
  const double cured = slip.factor * value;
  if (!can_happen(slip, entry) || !within(entry, cured)) {
    return std::numeric_limits<double>::infinity();
  }
  return std::abs(std::log(cured / std::sqrt(entry.least * entry.most)));
}

std::string take_again(const MeasurementInfo& entry) {
  return fmt::format("take it again: {}", entry.how);
}

// Requires: value > 0, in mm or degrees.
std::string likely_slip(const MeasurementInfo& entry, double value, double written, Unit unit) {
  const std::span<const Slip> slips = slips_of(entry.kind, unit);
  const auto& likely = *std::ranges::min_element(
      slips, {}, [&](const Slip& slip) { return oddness(slip, entry, value); });
  if (std::isinf(oddness(likely, entry, value))) return take_again(entry);
  return fmt::format("did you mean {}? What is written {}", trimmed(likely.factor * written, 2),
                     likely.reading);
}

double in_unit(double value, MeasurementKind kind, Unit unit) {
  if (kind == MeasurementKind::Angle) return value;
  return unit == Unit::Cm ? Length::mm(value).cm() : Length::mm(value).inches();
}

}  // namespace

double in_mm(double written, MeasurementKind kind, Unit unit) {
  if (kind == MeasurementKind::Angle) return written;
  return unit == Unit::Cm ? Length::cm(written).mm() : Length::inches(written).mm();
}

bool within(const MeasurementInfo& entry, double value) {
  return value >= entry.least && value <= entry.most;
}

std::string limits_text(const MeasurementInfo& entry, Unit unit) {
  const double least = std::ceil(10.0 * in_unit(entry.least, entry.kind, unit)) / 10.0;
  const double most = std::floor(10.0 * in_unit(entry.most, entry.kind, unit)) / 10.0;
  return fmt::format("{} to {} {}", trimmed(least, 1), trimmed(most, 1),
                     unit_name(unit, entry.kind));
}

std::string slip_hint(const MeasurementInfo& entry, double written, Unit unit) {
  const double value = in_mm(written, entry.kind, unit);
  if (within(entry, -value)) {
    return fmt::format("did you mean {}? A measurement has no minus sign", trimmed(-written, 2));
  }
  if (written <= 0.0) return "leave the key out if the measurement was not taken";
  if (value > entry.least / kNear && value < entry.most * kNear) return take_again(entry);
  if (entry.kind == MeasurementKind::Angle && value <= kUpright) {
    if (within(entry, kUpright - value)) {
      return fmt::format("did you mean {}? What is written looks measured from the upright; {}",
                         trimmed(kUpright - value, 2), "the slope is taken from the level");
    }
    if (value > entry.most) return take_again(entry);
  }
  return likely_slip(entry, value, written, unit);
}

}  // namespace blockwright
