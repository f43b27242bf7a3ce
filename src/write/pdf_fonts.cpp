#include "pdf_fonts.hpp"

#include "builtin_font.hpp"
#include "clean_text.hpp"
#include "text_runs.hpp"

namespace blockwright::writing {
namespace {

// Where Debian's fonts-droid-fallback and fonts-noto-cjk put their files.
constexpr const char* kFurtherFonts[] = {
    "/usr/share/fonts/truetype/droid/DroidSansFallbackFull.ttf",
    "/usr/share/fonts/opentype/noto/NotoSansCJK-Regular.ttc",
};

std::optional<Typeface> further_typeface() {
  for (const char* path : kFurtherFonts) {
    std::optional<Typeface> typeface = Typeface::from_file(path);
    if (typeface) return typeface;
  }
  return std::nullopt;
}

}  // namespace

PdfFonts::PdfFonts() { fonts_.emplace_back(Typeface::from_memory(builtin_font())); }

std::size_t PdfFonts::font_for(char32_t letter) {
  if (fonts_[0].typeface().has(letter)) return 0;
  if (!looked_for_more_) {
    looked_for_more_ = true;
    if (auto typeface = further_typeface()) fonts_.emplace_back(std::move(*typeface));
  }
  return fonts_.size() > 1 && fonts_[1].typeface().has(letter) ? 1 : 0;
}

SetLine PdfFonts::set(std::string_view utf8) {
  SetLine line;
  const auto font_of = [this](char32_t letter) { return font_for(letter); };
  for (const TextRun& run : text_runs(line_letters(utf8), font_of)) {
    SetRun set_run{'F' + std::to_string(run.font),
                   fonts_[run.font].set(run.letters, run.direction)};
    for (const PdfGlyph& glyph : set_run.glyphs) line.width += glyph.advance;
    line.runs.push_back(std::move(set_run));
  }
  return line;
}

std::string PdfFonts::add_to(PdfObjects& objects) const {
  std::string entries;
  for (std::size_t i = 0; i < fonts_.size(); ++i) {
    if (!fonts_[i].used()) continue;
    entries += "/F" + std::to_string(i) + ' ' + pdf_ref(fonts_[i].add_to(objects)) + ' ';
  }
  return entries;
}

}  // namespace blockwright::writing
