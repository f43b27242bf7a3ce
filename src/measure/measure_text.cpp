#include "measure_text.hpp"

#include "blockwright/base/number_text.hpp"

namespace blockwright {

std::string_view unit_name(Unit unit, MeasurementKind kind) {
  if (kind == MeasurementKind::Angle) return "degrees";
  return unit == Unit::Cm ? "cm" : "in";
}

std::string_view unit_word(Unit unit, MeasurementKind kind) {
  const bool inches = kind != MeasurementKind::Angle && unit == Unit::Inch;
  return inches ? "inches" : unit_name(unit, kind);
}

std::string measure_text(double value, MeasurementKind kind, Unit unit) {
  std::string text;
  if (kind == MeasurementKind::Angle) {
    text = trimmed(value, 1);
  } else if (unit == Unit::Cm) {
    text = trimmed(Length::mm(value).cm(), 1);
  } else {
    text = inch_fraction(Length::mm(value).inches());
  }
  return text.append(" ").append(unit_name(unit, kind));
}

}  // namespace blockwright
