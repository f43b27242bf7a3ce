#include "measure_text.hpp"

#include "blockwright/base/number_text.hpp"

namespace blockwright {

std::string_view unit_name(Unit unit, MeasurementKind kind) {
  return kind == MeasurementKind::Angle ? "degrees" : unit_name(unit);
}

std::string_view unit_word(Unit unit, MeasurementKind kind) {
  return kind == MeasurementKind::Angle ? "degrees" : unit_word(unit);
}

std::string measure_text(double value, MeasurementKind kind, Unit unit) {
  if (kind == MeasurementKind::Angle) return trimmed(value, 1) + " degrees";
  return length_text(Length::mm(value), unit);
}

}  // namespace blockwright
