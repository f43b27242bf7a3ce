#include "blockwright/text/odd_character.hpp"
#include "blockwright/text/refuse.hpp"
#include "blockwright/text/utf8.hpp"
#include "json_reason.hpp"

#include <fmt/format.h>
#include <nlohmann/json.hpp>

namespace blockwright {
namespace {

constexpr std::size_t kUnicodeEscape = 6;  // \u00eb

// The escape at `at`, as far as it can be shown: two characters, or six of \u.
std::string_view escape_at(std::string_view text, std::size_t at) {
  return text.substr(at, text.substr(at, 2) == "\\u" ? kUnicodeEscape : 2);
}

Reason why_not_unicode_escape(std::string_view escape, std::size_t at) {
  const std::string_view digits = escape.substr(2);
  const bool hexadecimal =
      digits.find_first_not_of("0123456789abcdefABCDEF") == std::string_view::npos;
  if (digits.size() < 4 || !hexadecimal) {
    return {fmt::format("{} is not followed by four hexadecimal digits", escape.substr(0, 2)),
            "write the letter itself, or \\u and four digits: \\u00eb", at};
  }
  return {fmt::format("{} is half of a character that needs two escapes", escape),
          "write the character itself, or both halves", at};
}

Reason why_not_escape(std::string_view text, std::size_t at) {
  const std::string_view escape = escape_at(text, at);
  if (escape.starts_with("\\u")) return why_not_unicode_escape(escape, at);
  return {fmt::format("{} is no escape: a backslash must be followed by one of \" \\ / b f n r t u",
                      shown(escape)),
          "write \\\\ where the text shall hold a backslash", at};
}

// How many bytes the escape at `at` takes; 0 if it is none.
std::size_t escape_size(std::string_view text, std::size_t at) {
  for (const std::size_t size : {std::size_t{2}, kUnicodeEscape, 2 * kUnicodeEscape}) {
    if (nlohmann::json::accept(fmt::format("\"{}\"", text.substr(at, size)))) return size;
  }
  return 0;
}

Reason not_closed(std::string_view line) {
  return {fmt::format("the text {} is not closed on its line", shown(line)),
          "end it with a double quote on the same line"};
}

}  // namespace

Reason why_not_text(std::string_view text, std::size_t at) {
  for (std::size_t i = at + 1; i < text.size() && text[i] != '"';) {
    if (text[i] == '\n' || text[i] == '\r') return not_closed(text.substr(at, i - at));
    if (auto reason = why_not_in_text(text, i)) return *reason;
    const bool escape = text[i] == '\\';
    const std::size_t size = escape ? escape_size(text, i) : utf8_at(text, i).size;
    if (size == 0) return why_not_escape(text, i);
    i += size;
  }
  return {fmt::format("the text {} is not closed before the file ends", shown(text.substr(at))),
          "end it with a double quote; the end of the file may be missing"};
}

}  // namespace blockwright
