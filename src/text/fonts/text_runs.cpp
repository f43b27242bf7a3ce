#include "text_runs.hpp"

#include <hb.h>

#include <algorithm>

namespace blockwright {
namespace {

enum class Strength { Left, Right, Neutral };

struct Letter {
  char32_t code = 0;
  hb_script_t script = HB_SCRIPT_COMMON;
  Strength strength = Strength::Neutral;
  std::size_t font = 0;
};

bool has_own_script(hb_script_t script) {
  return script != HB_SCRIPT_COMMON && script != HB_SCRIPT_INHERITED;
}

bool is_number(char32_t code) {
  return hb_unicode_general_category(hb_unicode_funcs_get_default(), code) ==
         HB_UNICODE_GENERAL_CATEGORY_DECIMAL_NUMBER;
}

/// Combining marks and invisible joiners belong to the letter before them.
bool joins_previous(char32_t code) {
  switch (hb_unicode_general_category(hb_unicode_funcs_get_default(), code)) {
    case HB_UNICODE_GENERAL_CATEGORY_NON_SPACING_MARK:
    case HB_UNICODE_GENERAL_CATEGORY_ENCLOSING_MARK:
    case HB_UNICODE_GENERAL_CATEGORY_SPACING_MARK:
    case HB_UNICODE_GENERAL_CATEGORY_FORMAT:
      return true;
    default:
      return false;
  }
}

Strength strength_of(char32_t code, hb_script_t script) {
  if (is_number(code)) return Strength::Left;
  if (!has_own_script(script)) return Strength::Neutral;
  return hb_script_get_horizontal_direction(script) == HB_DIRECTION_RTL ? Strength::Right
                                                                        : Strength::Left;
}

Letter letter_of(char32_t code, const Letter& previous, const FontChooser& font_of) {
  if (previous.code != 0 && joins_previous(code)) {
    return {code, previous.script, previous.strength, previous.font};
  }
  const hb_script_t script = hb_unicode_script(hb_unicode_funcs_get_default(), code);
  return {code, script, strength_of(code, script), font_of(code)};
}

/// Gives each stretch of neutral letters a direction and the script before it.
void settle_neutrals(std::vector<Letter>& letters) {
  const auto is_neutral = [](const Letter& l) { return l.strength == Strength::Neutral; };
  for (auto first = letters.begin(); first != letters.end();) {
    first = std::find_if(first, letters.end(), is_neutral);
    const auto last = std::find_if_not(first, letters.end(), is_neutral);
    const bool inside_right = first != letters.begin() && last != letters.end() &&
                              std::prev(first)->strength == Strength::Right &&
                              last->strength == Strength::Right;
    for (; first != last; ++first) {
      first->strength = inside_right ? Strength::Right : Strength::Left;
    }
  }
}

void spread_scripts(std::vector<Letter>& letters) {
  for (std::size_t i = 1; i < letters.size(); ++i) {
    const bool same_way = letters[i].strength == letters[i - 1].strength;
    if (same_way && !has_own_script(letters[i].script)) letters[i].script = letters[i - 1].script;
  }
}

bool same_run(const Letter& a, const Letter& b) {
  const bool scripts_agree = a.script == b.script || !has_own_script(a.script);
  return a.strength == b.strength && a.font == b.font && scripts_agree;
}

}  // namespace

std::vector<TextRun> text_runs(std::u32string_view line, const FontChooser& font_of) {
  std::vector<Letter> letters;
  letters.reserve(line.size());
  for (const char32_t code : line) {
    letters.push_back(letter_of(code, letters.empty() ? Letter{} : letters.back(), font_of));
  }
  settle_neutrals(letters);
  spread_scripts(letters);
  std::vector<TextRun> runs;
  for (std::size_t i = 0; i < letters.size(); ++i) {
    if (i == 0 || !same_run(letters[i - 1], letters[i])) {
      runs.push_back({{},
                      letters[i].font,
                      letters[i].strength == Strength::Right ? TextDirection::RightToLeft
                                                             : TextDirection::LeftToRight});
    }
    runs.back().letters += letters[i].code;
  }
  return runs;
}

}  // namespace blockwright
