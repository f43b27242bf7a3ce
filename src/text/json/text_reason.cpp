#include "blockwright/text/refuse.hpp"
#include "blockwright/text/utf8.hpp"
#include "json_reason.hpp"

#include <fmt/format.h>
#include <nlohmann/json.hpp>

#include <algorithm>

namespace blockwright {
namespace {

// The wide forms of the plain characters from '!' to '~'.
constexpr CodeRange kWide{0xFF01, 0xFF5E};
constexpr char32_t kWideToPlain = 0xFEE0;

constexpr std::u32string_view kQuotes =
    U"\u201C\u201D\u201E\u201F\u00AB\u00BB\u2018\u2019\u201A\u00B4";
constexpr std::u32string_view kDashes = U"\u2010\u2011\u2012\u2013\u2014\u2212";
constexpr std::u32string_view kOtherDigits = U"\u0660\u06F0\u0966\u09E6";  // each script's nought

bool is_other_digit(char32_t code) {
  return std::ranges::any_of(kOtherDigits, [code](char32_t nought) {
    return CodeRange{nought, nought + 9}.holds(code);
  });
}

// By its mark, or by one of its first two bytes being nought.
bool is_utf16(std::string_view text) {
  if (text.size() < 2) return false;
  const bool marked = text.starts_with("\xFF\xFE") || text.starts_with("\xFE\xFF");
  return marked || (text[0] == '\0') != (text[1] == '\0');
}

Reason not_utf8(std::string_view text, std::size_t at) {
  return {fmt::format("the byte {:02X} is not UTF-8", byte_at(text, at)),
          "save the file again as UTF-8, or check that it is the right file", at};
}

// Bytes that no text in UTF-8 has.
std::optional<Reason> why_not_bytes(std::string_view text, std::size_t at) {
  if (at < 2 && is_utf16(text)) {
    return Reason{"the file is saved as UTF-16 or UTF-32", "save the file again as UTF-8", at};
  }
  if (text[at] == '\0') {
    return Reason{"there is a NUL byte",
                  "the file is damaged, or no text: take the byte away, or use a copy", at};
  }
  if (utf8_at(text, at).code == kNotUtf8) return not_utf8(text, at);
  return std::nullopt;
}

std::optional<Reason> why_not_look_alike(std::string_view character, char32_t code) {
  const auto looks_like = [&](std::string_view plain) {
    return fmt::format("{} ({}) is no plain {}", character, code_point_name(code), plain);
  };
  if (kQuotes.find(code) != std::u32string_view::npos) {
    return Reason{looks_like("double quote"), "put texts in straight double quotes: \"...\""};
  }
  if (kDashes.find(code) != std::u32string_view::npos) {
    return Reason{looks_like("minus sign"), "type the minus of the keyboard: -"};
  }
  if (kWide.holds(code)) {
    const std::string plain(1, static_cast<char>(code - kWideToPlain));
    return Reason{
        fmt::format("{} ({}) is the wide form of {}", character, code_point_name(code), plain),
        fmt::format("type the plain {} in its place", plain)};
  }
  if (is_other_digit(code)) {
    return Reason{looks_like("digit"), "write numbers with the digits 0 to 9 and a point: 92.5"};
  }
  return std::nullopt;
}

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

std::optional<Reason> why_not_character(std::string_view text, std::size_t at) {
  if (auto reason = why_not_bytes(text, at)) return reason;
  const auto [code, size] = utf8_at(text, at);
  if (!is_printable(code) && code < 0x80) {
    return Reason{fmt::format("there is a control character {}", code_point_name(code)),
                  "take it away, or check that it is the right file"};
  }
  if (is_blank(code)) {
    return Reason{
        fmt::format("there is a character {}, which cannot be seen", code_point_name(code)),
        "take it away, and type a plain space where there should be one"};
  }
  return why_not_look_alike(text.substr(at, size), code);
}

std::optional<Reason> why_not_in_text(std::string_view text, std::size_t at) {
  if (auto reason = why_not_bytes(text, at)) return reason;
  const char32_t code = utf8_at(text, at).code;
  if (code >= 0x20) return std::nullopt;
  return Reason{fmt::format("the text holds the control character {}", code_point_name(code)),
                "take it away; a tabulator, too, is better a space", at};
}

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
