#include "blockwright/base/error.hpp"
#include "blockwright/measure/body.hpp"
#include "blockwright/text/refuse.hpp"
#include "blockwright/text/units.hpp"
#include "blockwright/text/utf8.hpp"
#include "client_file.hpp"
#include "measure_text.hpp"
#include "slips.hpp"

#include <fmt/format.h>

namespace blockwright {
namespace {

constexpr NumberHints kReading{
    .cm = "write the number without quotes, with a point: 92.5",
    .inches = "write a number, 36.5, or a fraction in quotes as on the tape, \"36 1/2\"",
    .degrees = "write the degrees as a bare number: 24.5",
    .nothing = "leave the key out, or write null, if the measurement was not taken"};
constexpr NumberHints kEase{
    .cm = "write one number without quotes, with a point: 5.0",
    .inches = "write a number, 2.5, or a fraction in quotes as on the tape, \"2 1/2\"",
    .degrees = "write the degrees as a bare number: -5.5",
    .nothing = "leave the key out for the ease that is used by default"};

// Null, true or false, or a text without a letter or digit: signs that there is no value.
bool stands_for_nothing(const JsonValue& value) {
  if (value.kind != JsonKind::Text) {
    return value.kind == JsonKind::Null || value.kind == JsonKind::Boolean;
  }
  return value.text.find_first_not_of(" -?.") == std::string::npos;
}

std::string type_hint(const JsonValue& value, MeasurementKind kind, Unit unit,
                      const NumberHints& hints) {
  if (!hints.nothing.empty() && stands_for_nothing(value)) return std::string(hints.nothing);
  if (kind == MeasurementKind::Angle) return std::string(hints.degrees);
  if (unit == Unit::Inch) return std::string(hints.inches);
  const std::string fraction = fraction_in_cm(value.text);
  return fraction.empty() ? std::string(hints.cm) : fraction;
}

Measure measured(const FileMeasurement& file, double written) {
  return measured(written, file.entry.kind, file.unit);
}

// What is said of a value that cannot be.
struct OutOfRange {
  std::string message;
  std::string hint;
  Limit limit;
};

[[noreturn]] void refuse_range(const FileMeasurement& file, const JsonValue& value,
                               const OutOfRange& said) {
  throw InputError({.severity = Severity::Error,
                    .code = "client.range",
                    .where = file.document.where(value),
                    .message = said.message,
                    .hint = said.hint,
                    .measurements = {std::string(file.entry.key)},
                    .limit = said.limit});
}

std::string with_whole_session(const std::string& hint, Unit unit) {
  const Unit other = unit == Unit::Cm ? Unit::Inch : Unit::Cm;
  const bool ended = hint.ends_with('.') || hint.ends_with('?');
  return hint + (ended ? "" : ".") +
         fmt::format(" If all is in {}, write \"unit\": \"{}\" and leave the numbers",
                     unit_word(other), unit_name(other));
}

[[noreturn]] void refuse_reading(const FileMeasurement& file, const JsonValue& value,
                                 const std::string& hint) {
  const auto& [document, entry, unit, bust, other_unit] = file;
  refuse_range(
      file, value,
      {fmt::format("{} is {} {}, outside {}", document.name_of(value), document.as_written(value),
                   unit_name(unit, entry.kind), limits_text(entry, unit)),
       other_unit ? with_whole_session(hint, unit) : hint,
       {.least = entry.least, .most = entry.most}});
}

Measure read_reading(const FileMeasurement& file, const JsonValue& value,
                     const NumberHints& hints) {
  const auto& [document, entry, unit, bust, other_unit] = file;
  const double written = read_number(document, value, entry.kind, unit, hints);
  const Measure reading = measured(file, written);
  if (!entry.allows(reading)) {
    const bool is_text = value.kind == JsonKind::Text;
    const Written as_written{is_text ? value.text : document.as_written(value), written, unit};
    refuse_reading(file, value, range_hint(entry, as_written, bust));
  }
  return reading;
}

// [74,5] is two readings where a decimal comma was meant.
void check_comma(const FileMeasurement& file, const JsonValue& value) {
  if (value.kind != JsonKind::Number || file.document.as_written(value).size() != 1) return;
  if (file.entry.allows(measured(file, value.number))) return;
  refuse_reading(file, value,
                 "commas part the readings of a list; write decimals with a point: 74.5");
}

void check_size(const FileMeasurement& file, const JsonValue& list) {
  const std::size_t count = list.children.size();
  if (count == 0) {
    refuse("client.missing", file.document.where(list),
           fmt::format("{} is a list without readings", file.entry.key),
           "write at least one reading, or leave the key out");
  }
  if (count <= kMostReadings) return;
  refuse("client.size", file.document.where(list),
         fmt::format("{} has {} readings, over {}", file.entry.key, count, kMostReadings),
         "keep the last few; readings of another day belong in a session of their own");
}

}  // namespace

double read_number(const JsonDocument& document, const JsonValue& value, MeasurementKind kind,
                   Unit unit, const NumberHints& hints) {
  if (value.kind == JsonKind::Number) return value.number;
  const bool fractions = unit == Unit::Inch && kind != MeasurementKind::Angle;
  if (value.kind == JsonKind::Text && fractions) {
    if (const auto inches = inches_of(value.text)) return *inches;
  }
  refuse("client.type", document.where(value),
         fmt::format("{} is {}, where a number of {} is expected{}", document.name_of(value),
                     document.described(value), unit_word(unit, kind), odd_letter_note(value.text)),
         type_hint(value, kind, unit, hints));
}

std::optional<Readings> read_readings(const FileMeasurement& file, const JsonValue& value) {
  if (value.kind == JsonKind::Null) return std::nullopt;
  if (value.kind != JsonKind::List) return Readings{{read_reading(file, value, kReading)}};
  check_size(file, value);
  NumberHints hints = kReading;
  hints.nothing = "leave the reading out";
  Readings readings;
  for (std::size_t i = 0; i < value.children.size(); ++i) {
    const JsonValue& one = file.document.child(value, i);
    if (i > 0) check_comma(file, one);
    readings.values.push_back(read_reading(file, one, hints));
  }
  return readings;
}

std::optional<Measure> read_ease(const FileMeasurement& file, const JsonValue& value) {
  const auto& [document, entry, unit, bust, other_unit] = file;
  const Measure ease = measured(file, read_number(document, value, entry.kind, unit, kEase));
  const Measure most = most_ease(entry.name);
  if (abs(ease) <= most) return ease;
  refuse_range(
      file, value,
      {fmt::format("an ease of {} {} for {} is more than {} either way", document.as_written(value),
                   unit_name(unit, entry.kind), entry.key, measure_text(most, unit)),
       fmt::format("ease is what is added to the body's measure, in {}; not the finished width",
                   unit_word(unit, entry.kind)),
       {.least = -most, .most = most}});
}

}  // namespace blockwright
