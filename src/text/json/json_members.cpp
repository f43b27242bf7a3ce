#include "blockwright/text/json_members.hpp"

#include "blockwright/text/nearest.hpp"
#include "blockwright/text/odd_character.hpp"
#include "blockwright/text/refuse.hpp"
#include "calendar.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>

namespace blockwright {
namespace {

bool holds(std::span<const std::string_view> known, std::string_view key) {
  return std::ranges::find(known, key) != known.end();
}

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

}  // namespace

void check_keys(const JsonDocument& document, const JsonValue& object,
                std::span<const std::string_view> known) {
  for (std::size_t i = 0; i < object.children.size(); ++i) {
    const JsonValue& member = document.child(object, i);
    if (!holds(known, member.key)) refuse_key(document, member, known);
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
         fmt::format("{} is not a date between the years 1900 and 2199{}",
                     document.as_written(value), odd_letter_note(value.text)),
         hint);
}

}  // namespace blockwright
