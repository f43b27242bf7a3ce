#pragma once

#include <cstddef>
#include <string>
#include <string_view>

namespace blockwright {

/// One character of a UTF-8 text: its code point, and how many bytes it takes.
struct Utf8Character {
  char32_t code = 0;
  std::size_t size = 1;
};

/// The code points from one to another, both among them.
struct CodeRange {
  char32_t first = 0;
  char32_t last = 0;

  [[nodiscard]] constexpr bool holds(char32_t code) const { return code >= first && code <= last; }
};

/// The code point that stands for bytes which are not UTF-8.
inline constexpr char32_t kNotUtf8 = 0xFFFFFFFF;

/// The byte at `at`, 0 to 255. Requires: at < text.size().
unsigned byte_at(std::string_view text, std::size_t at);

/// The character that begins at byte `at`; kNotUtf8 with size 1 where none does.
/// Requires: at < text.size().
Utf8Character utf8_at(std::string_view text, std::size_t at);

/// Adds the character to a UTF-8 text. Requires: a Unicode scalar value.
void append_utf8(std::string& text, char32_t code);

/// The characters of a text; kNotUtf8 for each byte that is not UTF-8.
std::u32string code_points(std::string_view text);

/// "U+00A0"
std::string code_point_name(char32_t code);

}  // namespace blockwright
