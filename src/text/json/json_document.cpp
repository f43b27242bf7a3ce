#include "blockwright/text/json_document.hpp"

#include "blockwright/base/text_place.hpp"
#include "blockwright/text/refuse.hpp"
#include "json_builder.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <istream>

namespace blockwright {
namespace {

constexpr std::size_t kMostBytes = 1U << 20U;

// As much of the stream as shows whether it is too long.
std::string read_some(std::istream& in) {
  std::string text;
  std::array<char, 4096> block{};
  while (text.size() <= kMostBytes) {
    in.read(block.data(), block.size());
    if (in.gcount() == 0) break;
    text.append(block.data(), static_cast<std::size_t>(in.gcount()));
  }
  return text;
}

std::string read_text(std::istream& in, const std::string& file, const JsonDocument& document) {
  std::string text = read_some(in);
  if (text.size() > kMostBytes) {
    refuse(document.code("size"), file, "the file is larger than 1 MiB",
           fmt::format("{} and is a few KiB; is this the right file?", document.kind().holds));
  }
  if (text.starts_with(kByteOrderMark)) text.erase(0, kByteOrderMark.size());
  return text;
}

}  // namespace

std::string_view kind_name(JsonKind kind) {
  switch (kind) {
    case JsonKind::Null:
      return "null";
    case JsonKind::Boolean:
      return "true or false";
    case JsonKind::Number:
      return "a number";
    case JsonKind::Text:
      return "a text";
    case JsonKind::List:
      return "a list";
    case JsonKind::Object:
      return "an object";
  }
  return "null";
}

JsonDocument JsonDocument::read(std::istream& in, std::string_view file, const JsonFileKind& kind) {
  JsonDocument document;
  document.kind_ = &kind;
  document.file_ = file;
  document.text_ = read_text(in, document.file_, document);
  JsonBuilder(document).build();
  return document;
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
  switch (value.kind) {
    case JsonKind::Text:
      return "the text " + as_written(value);
    case JsonKind::Number:
      return "the number " + as_written(value);
    case JsonKind::Null:
    case JsonKind::Boolean:
      return as_written(value);
    case JsonKind::List:
    case JsonKind::Object:
      return std::string(kind_name(value.kind));
  }
  return as_written(value);
}

std::string JsonDocument::name_of(const JsonValue& value) const {
  if (&value == &root()) return "the file";
  const JsonValue& parent = values_[value.parent];
  if (parent.kind != JsonKind::List) return shown(value.key);
  return name_of(parent) + index_in(parent, value);
}

// "[2]" for the third element.
std::string JsonDocument::index_in(const JsonValue& list, const JsonValue& element) const {
  const auto self = static_cast<std::size_t>(&element - values_.data());
  const auto found = std::ranges::find(list.children, self);
  return fmt::format("[{}]", found - list.children.begin());
}

// Nesting is bounded, so this recursion is too.
std::string JsonDocument::path_of(const JsonValue& value) const {
  if (&value == &root()) return {};
  const JsonValue& parent = values_[value.parent];
  const std::string path = path_of(parent);
  if (parent.kind == JsonKind::List) return path + index_in(parent, value);
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
