#include "blockwright/text/json_edit.hpp"

#include <fmt/format.h>
#include <nlohmann/json.hpp>

namespace blockwright {
namespace {

constexpr unsigned char kFirstPlain = 0x20;  // below are control characters

std::string escaped(char c) {
  if (c == '"' || c == '\\') return {'\\', c};
  if (static_cast<unsigned char>(c) >= kFirstPlain) return {c};
  return fmt::format("\\u{:04x}", static_cast<unsigned>(c));
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
  for (const char c : text) result += escaped(c);
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
