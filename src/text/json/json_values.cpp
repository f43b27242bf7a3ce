#include "blockwright/text/json_values.hpp"

#include "blockwright/text/refuse.hpp"
#include "blockwright/text/utf8.hpp"

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

// What programs put in the place of a letter that they could not read.
constexpr char32_t kLostLetter = 0xFFFD;

void refuse_character(const JsonDocument& document, const JsonValue& value, char32_t code) {
  if (code == kLostLetter) {
    refuse(document.code("text"), document.where(value),
           fmt::format("{} is {}; U+FFFD stands for a letter that was lost",
                       document.name_of(value), document.as_written(value)),
           "write the letter again and save the file as UTF-8");
  }
  if (!is_printable(code)) {
    refuse(document.code("text"), document.where(value),
           fmt::format("{} holds the control character {}", document.name_of(value),
                       code_point_name(code)),
           "take it away; texts are printed on the pieces as they are");
  }
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

std::string read_plain_text(const JsonDocument& document, const JsonValue& value,
                            std::size_t most) {
  expect(document, value, JsonKind::Text, "write a text in double quotes: \"...\"");
  const std::u32string codes = code_points(value.text);
  for (const char32_t code : codes) refuse_character(document, value, code);
  if (codes.size() <= most) return value.text;
  refuse(document.code("size"), document.where(value),
         fmt::format("{} has {} characters, over {}: {}", document.name_of(value), codes.size(),
                     most, document.as_written(value)),
         "shorten it");
}

std::string read_name(const JsonDocument& document, const JsonValue& value) {
  std::string name = read_plain_text(document, value);
  const std::u32string codes = code_points(name);
  if (!std::ranges::all_of(codes, is_blank)) return name;
  const bool odd = name.find_first_not_of(' ') != std::string::npos;
  refuse(document.code("text"), document.where(value),
         fmt::format("the name {} is empty{}", document.as_written(value),
                     odd ? fmt::format("; it holds only {}, which cannot be seen",
                                       code_point_name(codes[0]))
                         : ""),
         std::string(document.kind().name));
}

}  // namespace blockwright
