#pragma once

#include <bitset>
#include <map>
#include <memory>
#include <optional>
#include <set>
#include <string>
#include <string_view>
#include <vector>

struct hb_blob_t;
struct hb_face_t;
struct hb_font_t;

namespace blockwright {

enum class TextDirection { LeftToRight, RightToLeft };

/// A glyph where shaping put it. Lengths are in em.
struct ShapedGlyph {
  unsigned glyph = 0;  ///< number in the typeface; 0 is the box that stands for a missing letter
  std::u32string letters;  ///< what it stands for; empty for further glyphs of the same letters
  double advance = 0.0;
  double dx = 0.0;
  double dy = 0.0;
};

/// The glyphs of a typeface that a document uses.
struct FontSubset {
  std::string program;                    ///< TrueType file, or bare CFF program
  std::map<unsigned, unsigned> renumber;  ///< glyph number before -> in the subset
};

/// Numbers that a PDF font descriptor wants, in thousandths of an em.
struct TypefaceMetrics {
  int left = 0, bottom = 0, right = 0, top = 0;
  int ascent = 0, descent = 0, cap_height = 0;
};

/// An outline font: what it has, how it sets letters, and the part of it that a document needs.
/// Only this file and its sources know the library that reads fonts.
class Typeface {
 public:
  /// Requires: `file` is a font file and outlives the typeface.
  static Typeface from_memory(std::string_view file);
  /// Empty if there is no readable font at `path`. The only file access of this layer.
  static std::optional<Typeface> from_file(const std::string& path);

  [[nodiscard]] bool has(char32_t letter) const;
  /// Glyphs from left to right. Requires: one script, one direction.
  [[nodiscard]] std::vector<ShapedGlyph> shape(std::u32string_view letters,
                                               TextDirection direction) const;
  /// Advance width in em.
  [[nodiscard]] double advance(unsigned glyph) const;
  /// PostScript name, letters and digits only.
  [[nodiscard]] std::string name() const;
  /// "DejaVu Sans"
  [[nodiscard]] std::string family() const;
  [[nodiscard]] TypefaceMetrics metrics() const;
  /// True for PostScript outlines (CFF), false for TrueType outlines.
  [[nodiscard]] bool is_cff() const;
  /// Glyph 0 is always kept, with its outline.
  [[nodiscard]] FontSubset subset(const std::set<unsigned>& glyphs) const;

 private:
  explicit Typeface(hb_blob_t* file);

  std::shared_ptr<hb_face_t> face_;
  std::shared_ptr<hb_font_t> font_;
  double units_per_em_ = 1000.0;
  std::bitset<128> ascii_;  ///< which of these letters it has: nearly all of a text
};

}  // namespace blockwright
