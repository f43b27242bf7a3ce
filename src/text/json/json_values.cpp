#include "blockwright/text/json_values.hpp"

#include "blockwright/text/nearest.hpp"
#include "blockwright/text/odd_character.hpp"
#include "blockwright/text/refuse.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <limits>

namespace blockwright {
namespace {

std::string schema_hint(const JsonDocument& document) {
  return fmt::format("see docs/formats.md or `blockwright schema {}`", document.kind().codes);
}

const JsonValue& expected(const JsonDocument& document, const JsonValue& value, JsonKind kind) {
  expect(document, value, kind, schema_hint(document));
  return value;
}

}  // namespace

void read_value(const JsonDocument& document, const JsonValue& value, std::string& into) {
  into = expected(document, value, JsonKind::Text).text;
}

void read_value(const JsonDocument& document, const JsonValue& value, bool& into) {
  into = expected(document, value, JsonKind::Boolean).flag;
}

void read_value(const JsonDocument& document, const JsonValue& value, double& into) {
  into = expected(document, value, JsonKind::Number).number;
}

void read_value(const JsonDocument& document, const JsonValue& value, int& into) {
  const double number = expected(document, value, JsonKind::Number).number;
  if (number != std::floor(number) || std::abs(number) > std::numeric_limits<int>::max()) {
    refuse(document.code("type"), document.where(value),
           fmt::format("{} is {}, where a whole number is expected", document.name_of(value),
                       document.described(value)),
           schema_hint(document));
  }
  into = static_cast<int>(number);
}

void expect_list(const JsonDocument& document, const JsonValue& value) {
  expected(document, value, JsonKind::List);
}

std::size_t read_word(const JsonDocument& document, const JsonValue& value,
                      std::span<const std::string_view> words) {
  expected(document, value, JsonKind::Text);
  const auto found = std::ranges::find(words, value.text);
  if (found != words.end()) return static_cast<std::size_t>(found - words.begin());
  refuse(document.code("value"), document.where(value),
         fmt::format("{} cannot be {}{}", document.name_of(value), document.as_written(value),
                     odd_letter_note(value.text)),
         did_you_mean(value.text, words));
}

}  // namespace blockwright
