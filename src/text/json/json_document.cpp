#include "blockwright/text/json_document.hpp"

#include "blockwright/text/refuse.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>

namespace blockwright {
namespace {

bool begins_a_character(char byte) { return (static_cast<unsigned char>(byte) & 0xC0U) != 0x80U; }

// Of byte `at`, as "line:column", both from 1, the column in characters of UTF-8.
std::string line_and_column(std::string_view text, std::size_t at) {
  const std::string_view before = text.substr(0, at);
  const std::string_view in_line = before.substr(before.rfind('\n') + 1);  // npos + 1 is 0
  return fmt::format("{}:{}", 1 + std::ranges::count(before, '\n'),
                     1 + std::ranges::count_if(in_line, begins_a_character));
}

}  // namespace

std::string_view kind_name(JsonKind kind) {
  constexpr std::array<std::string_view, 6> names = {"null",   "true or false", "a number",
                                                     "a text", "a list",        "an object"};
  return names[static_cast<std::size_t>(kind)];
}

std::string JsonDocument::code(std::string_view what) const {
  return fmt::format("{}.{}", kind_->codes, what);
}

const JsonValue* JsonDocument::member(const JsonValue& object, std::string_view key) const {
  for (const std::size_t index : object.children) {
    if (values_[index].key == key) return &values_[index];
  }
  return nullptr;
}

std::string JsonDocument::where(const JsonValue& value) const {
  return where_at(value.begin, path_of(value));
}

std::string JsonDocument::where_key(const JsonValue& value) const {
  return where_at(value.key_begin, path_of(value));
}

std::string JsonDocument::where_at(std::size_t at, const std::string& path) const {
  std::string text = fmt::format("{}:{}", file_, line_and_column(text_, at));
  return path.empty() ? text : text + ' ' + path;
}

std::string JsonDocument::line_of(const JsonValue& value) const {
  const auto line =
      1 + std::count(text_.begin(), text_.begin() + static_cast<long>(value.begin), '\n');
  return fmt::format("{}:{}", file_, line);
}

std::string JsonDocument::as_written(const JsonValue& value) const {
  return shown(std::string_view(text_).substr(value.begin, value.end - value.begin));
}

std::string JsonDocument::described(const JsonValue& value) const {
  if (value.kind == JsonKind::Text) return "the text " + as_written(value);
  if (value.kind == JsonKind::Number) return "the number " + as_written(value);
  const bool scalar = value.kind == JsonKind::Null || value.kind == JsonKind::Boolean;
  return scalar ? as_written(value) : std::string(kind_name(value.kind));
}

std::string JsonDocument::name_of(const JsonValue& value) const {
  if (&value == &root()) return "the file";
  const JsonValue& parent = values_[value.parent];
  if (parent.kind != JsonKind::List) return shown(value.key);
  return name_of(parent) + index_of(value);
}

// "[2]" for the third element of a list.
std::string JsonDocument::index_of(const JsonValue& element) const {
  const auto self = static_cast<std::size_t>(&element - values_.data());
  const auto& siblings = parent(element).children;
  return fmt::format("[{}]", std::ranges::find(siblings, self) - siblings.begin());
}

// Nesting is bounded, so this recursion is too.
std::string JsonDocument::path_of(const JsonValue& value) const {
  if (&value == &root()) return {};
  const JsonValue& parent = values_[value.parent];
  const std::string path = path_of(parent);
  if (parent.kind == JsonKind::List) return path + index_of(value);
  return path.empty() ? shown(value.key) : path + '.' + shown(value.key);
}

void expect(const JsonDocument& document, const JsonValue& value, JsonKind kind, std::string hint) {
  if (value.kind == kind) return;
  refuse(document.code("type"), document.where(value),
         fmt::format("{} is {}, where {} is expected", document.name_of(value),
                     document.described(value), kind_name(kind)),
         std::move(hint));
}

}  // namespace blockwright
