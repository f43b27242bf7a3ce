#pragma once

#include "blockwright/text/typeface.hpp"

#include <cstddef>
#include <functional>
#include <string>
#include <string_view>
#include <vector>

namespace blockwright {

/// A stretch of one line that is shaped at once: one font, one script, one direction.
struct TextRun {
  std::u32string letters;
  std::size_t font = 0;
  TextDirection direction = TextDirection::LeftToRight;
};

/// Tells by which font, counted from 0, a letter is set.
using FontChooser = std::function<std::size_t(char32_t)>;

/// Cuts a line into runs, to be set from left to right.
///
/// Marks and joiners stay with the letter before them. Spaces and punctuation run right to left
/// only between two right-to-left letters. This is the Unicode bidirectional algorithm for a
/// left-to-right line without embeddings, except that numbers between right-to-left words keep
/// their place in reading order from the left: enough for names, not for prose.
std::vector<TextRun> text_runs(std::u32string_view line, const FontChooser& font_of);

}  // namespace blockwright
