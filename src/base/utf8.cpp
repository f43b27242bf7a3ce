#include "blockwright/base/utf8.hpp"

#include <fmt/format.h>

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

}  // namespace blockwright
