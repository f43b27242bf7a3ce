#pragma once

#include "blockwright/text/text_fonts.hpp"
#include "pdf_objects.hpp"

#include <map>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace blockwright::writing {

/// A glyph as a PDF text operator shows it. Lengths are in em.
struct PdfGlyph {
  unsigned code = 0;
  double width = 0.0;    ///< how far the viewer moves on by itself
  double advance = 0.0;  ///< how far it should move on
  double dx = 0.0;
  double dy = 0.0;
};

/// A typeface embedded in a document: two-byte codes are handed out as glyphs are used, and only
/// the used glyphs go into the file, with a table that turns codes back into letters for searching.
class PdfFont {
 public:
  /// Requires: the typeface outlives this.
  explicit PdfFont(const Typeface& typeface) : typeface_(typeface) {}

  [[nodiscard]] bool used() const { return !by_code_.empty(); }
  std::vector<PdfGlyph> shown(const std::vector<ShapedGlyph>& glyphs);
  /// The font object with all that belongs to it. Requires: used(), and nothing is set afterwards.
  [[nodiscard]] PdfId add_to(PdfObjects& objects) const;

 private:
  struct Shown {
    unsigned glyph = 0;
    std::u32string letters;
  };
  unsigned code_of(const ShapedGlyph& glyph);
  [[nodiscard]] double width_of(unsigned glyph) const;
  [[nodiscard]] std::set<unsigned> glyphs() const;
  [[nodiscard]] std::string tagged_name() const;
  [[nodiscard]] PdfId add_descriptor(PdfObjects& objects, const FontSubset& subset) const;
  [[nodiscard]] PdfId add_descendant(PdfObjects& objects) const;
  [[nodiscard]] std::string widths() const;
  [[nodiscard]] std::string code_to_glyph(const FontSubset& subset) const;
  [[nodiscard]] std::string code_to_letters() const;

  const Typeface& typeface_;
  bool is_cff_ = typeface_.is_cff();
  std::map<unsigned, Shown> by_code_;
  std::map<std::pair<unsigned, std::u32string>, unsigned> codes_;
};

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
