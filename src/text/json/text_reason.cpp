#include "text_reason.hpp"

#include "blockwright/text/odd_character.hpp"
#include "blockwright/text/refuse.hpp"
#include "blockwright/text/utf8.hpp"
#include "character_reason.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace blockwright {
namespace {

constexpr std::string_view kEscapes = "\"\\/bfnrtu";
constexpr std::size_t kUnicodeEscape = 6;  // \u00eb

bool is_hexadecimal(char c) {
  return (c >= '0' && c <= '9') || (c >= 'a' && c <= 'f') || (c >= 'A' && c <= 'F');
}

// The escape at `at`, as far as it can be shown: two characters, or six of \u.
std::string_view escape_at(std::string_view text, std::size_t at) {
  return text.substr(at, text.substr(at, 2) == "\\u" ? kUnicodeEscape : 2);
}

Reason why_not_unicode_escape(std::string_view escape, std::size_t at) {
  const std::string_view digits = escape.substr(2);
  if (digits.size() < 4 || !std::ranges::all_of(digits, is_hexadecimal)) {
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

unsigned code_of(std::string_view escape) {
  unsigned code = 0;
  for (const char c : escape.substr(2)) {
    const bool digit = c <= '9';
    code = code * 16 + static_cast<unsigned>(digit ? c - '0' : (c | 0x20) - 'a' + 10);
  }
  return code;
}

bool is_surrogate(unsigned code, unsigned first) { return code >= first && code < first + 0x400; }

// How many bytes the escape at `at` takes; 0 if it is none.
std::size_t escape_size(std::string_view text, std::size_t at) {
  const std::string_view escape = escape_at(text, at);
  if (escape.size() < 2 || kEscapes.find(escape[1]) == std::string_view::npos) return 0;
  if (escape[1] != 'u') return 2;
  if (escape.size() < kUnicodeEscape || !std::ranges::all_of(escape.substr(2), is_hexadecimal)) {
    return 0;
  }
  const unsigned code = code_of(escape);
  if (is_surrogate(code, 0xDC00)) return 0;
  if (!is_surrogate(code, 0xD800)) return kUnicodeEscape;
  const std::string_view second = escape_at(text, at + kUnicodeEscape);
  const bool whole = second.size() == kUnicodeEscape && second.starts_with("\\u") &&
                     std::ranges::all_of(second.substr(2), is_hexadecimal) &&
                     is_surrogate(code_of(second), 0xDC00);
  return whole ? 2 * kUnicodeEscape : 0;
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
