#include "blockwright/base/number_text.hpp"
#include "blockwright/text/json_values.hpp"
#include "blockwright/text/refuse.hpp"
#include "blockwright/text/utf8.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <chrono>

namespace blockwright {
namespace {

constexpr int kFirstYear = 1900;
constexpr int kLastYear = 2199;

[[noreturn]] void refuse_key(const JsonDocument& document, const JsonValue& member,
                             std::span<const std::string_view> known) {
  const auto right_place = document.kind().right_place;
  const std::string place = right_place == nullptr ? std::string() : right_place(member.key, known);
  const std::string key = shown(member.key);
  const std::string message =
      place.empty() ? fmt::format("unknown key \"{}\"{}", key, odd_letter_note(member.key))
                    : fmt::format("the key \"{}\" has no place here", key);
  refuse(document.code("key"), document.where_key(member), message,
         place.empty() ? did_you_mean(member.key, known) : place);
}

// A file that says "Format" or "fromat" for its first word.
void refuse_misspelt_format(const JsonDocument& document, std::span<const std::string_view> known) {
  constexpr std::array<std::string_view, 1> format{"format"};
  for (std::size_t i = 0; i < document.root().children.size(); ++i) {
    const JsonValue& member = document.child(document.root(), i);
    if (!nearest(member.key, format).empty()) refuse_key(document, member, known);
  }
}

bool has_form(std::string_view text) {
  constexpr std::string_view form = "0000-00-00";
  return std::ranges::equal(
      text, form, [](char c, char sign) { return sign == '-' ? c == '-' : c >= '0' && c <= '9'; });
}

// Whether the text is a real day of the calendar written as ISO 8601 has it, "2026-03-14".
bool is_date(std::string_view text) {
  if (!has_form(text)) return false;
  const int year = *number_in<int>(text.substr(0, 4));
  const std::chrono::year_month_day date{
      std::chrono::year(year), std::chrono::month(*number_in<unsigned>(text.substr(5, 2))),
      std::chrono::day(*number_in<unsigned>(text.substr(8, 2)))};
  return date.ok() && year >= kFirstYear && year <= kLastYear;
}

}  // namespace

void check_keys(const JsonDocument& document, const JsonValue& object,
                std::span<const std::string_view> known) {
  for (std::size_t i = 0; i < object.children.size(); ++i) {
    const JsonValue& member = document.child(object, i);
    if (std::ranges::find(known, member.key) == known.end()) refuse_key(document, member, known);
  }
}

void check_format(const JsonDocument& document, std::span<const std::string_view> known) {
  const JsonValue& root = document.root();
  const JsonFileKind& kind = document.kind();
  expect(document, root, JsonKind::Object,
         fmt::format("a {} file is one object in braces: {{ ... }}", kind.codes));
  if (document.member(root, "format") == nullptr) refuse_misspelt_format(document, known);
  const std::string write = fmt::format("write \"format\": \"{}\"", kind.format);
  const JsonValue& format = required(document, root, "format", write);
  expect(document, format, JsonKind::Text, write);
  if (format.text == kind.format) return;
  const std::string hint =
      kind.other_format_hint == nullptr ? "" : kind.other_format_hint(format.text);
  refuse(document.code("format"), document.where(format),
         fmt::format("the format is {}; this program reads \"{}\"{}", document.as_written(format),
                     kind.format, odd_letter_note(format.text)),
         hint.empty() ? write + "; a file of a later version needs that version" : hint);
}

const JsonValue& required(const JsonDocument& document, const JsonValue& object,
                          std::string_view key, std::string hint) {
  const JsonValue* value = document.member(object, key);
  if (value == nullptr) {
    refuse(document.code("missing"), document.where(object), fmt::format("\"{}\" is missing", key),
           std::move(hint), {std::string(key)});
  }
  return *value;
}

std::string read_date(const JsonDocument& document, const JsonValue& object) {
  const std::string hint = "write year-month-day, a day of the calendar: \"2026-03-14\"";
  const JsonValue& value = required(document, object, "date", hint);
  expect(document, value, JsonKind::Text, hint);
  if (is_date(value.text)) return value.text;
  refuse(document.code("date"), document.where(value),
         fmt::format("{} is not a date between the years {} and {}{}", document.as_written(value),
                     kFirstYear, kLastYear, odd_letter_note(value.text)),
         hint);
}

}  // namespace blockwright
