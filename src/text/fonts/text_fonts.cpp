#include "blockwright/text/text_fonts.hpp"

#include "blockwright/base/embedded_file.hpp"
#include "blockwright/base/printable.hpp"
#include "blockwright/base/utf8.hpp"
#include "text_runs.hpp"

#include <algorithm>
#include <utility>

namespace blockwright {

// BLOCKWRIGHT_FONT_FILE is set by layer.cmake.
BLOCKWRIGHT_EMBEDDED_FILE(builtin_font, BLOCKWRIGHT_FONT_FILE)

namespace {

// Where Debian's fonts-droid-fallback and fonts-noto-cjk put their files.
constexpr const char* kFurtherFonts[] = {
    "/usr/share/fonts/truetype/droid/DroidSansFallbackFull.ttf",
    "/usr/share/fonts/opentype/noto/NotoSansCJK-Regular.ttc",
};
constexpr double kThousandth = 0.001;

std::optional<Typeface> further_typeface() {
  for (const char* path : kFurtherFonts) {
    std::optional<Typeface> typeface = Typeface::from_file(path);
    if (typeface) return typeface;
  }
  return std::nullopt;
}

// Letters that are set together: how many, and how far they move on.
struct Cluster {
  std::size_t letters = 0;
  double advance = 0.0;
};

// In reading order.
std::vector<Cluster> clusters_of(const GlyphRun& run) {
  std::vector<Cluster> clusters;
  for (const ShapedGlyph& glyph : run.glyphs) {
    if (!glyph.letters.empty() || clusters.empty()) clusters.push_back({glyph.letters.size(), 0.0});
    clusters.back().advance += glyph.advance;
  }
  if (run.direction == TextDirection::RightToLeft) std::reverse(clusters.begin(), clusters.end());
  return clusters;
}

// How many letters come before the first one that ends more than `most` beyond the letter `from`.
std::size_t letters_within(const SetLine& line, double most, std::size_t from = 0) {
  std::size_t letters = 0;
  double width = 0.0;
  for (const GlyphRun& run : line.runs) {
    for (const Cluster& cluster : clusters_of(run)) {
      if (letters >= from) {
        width += cluster.advance;
        if (width > most) return letters;
      }
      letters += cluster.letters;
    }
  }
  return letters;
}

// Where each letter begins, and the end of the text.
std::vector<std::size_t> letter_starts(std::string_view utf8) {
  std::vector<std::size_t> starts = {0};
  while (starts.back() < utf8.size()) {
    starts.push_back(starts.back() + utf8_at(utf8, starts.back()).size);
  }
  return starts;
}

}  // namespace

TextFonts::TextFonts() : TextFonts(Typeface::from_memory(builtin_font())) {}

TextFonts::TextFonts(Typeface first) : metrics_(first.metrics()) {
  typefaces_.push_back(std::move(first));
}

std::size_t TextFonts::font_for(char32_t letter) {
  if (typefaces_[0].has(letter)) return 0;
  if (!looked_for_more_) {
    looked_for_more_ = true;
    if (auto typeface = further_typeface()) typefaces_.push_back(std::move(*typeface));
  }
  return typefaces_.size() > 1 && typefaces_[1].has(letter) ? 1 : 0;
}

const SetLine& TextFonts::set(std::string_view utf8) {
  const auto known = lines_.find(utf8);
  if (known != lines_.end()) return known->second;
  return lines_.emplace(utf8, shaped(utf8)).first->second;
}

SetLine TextFonts::shaped(std::string_view utf8) {
  SetLine line;
  const auto font_of = [this](char32_t letter) { return font_for(letter); };
  for (const TextRun& run : text_runs(code_points(printable(utf8)), font_of)) {
    line.runs.push_back(
        {run.font, run.direction, typefaces_[run.font].shape(run.letters, run.direction)});
    for (const ShapedGlyph& glyph : line.runs.back().glyphs) line.width += glyph.advance;
  }
  return line;
}

TextRoom TextFonts::room(std::string_view utf8, double height) {
  return {height * set(utf8).width, height * kThousandth * metrics_.ascent,
          -height * kThousandth * metrics_.descent};
}

std::size_t TextFonts::reaching(std::string_view utf8, double most, std::size_t from) {
  const std::vector<std::size_t> starts = letter_starts(utf8);
  const auto letter = std::lower_bound(starts.begin(), starts.end(), from) - starts.begin();
  return starts[letters_within(set(utf8), most, static_cast<std::size_t>(letter))];
}

// Cut off, the last letter may be wider than it was before the next one.
std::size_t TextFonts::fitting(std::string_view utf8, double most) {
  const std::vector<std::size_t> starts = letter_starts(utf8);
  std::size_t letters = letters_within(set(utf8), most);
  while (letters > 0 && letters + 1 < starts.size() &&
         set(utf8.substr(0, starts[letters])).width > most) {
    --letters;
  }
  return starts[letters];
}

}  // namespace blockwright
