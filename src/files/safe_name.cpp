#include "blockwright/files/safe_name.hpp"

#include "blockwright/text/utf8.hpp"

#include <algorithm>
#include <array>
#include <string_view>

namespace blockwright {
namespace {

constexpr std::size_t kLongestStem = 80;
constexpr std::string_view kInPlace = "-";

// What is seen and yet no letter, digit or mark on a letter, by Unicode's blocks; from memory. Of
// blocks that also hold letters only the parts that hold none.
constexpr std::array<CodeRange, 21> kNoLetters{{
    {0x80, 0xA9},                                         // controls, no-break space, Latin signs
    {0xAB, 0xB4},                                         // but for the ordinal signs and micro
    {0xB6, 0xB9},        {0xBB, 0xBF},     {0xD7, 0xD7},  // times
    {0xF7, 0xF7},                                         // divided by
    {0x2000, 0x206F},  // spaces, dashes, quotes, dots, fraction stroke, marks of direction
    {0x2190, 0x2BFF},  // arrows, operators (strokes among them), boxes, symbols
    {0x2E00, 0x2E7F},  // further punctuation
    {0x3000, 0x3004},  // wide space and stops
    {0x3008, 0x3020},  // brackets
    {0xD800, 0xF8FF},  // halves of UTF-16, private use
    {0xFE10, 0xFE1F},  // upright punctuation
    {0xFE30, 0xFE6F},  // small forms of punctuation
    {0xFF00, 0xFF0F},  // wide punctuation, full stop and stroke among it
    {0xFF1A, 0xFF20},    {0xFF3B, 0xFF40},  // wide backslash among them
    {0xFF5B, 0xFF65},    {0xFFE0, 0xFFFF},  // wide signs, specials
    {0x1F000, 0x1FBFF},                     // pictures
    {0xE0000, kNotUtf8},                    // tags, private use, bytes that are not UTF-8
}};

bool is_plain(char32_t c) {
  return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9') || c == '-' ||
         c == '_' || c == '.';
}

bool is_letter(char32_t code) {
  if (code < 0x80) return is_plain(code);
  return !is_blank(code) &&
         std::ranges::none_of(kNoLetters, [code](const CodeRange& r) { return r.holds(code); });
}

/// Letters of the text, each other character a dash, as far as whole letters fit.
std::string in_letters(std::string_view text) {
  std::string safe;
  while (!text.empty()) {
    const Utf8Character character = utf8_at(text, 0);
    const std::string_view kept =
        is_letter(character.code) ? text.substr(0, character.size) : kInPlace;
    if (safe.size() + kept.size() > kLongestStem) break;
    safe += kept;
    text.remove_prefix(character.size);
  }
  return safe;
}

std::string_view without_ending(std::string_view name) {
  const std::size_t dot = name.find_last_of('.');
  return dot == std::string_view::npos || dot == 0 ? name : name.substr(0, dot);
}

}  // namespace

std::string safe_stem(const std::string& path) {
  std::string_view name = path;
  name.remove_prefix(std::min(name.find_last_of('/') + 1, name.size()));
  name = without_ending(name);
  std::string stem = in_letters(name);
  stem.erase(0, std::min(stem.find_first_not_of(".-"), stem.size()));
  return stem.empty() ? "client" : stem;
}

std::string folder_of(const std::string& path) {
  const std::size_t slash = path.find_last_of('/');
  if (slash == std::string::npos) return ".";
  return slash == 0 ? "/" : path.substr(0, slash);
}

std::string joined_path(const std::string& folder, const std::string& name) {
  if (folder.empty() || folder == ".") return name;
  return folder.back() == '/' ? folder + name : folder + "/" + name;
}

}  // namespace blockwright
