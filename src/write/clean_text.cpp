#include "clean_text.hpp"

#include <array>
#include <cstdint>

namespace blockwright::writing {
namespace {

// The smallest letter that needs so many bytes.
constexpr std::array<char32_t, 5> kSmallest{0, 0, 0x80, 0x800, 0x10000};

struct Decoded {
  char32_t letter = kReplacement;
  std::size_t bytes = 1;
};

std::size_t sequence_size(std::uint8_t lead) {
  if (lead < 0x80) return 1;
  if (lead < 0xC2) return 0;
  if (lead < 0xE0) return 2;
  if (lead < 0xF0) return 3;
  return lead < 0xF5 ? 4 : 0;
}

bool is_scalar_value(char32_t letter) {
  return letter <= 0x10FFFF && !(letter >= 0xD800 && letter <= 0xDFFF);
}

/// Requires: text is not empty.
Decoded decode_first(std::string_view text) {
  const auto byte = [&](std::size_t i) { return static_cast<std::uint8_t>(text[i]); };
  const std::size_t size = sequence_size(byte(0));
  if (size == 1) return {byte(0), 1};
  if (size == 0 || size > text.size()) return {};
  char32_t letter = byte(0) & (0x7Fu >> size);
  for (std::size_t i = 1; i < size; ++i) {
    if ((byte(i) & 0xC0u) != 0x80u) return {};
    letter = (letter << 6) | (byte(i) & 0x3Fu);
  }
  if (letter < kSmallest[size] || !is_scalar_value(letter)) return {};
  return {letter, size};
}

void append_utf8(std::string& text, char32_t letter) {
  const auto add = [&](char32_t byte) { text += static_cast<char>(byte); };
  const auto add_tail = [&](int shift) { add(0x80 | ((letter >> shift) & 0x3F)); };
  if (letter < 0x80) return add(letter);
  if (letter < 0x800) {
    add(0xC0 | (letter >> 6));
  } else if (letter < 0x10000) {
    add(0xE0 | (letter >> 12));
    add_tail(6);
  } else {
    add(0xF0 | (letter >> 18));
    add_tail(12);
    add_tail(6);
  }
  add_tail(0);
}

bool is_line_space(char32_t letter) {
  return (letter >= 0x09 && letter <= 0x0D) || letter == 0x85 || letter == 0x2028 ||
         letter == 0x2029;
}

bool is_control(char32_t letter) { return letter < 0x20 || (letter >= 0x7F && letter <= 0x9F); }

bool is_noncharacter(char32_t letter) {
  return (letter >= 0xFDD0 && letter <= 0xFDEF) || (letter & 0xFFFE) == 0xFFFE;
}

}  // namespace

std::u32string letters_of(std::string_view utf8) {
  std::u32string letters;
  while (!utf8.empty()) {
    const Decoded first = decode_first(utf8);
    letters += first.letter;
    utf8.remove_prefix(first.bytes);
  }
  return letters;
}

std::string utf8_of(std::u32string_view letters) {
  std::string text;
  for (const char32_t letter : letters) append_utf8(text, letter);
  return text;
}

std::u32string line_letters(std::string_view utf8) {
  std::u32string letters = letters_of(utf8);
  for (char32_t& letter : letters) {
    if (is_line_space(letter)) {
      letter = U' ';
    } else if (is_control(letter) || is_noncharacter(letter)) {
      letter = kReplacement;
    }
  }
  return letters;
}

std::string clean_line(std::string_view utf8) { return utf8_of(line_letters(utf8)); }

std::string xml_text(std::string_view utf8) {
  std::string escaped;
  for (const char c : clean_line(utf8)) {
    switch (c) {
      case '&':
        escaped += "&amp;";
        break;
      case '<':
        escaped += "&lt;";
        break;
      case '>':
        escaped += "&gt;";
        break;
      case '"':
        escaped += "&quot;";
        break;
      default:
        escaped += c;
    }
  }
  return escaped;
}

}  // namespace blockwright::writing
