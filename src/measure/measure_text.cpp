#include "measure_text.hpp"

#include "blockwright/base/number_text.hpp"

#include <fmt/format.h>

#include <cmath>

namespace blockwright {

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
  const Length length = value.length();
  const bool short_cm = unit == Unit::Cm && std::abs(length.mm()) < 10.0;
  return short_cm ? trimmed(length.cm(), 1) + " cm" : length_text(length, unit);
}

Measure measured(double written, MeasurementKind kind, Unit unit) {
  if (kind == MeasurementKind::Angle) return Measure::degrees(written);
  return unit == Unit::Cm ? Length::cm(written) : Length::inches(written);
}

std::string limits_text(const MeasurementInfo& entry, Unit unit) {
  const bool inches = unit == Unit::Inch && entry.kind != MeasurementKind::Angle;
  const double steps = inches ? 16.0 : 10.0;
  const double least = std::ceil(steps * in_unit(entry.least, unit)) / steps;
  const double most = std::floor(steps * in_unit(entry.most, unit)) / steps;
  const auto text = [&](double limit) { return inches ? inch_fraction(limit) : trimmed(limit, 1); };
  return fmt::format("{} to {} {}", text(least), text(most), unit_name(unit, entry.kind));
}

}  // namespace blockwright
