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

struct Slip {
  double factor;  // what cures it
  std::string_view reading;
};

constexpr std::array<Slip, 4> kCmSlips{{
    {0.1, "looks ten times too large: mm, or a lost decimal point"},
    {10.0, "looks ten times too small"},
    {2.54, "looks like inches; this file's unit is cm"},
    {100.0, "looks like metres; this file's unit is cm"},
}};

constexpr std::array<Slip, 4> kInchSlips{{
    {1.0 / 2.54, "looks like cm; this file's unit is in"},
    {1.0 / 25.4, "looks like mm; this file's unit is in"},
    {0.1, "looks ten times too large: a lost decimal point"},
    {10.0, "looks ten times too small"},
}};

constexpr std::array<Slip, 3> kAngleSlips{{
    {0.1, "looks ten times too large: a lost decimal point"},
    {10.0, "looks ten times too small"},
    {180.0 / std::numbers::pi, "looks like radians; the slope is in degrees"},
}};

std::span<const Slip> slips_of(MeasurementKind kind, Unit unit) {
  if (kind == MeasurementKind::Angle) return kAngleSlips;
  return unit == Unit::Cm ? std::span<const Slip>(kCmSlips) : std::span<const Slip>(kInchSlips);
}

// How far the cured value lies from the middle of the limits, as a ratio; infinite outside them.
double oddness(const Slip& slip, const MeasurementInfo& entry, double value) {
  const double cured = slip.factor * value;
  if (cured < entry.least || cured > entry.most) return std::numeric_limits<double>::infinity();
  return std::abs(std::log(cured / std::sqrt(entry.least * entry.most)));
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

std::string limits_text(const MeasurementInfo& entry, Unit unit) {
  const double least = std::ceil(10.0 * in_unit(entry.least, entry.kind, unit)) / 10.0;
  const double most = std::floor(10.0 * in_unit(entry.most, entry.kind, unit)) / 10.0;
  return fmt::format("{} to {} {}", trimmed(least, 1), trimmed(most, 1),
                     unit_name(unit, entry.kind));
}

std::string slip_hint(const MeasurementInfo& entry, double written, Unit unit) {
  if (written <= 0.0) return "leave the key out if the measurement was not taken";
  const double value = in_mm(written, entry.kind, unit);
  const std::span<const Slip> slips = slips_of(entry.kind, unit);
  const auto& likely = *std::ranges::min_element(
      slips, {}, [&](const Slip& slip) { return oddness(slip, entry, value); });
  if (std::isinf(oddness(likely, entry, value))) {
    return fmt::format("take it again: {}", entry.how);
  }
  return fmt::format("did you mean {}? What is written {}", trimmed(likely.factor * written, 2),
                     likely.reading);
}

}  // namespace blockwright
