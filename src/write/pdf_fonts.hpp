#pragma once

#include "pdf_font.hpp"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace blockwright::writing {

/// A stretch of a set line in one font.
struct SetRun {
  std::string font;  ///< name in the document's resources, e.g. "F0"
  std::vector<PdfGlyph> glyphs;
};

/// A line of text, ready to be shown from left to right.
struct SetLine {
  std::vector<SetRun> runs;
  double width = 0.0;  ///< em
};

/// The fonts of one document: the built-in one, and one for Chinese, Japanese and Korean letters
/// that is looked for on the machine the first time a text needs it. Letters that no font has are
/// set as the built-in font's box.
class PdfFonts {
 public:
  PdfFonts();
  SetLine set(std::string_view utf8);
  /// Adds the fonts used; the result is the content of a resource dictionary's /Font entry.
  std::string add_to(PdfObjects& objects) const;

 private:
  std::size_t font_for(char32_t letter);

  std::vector<PdfFont> fonts_;
  bool looked_for_more_ = false;
};

}  // namespace blockwright::writing
