#pragma once

#include "pdf_font.hpp"

#include <string>
#include <string_view>
#include <vector>

namespace blockwright::writing {

/// A stretch of a set line in one font, as PDF shows it.
struct PdfRun {
  std::string font;  ///< name in the document's resources, e.g. "F0"
  std::vector<PdfGlyph> glyphs;
};

/// A line of text, ready to be shown from left to right.
struct PdfLine {
  std::vector<PdfRun> runs;
  double width = 0.0;  ///< em
};

/// The fonts of one document.
class PdfFonts {
 public:
  explicit PdfFonts(TextFonts& fonts) : fonts_(fonts) {}
  PdfLine set(std::string_view utf8);
  /// Adds the fonts used; the result is the content of a resource dictionary's /Font entry.
  std::string add_to(PdfObjects& objects) const;

 private:
  PdfFont& font(std::size_t number);

  TextFonts& fonts_;
  std::vector<PdfFont> embedded_;  ///< by their number in fonts_
};

}  // namespace blockwright::writing
