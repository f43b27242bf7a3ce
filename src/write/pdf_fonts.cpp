#include "pdf_fonts.hpp"

namespace blockwright::writing {

PdfFont& PdfFonts::font(std::size_t number) {
  while (embedded_.size() <= number) embedded_.emplace_back(fonts_.typeface(embedded_.size()));
  return embedded_[number];
}

PdfLine PdfFonts::set(std::string_view utf8) {
  const SetLine& set = fonts_.set(utf8);
  PdfLine line{{}, set.width};
  for (const GlyphRun& run : set.runs) {
    line.runs.push_back({'F' + std::to_string(run.font), font(run.font).shown(run.glyphs)});
  }
  return line;
}

std::string PdfFonts::add_to(PdfObjects& objects) const {
  std::string entries;
  for (std::size_t i = 0; i < embedded_.size(); ++i) {
    if (!embedded_[i].used()) continue;
    entries += "/F" + std::to_string(i) + ' ' + pdf_ref(embedded_[i].add_to(objects)) + ' ';
  }
  return entries;
}

}  // namespace blockwright::writing
