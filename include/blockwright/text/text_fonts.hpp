#pragma once

#include "blockwright/text/typeface.hpp"

#include <cstddef>
#include <deque>
#include <functional>
#include <map>
#include <string>
#include <string_view>
#include <vector>

namespace blockwright {

/// A stretch of a set line in one font and direction.
struct GlyphRun {
  std::size_t font = 0;  ///< its number in TextFonts
  TextDirection direction = TextDirection::LeftToRight;
  std::vector<ShapedGlyph> glyphs;  ///< from left to right
};

/// A line of text as it is set, from left to right.
struct SetLine {
  std::vector<GlyphRun> runs;
  double width = 0.0;  ///< em
};

/// The room that a line of text takes, in mm.
struct TextRoom {
  double width = 0.0;
  double above = 0.0;  ///< how far letters reach above the baseline
  double below = 0.0;
};

/// The fonts in which all texts of a document are measured and written: the first one, and one for
/// Chinese, Japanese and Korean letters that is looked for on the machine the first time a text
/// needs it. Letters that no font has are set as the first font's box. What is not printable is
/// set as printable() gives it (base/printable.hpp).
class TextFonts {
 public:
  /// Begins with the font that is built into the program.
  TextFonts();
  explicit TextFonts(Typeface first);

  /// Kept until the fonts go: the same line is asked for again and again while a page is laid out.
  const SetLine& set(std::string_view utf8);
  /// At a height (em) of the letters in mm.
  TextRoom room(std::string_view utf8, double height);
  /// Bytes of the longest beginning of a text that is at most `most` em wide. Never cuts a letter,
  /// or letters that are set as one. Requires: a printable text.
  std::size_t fitting(std::string_view utf8, double most);
  /// Where the letters end that lie within `most` em from the byte `from` on, with the whole text
  /// set: fitting(), but for the last letter, which may be wider at an end. Requires: a
  /// printable text; a letter begins at `from`, or the text ends there.
  std::size_t reaching(std::string_view utf8, double most, std::size_t from = 0);

  /// Requires: a number that a run has.
  [[nodiscard]] const Typeface& typeface(std::size_t font) const { return typefaces_[font]; }

 private:
  std::size_t font_for(char32_t letter);
  SetLine shaped(std::string_view utf8);

  std::deque<Typeface> typefaces_;
  TypefaceMetrics metrics_;  ///< of the first one
  std::map<std::string, SetLine, std::less<>> lines_;
  bool looked_for_more_ = false;
};

}  // namespace blockwright
