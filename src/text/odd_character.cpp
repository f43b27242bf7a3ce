#include "blockwright/text/odd_character.hpp"

#include "blockwright/text/utf8.hpp"
#include "json_reason.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>

namespace blockwright {
namespace {

// Unicode's White_Space and Default_Ignorable_Code_Point, and the empty Braille cell; from memory.
constexpr std::array<CodeRange, 21> kBlanks{{
    {0x09, 0x0D},       {0x20, 0x20},     {0x85, 0x85},     {0xA0, 0xA0},     {0xAD, 0xAD},
    {0x34F, 0x34F},     {0x61C, 0x61C},   {0x115F, 0x1160}, {0x1680, 0x1680}, {0x17B4, 0x17B5},
    {0x180B, 0x180F},   {0x2000, 0x200F}, {0x2028, 0x202F}, {0x205F, 0x206F}, {0x2800, 0x2800},
    {0x3000, 0x3000},   {0x3164, 0x3164}, {0xFE00, 0xFE0F}, {0xFEFF, 0xFEFF}, {0xFFA0, 0xFFA0},
    {0xE0000, 0xE0FFF},
}};

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
  return {fmt::format("the byte {:02X} stands here, which is not UTF-8", byte_at(text, at)),
          "save the file again as UTF-8, or check that it is the right file", at};
}

// Bytes that no text in UTF-8 has.
std::optional<Reason> why_not_bytes(std::string_view text, std::size_t at) {
  if (at < 2 && is_utf16(text)) {
    return Reason{"the file is saved as UTF-16 or UTF-32", "save the file again as UTF-8", at};
  }
  if (text[at] == '\0') {
    return Reason{"a NUL byte stands here",
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
    return Reason{looks_like("double quote"), "texts stand in straight double quotes: \"...\""};
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

}  // namespace

std::string code_point_name(char32_t code) {
  return fmt::format("U+{:04X}", static_cast<unsigned>(code));
}

bool is_blank(char32_t code) {
  return std::ranges::any_of(kBlanks, [code](const CodeRange& r) { return r.holds(code); });
}

std::optional<Reason> why_not_character(std::string_view text, std::size_t at) {
  if (auto reason = why_not_bytes(text, at)) return reason;
  const auto [code, size] = utf8_at(text, at);
  if (is_control(code) && code < 0x80) {
    return Reason{fmt::format("the control character {} stands here", code_point_name(code)),
                  "take it away, or check that it is the right file"};
  }
  if (is_blank(code)) {
    return Reason{fmt::format("the character {}, of which nothing is to be seen, stands here",
                              code_point_name(code)),
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

std::string odd_letter_note(std::string_view word) {
  for (const char32_t code : code_points(word)) {
    if (code < 0x7F && code >= 0x20) continue;
    return fmt::format("; it holds {}, which is no plain letter, digit or sign",
                       code_point_name(code));
  }
  return {};
}

}  // namespace blockwright
