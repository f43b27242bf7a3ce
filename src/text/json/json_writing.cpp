#include "blockwright/base/printable.hpp"
#include "blockwright/base/utf8.hpp"
#include "blockwright/text/json_edit.hpp"

#include <fmt/format.h>
#include <nlohmann/json.hpp>

namespace blockwright {
namespace {

// A byte that is not UTF-8 stays, for the reader to refuse.
std::string escaped(std::string_view character, char32_t code) {
  if (code == '"' || code == '\\') return "\\" + std::string(character);
  return code == kNotUtf8 ? std::string(character) : printable(character);
}

bool is_json_number(std::string_view typed) {
  const bool plain = typed.find_first_not_of("0123456789+-.eE") == std::string_view::npos;
  return plain && nlohmann::json::accept(typed);
}

std::vector<std::string> members_of(const JsonPart& part, const JsonStyle& style,
                                    const std::string& indent) {
  std::vector<std::string> texts;
  for (const auto& [key, value] : part.members) {
    const std::string name = key.empty() ? "" : json_quoted(key) + style.colon;
    texts.push_back(name + written(value, style, indent));
  }
  return texts;
}

}  // namespace

std::string json_quoted(std::string_view text) {
  std::string result = "\"";
  for (std::size_t at = 0; at < text.size();) {
    const Utf8Character character = utf8_at(text, at);
    result += escaped(text.substr(at, character.size), character.code);
    at += character.size;
  }
  return result + '"';
}

JsonPart json_text(std::string_view text) { return {.scalar = json_quoted(text)}; }

JsonPart json_amount(std::string_view typed) {
  return is_json_number(typed) ? JsonPart{.scalar = std::string(typed)} : json_text(typed);
}

std::string written(const JsonPart& part, const JsonStyle& style, const std::string& indent) {
  if (part.kind == JsonPart::Kind::Scalar) return part.scalar;
  const bool object = part.kind == JsonPart::Kind::Object;
  const std::string open = object ? "{" : "[";
  const std::string close = object ? "}" : "]";
  if (part.members.empty()) return open + close;
  if (part.lines) {
    const std::string inner = style.newline + indent + style.step;
    return fmt::format("{}{}{}{}{}{}", open, inner,
                       fmt::join(members_of(part, style, indent + style.step), ',' + inner),
                       style.newline, indent, close);
  }
  const std::string pad = object && style.comma.size() > 1 ? " " : "";
  return fmt::format("{}{}{}{}{}", open, pad,
                     fmt::join(members_of(part, style, indent), style.comma), pad, close);
}

JsonPart on_one_line(JsonPart part) {
  part.lines = false;
  for (auto& member : part.members) member.second = on_one_line(std::move(member.second));
  return part;
}

}  // namespace blockwright
