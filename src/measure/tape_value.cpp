#include "tape_value.hpp"

#include "blockwright/base/number_text.hpp"
#include "client_keys.hpp"
#include "client_problem.hpp"
#include "inch_text.hpp"
#include "measure_text.hpp"
#include "slip.hpp"

#include <fmt/format.h>

#include <cmath>

namespace blockwright {
namespace {

std::string_view number_hint(const MeasurementInfo& entry, Unit unit) {
  if (entry.kind == MeasurementKind::Angle) return "write the degrees as a bare number: 24.5";
  if (unit == Unit::Cm) return "write the number without quotes, with a point: 92.5";
  return "write a number, 36.5, or a fraction in quotes, \"36 1/2\"";
}

[[noreturn]] void refuse_type(const JsonDocument& document, const JsonValue& value,
                              const MeasurementInfo& entry, Unit unit) {
  const bool none = value.kind == JsonKind::Null;
  refuse("client.type", document.where(value),
         fmt::format("{} is {}, where a number of {} is expected", document.name_of(value),
                     document.described(value), unit_name(unit, entry.kind)),
         std::string(none ? "leave the key out if the measurement was not taken"
                          : number_hint(entry, unit)));
}

// The number as written: in the file's unit, or degrees.
double read_number(const JsonDocument& document, const JsonValue& value,
                   const MeasurementInfo& entry, Unit unit) {
  if (value.kind == JsonKind::Number) return value.number;
  const bool fractions = unit == Unit::Inch && entry.kind != MeasurementKind::Angle;
  if (value.kind == JsonKind::Text && fractions) {
    if (const auto inches = inches_of(value.text)) return *inches;
  }
  refuse_type(document, value, entry, unit);
}

// [74,5] is two readings where a decimal comma was meant.
bool is_after_comma(const JsonDocument& document, const JsonValue& list, std::size_t index) {
  if (index == 0) return false;
  return document.as_written(document.child(list, index)).size() == 1 &&
         document.child(list, index).kind == JsonKind::Number;
}

void refuse_range(const JsonDocument& document, const JsonValue& value,
                  const MeasurementInfo& entry, Unit unit, std::string hint) {
  refuse("client.range", document.where(value),
         fmt::format("{} is {} {}, outside {}", document.name_of(value), document.as_written(value),
                     unit_name(unit, entry.kind), limits_text(entry, unit)),
         std::move(hint));
}

bool within(const MeasurementInfo& entry, double value) {
  return value >= entry.least && value <= entry.most;
}

double read_reading(const JsonDocument& document, const JsonValue& value,
                    const MeasurementInfo& entry, Unit unit) {
  const double written = read_number(document, value, entry, unit);
  const double reading = in_mm(written, entry.kind, unit);
  if (!within(entry, reading)) {
    refuse_range(document, value, entry, unit, slip_hint(entry, written, unit));
  }
  return reading;
}

double read_list_reading(const JsonDocument& document, const JsonValue& list, std::size_t index,
                         const MeasurementInfo& entry, Unit unit) {
  const JsonValue& value = document.child(list, index);
  const bool after_comma = is_after_comma(document, list, index);
  if (after_comma && !within(entry, in_mm(value.number, entry.kind, unit))) {
    refuse_range(document, value, entry, unit,
                 "commas part the readings of a list; write decimals with a point: 74.5");
  }
  return read_reading(document, value, entry, unit);
}

}  // namespace

Readings read_readings(const JsonDocument& document, const JsonValue& value,
                       const MeasurementInfo& entry, Unit unit) {
  if (value.kind != JsonKind::List) return {{read_reading(document, value, entry, unit)}};
  if (value.children.empty()) {
    refuse("client.missing", document.where(value),
           fmt::format("{} is a list without readings", entry.key),
           "write at least one reading, or leave the key out");
  }
  if (value.children.size() > kMostReadings) {
    refuse(
        "client.size", document.where(value),
        fmt::format("{} has {} readings, over {}", entry.key, value.children.size(), kMostReadings),
        "keep the last few; readings of another day belong in a session of their own");
  }
  Readings readings;
  for (std::size_t i = 0; i < value.children.size(); ++i) {
    readings.values.push_back(read_list_reading(document, value, i, entry, unit));
  }
  return readings;
}

double read_ease(const JsonDocument& document, const JsonValue& value, const MeasurementInfo& entry,
                 Unit unit) {
  const double ease = in_mm(read_number(document, value, entry, unit), entry.kind, unit);
  const double most = entry.kind == MeasurementKind::Angle ? kMostSlopeEase : kMostEase;
  if (std::abs(ease) > most) {
    refuse("client.range", document.where(value),
           fmt::format("an ease of {} {} for {} is more than {} either way",
                       document.as_written(value), unit_name(unit, entry.kind), entry.key,
                       measure_text(most, entry.kind, unit)),
           fmt::format("ease is what is added to the body's measure, in {}; not the finished width",
                       unit_name(unit, entry.kind)));
  }
  return ease;
}

}  // namespace blockwright
