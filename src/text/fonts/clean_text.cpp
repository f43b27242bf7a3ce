#include "blockwright/text/clean_text.hpp"

#include "blockwright/text/utf8.hpp"

#include <algorithm>

namespace blockwright {
namespace {

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
