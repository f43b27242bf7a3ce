#include "members.hpp"

#include "calendar.hpp"
#include "client_problem.hpp"
#include "odd_character.hpp"

#include <fmt/format.h>

namespace blockwright {

const JsonValue& required(const JsonDocument& document, const JsonValue& object,
                          std::string_view key, std::string hint) {
  const JsonValue* value = document.member(object, key);
  if (value == nullptr) {
    refuse("client.missing", document.where(object), fmt::format("\"{}\" is missing", key),
           std::move(hint));
  }
  return *value;
}

std::string read_date(const JsonDocument& document, const JsonValue& object) {
  const std::string hint = "write year-month-day, a day of the calendar: \"2026-03-14\"";
  const JsonValue& value = required(document, object, "date", hint);
  expect(document, value, JsonKind::Text, hint);
  if (is_date(value.text)) return value.text;
  refuse("client.date", document.where(value),
         fmt::format("{} is not a date between the years 1900 and 2199{}",
                     document.as_written(value), odd_letter_note(value.text)),
         hint);
}

}  // namespace blockwright
