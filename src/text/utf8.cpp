#include "blockwright/text/utf8.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>

namespace blockwright {
namespace {

// Bytes of a character by its first byte; 0 if none begins so.
std::size_t size_by_first(unsigned first) {
  if (first < 0x80) return 1;
  if (first >= 0xC2 && first < 0xE0) return 2;
  if (first >= 0xE0 && first < 0xF0) return 3;
  if (first >= 0xF0 && first < 0xF5) return 4;
  return 0;
}

// Too long a form for its value, a surrogate, or beyond the last code point (RFC 3629).
bool is_forbidden(char32_t code, std::size_t size) {
  if (size == 3 && code < 0x800) return true;
  if (size == 4 && (code < 0x10000 || code > 0x10FFFF)) return true;
  return code >= 0xD800 && code <= 0xDFFF;
}

// Unicode's White_Space and Default_Ignorable_Code_Point, and the empty Braille cell; from memory.
constexpr std::array<CodeRange, 21> kBlanks{{
    {0x09, 0x0D},       {0x20, 0x20},     {0x85, 0x85},     {0xA0, 0xA0},     {0xAD, 0xAD},
    {0x34F, 0x34F},     {0x61C, 0x61C},   {0x115F, 0x1160}, {0x1680, 0x1680}, {0x17B4, 0x17B5},
    {0x180B, 0x180F},   {0x2000, 0x200F}, {0x2028, 0x202F}, {0x205F, 0x206F}, {0x2800, 0x2800},
    {0x3000, 0x3000},   {0x3164, 0x3164}, {0xFE00, 0xFE0F}, {0xFEFF, 0xFEFF}, {0xFFA0, 0xFFA0},
    {0xE0000, 0xE0FFF},
}};

// What stands for a byte or letter that cannot be shown.
constexpr char32_t kReplacement = 0xFFFD;

bool is_line_space(char32_t letter) {
  return (letter >= 0x09 && letter <= 0x0D) || letter == 0x85 || letter == 0x2028 ||
         letter == 0x2029;
}

bool is_noncharacter(char32_t letter) {
  return (letter >= 0xFDD0 && letter <= 0xFDEF) || (letter & 0xFFFE) == 0xFFFE;
}

char32_t drawn(char32_t letter) {
  if (is_line_space(letter)) return U' ';
  return is_control(letter) || is_noncharacter(letter) ? kReplacement : letter;
}

}  // namespace

unsigned byte_at(std::string_view text, std::size_t at) {
  return static_cast<unsigned char>(text[at]);
}

Utf8Character utf8_at(std::string_view text, std::size_t at) {
  const unsigned first = byte_at(text, at);
  const std::size_t size = size_by_first(first);
  if (size == 1) return {first, 1};
  if (size == 0 || at + size > text.size()) return {kNotUtf8, 1};
  char32_t code = first & (0x7FU >> size);
  for (std::size_t i = 1; i < size; ++i) {
    const unsigned next = byte_at(text, at + i);
    if ((next & 0xC0U) != 0x80U) return {kNotUtf8, 1};
    code = (code << 6U) | (next & 0x3FU);
  }
  if (is_forbidden(code, size)) return {kNotUtf8, 1};
  return {code, size};
}

void append_utf8(std::string& text, char32_t code) {
  const auto add = [&](char32_t byte) { text += static_cast<char>(byte); };
  const auto add_tail = [&](int shift) { add(0x80 | ((code >> shift) & 0x3F)); };
  if (code < 0x80) return add(code);
  if (code < 0x800) {
    add(0xC0 | (code >> 6));
  } else if (code < 0x10000) {
    add(0xE0 | (code >> 12));
    add_tail(6);
  } else {
    add(0xF0 | (code >> 18));
    add_tail(12);
    add_tail(6);
  }
  add_tail(0);
}

bool is_control(char32_t code) {
  const bool c0_or_c1 = code < 0x20 || (code >= 0x7F && code < 0xA0);
  const bool separator = code == 0x2028 || code == 0x2029;
  const bool turns_writing =
      (code >= 0x202A && code <= 0x202E) || (code >= 0x2066 && code <= 0x2069);
  return c0_or_c1 || separator || turns_writing || code == kNotUtf8;
}

std::u32string code_points(std::string_view text) {
  std::u32string codes;
  for (std::size_t at = 0; at < text.size();) {
    const Utf8Character character = utf8_at(text, at);
    codes += character.code;
    at += character.size;
  }
  return codes;
}

std::string code_point_name(char32_t code) {
  return fmt::format("U+{:04X}", static_cast<unsigned>(code));
}

bool is_blank(char32_t code) {
  return std::ranges::any_of(kBlanks, [code](const CodeRange& r) { return r.holds(code); });
}

std::string odd_letter_note(std::string_view word) {
  for (const char32_t code : code_points(word)) {
    if (code < 0x7F && code >= 0x20) continue;
    return fmt::format("; it holds {}, which is no plain letter, digit or sign",
                       code_point_name(code));
  }
  return {};
}

std::u32string line_letters(std::string_view utf8) {
  std::u32string letters = code_points(utf8);
  std::ranges::transform(letters, letters.begin(), drawn);
  return letters;
}

std::string clean_line(std::string_view utf8) {
  std::string text;
  for (const char32_t letter : line_letters(utf8)) append_utf8(text, letter);
  return text;
}

}  // namespace blockwright
