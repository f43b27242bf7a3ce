#include "tape_value.hpp"

#include "blockwright/measure/ease.hpp"
#include "blockwright/text/inch_text.hpp"
#include "blockwright/text/odd_character.hpp"
#include "blockwright/text/refuse.hpp"
#include "client_keys.hpp"
#include "measure_text.hpp"
#include "slip.hpp"

#include <fmt/format.h>

#include <cmath>

namespace blockwright {
namespace {

enum class Use { Reading, Ease };

// Null, true or false, or a text without a letter or digit: signs that there is no value.
bool stands_for_nothing(const JsonValue& value) {
  if (value.kind != JsonKind::Text) {
    return value.kind == JsonKind::Null || value.kind == JsonKind::Boolean;
  }
  return value.text.find_first_not_of(" -?.") == std::string::npos;
}

std::string_view nothing_hint(const JsonDocument& document, const JsonValue& value, Use use) {
  if (use == Use::Ease) return "leave the key out for the ease that is used by default";
  if (document.name_of(value).ends_with(']')) return "leave the reading out";
  return "leave the key out if the measurement was not taken";
}

std::string_view number_hint(const MeasurementInfo& entry, Unit unit, Use use) {
  const bool reading = use == Use::Reading;
  if (entry.kind == MeasurementKind::Angle) {
    return reading ? "write the degrees as a bare number: 24.5"
                   : "write the degrees as a bare number: -5.5";
  }
  if (unit == Unit::Cm) {
    return reading ? "write the number without quotes, with a point: 92.5"
                   : "write one number without quotes, with a point: 5.0";
  }
  return reading ? "write a number, 36.5, or a fraction in quotes as on the tape, \"36 1/2\""
                 : "write a number, 2.5, or a fraction in quotes as on the tape, \"2 1/2\"";
}

std::string type_hint(const JsonDocument& document, const JsonValue& value,
                      const MeasurementInfo& entry, Unit unit, Use use) {
  if (stands_for_nothing(value)) return std::string(nothing_hint(document, value, use));
  const bool in_cm = unit == Unit::Cm && entry.kind != MeasurementKind::Angle;
  std::string hint = in_cm ? fraction_in_cm(value.text) : std::string();
  return hint.empty() ? std::string(number_hint(entry, unit, use)) : hint;
}

[[noreturn]] void refuse_type(const JsonDocument& document, const JsonValue& value,
                              const MeasurementInfo& entry, Unit unit, Use use) {
  refuse("client.type", document.where(value),
         fmt::format("{} is {}, where a number of {} is expected{}", document.name_of(value),
                     document.described(value), unit_word(unit, entry.kind),
                     odd_letter_note(value.text)),
         type_hint(document, value, entry, unit, use));
}

// The number as written: in the file's unit, or degrees.
double read_number(const JsonDocument& document, const JsonValue& value,
                   const MeasurementInfo& entry, Unit unit, Use use) {
  if (value.kind == JsonKind::Number) return value.number;
  const bool fractions = unit == Unit::Inch && entry.kind != MeasurementKind::Angle;
  if (value.kind == JsonKind::Text && fractions) {
    if (const auto inches = inches_of(value.text)) return *inches;
  }
  refuse_type(document, value, entry, unit, use);
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

double read_reading(const JsonDocument& document, const JsonValue& value,
                    const MeasurementInfo& entry, Unit unit) {
  const double written = read_number(document, value, entry, unit, Use::Reading);
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
  const double ease = in_mm(read_number(document, value, entry, unit, Use::Ease), entry.kind, unit);
  const double most = most_ease(entry.name);
  if (std::abs(ease) > most) {
    refuse("client.range", document.where(value),
           fmt::format("an ease of {} {} for {} is more than {} either way",
                       document.as_written(value), unit_name(unit, entry.kind), entry.key,
                       measure_text(most, entry.kind, unit)),
           fmt::format("ease is what is added to the body's measure, in {}; not the finished width",
                       unit_word(unit, entry.kind)));
  }
  return ease;
}

}  // namespace blockwright
