#include "blockwright/text/utf8.hpp"

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

}  // namespace

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

}  // namespace blockwright
