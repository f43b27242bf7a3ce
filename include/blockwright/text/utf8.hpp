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

/// The code point that stands for bytes which are not UTF-8.
inline constexpr char32_t kNotUtf8 = 0xFFFFFFFF;

/// The byte at `at`, 0 to 255. Requires: at < text.size().
unsigned byte_at(std::string_view text, std::size_t at);

/// The character that begins at byte `at`; kNotUtf8 with size 1 where none does.
/// Requires: at < text.size().
Utf8Character utf8_at(std::string_view text, std::size_t at);

/// Adds the character to a UTF-8 text. Requires: a Unicode scalar value.
void append_utf8(std::string& text, char32_t code);

/// Characters that no name may hold: control characters, line and paragraph separators, the marks
/// that turn the direction of writing round, and bytes that are not UTF-8.
bool is_control(char32_t code);

/// How many characters `text` holds; a byte that is not UTF-8 counts as one.
std::size_t utf8_length(std::string_view text);

}  // namespace blockwright
