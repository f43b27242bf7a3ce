#include "blockwright/text/typeface.hpp"

#include "blockwright/base/error.hpp"

#include <hb-ot.h>
#include <hb.h>

#include <array>
#include <cmath>
#include <cstdint>
#include <utility>

namespace blockwright {
namespace {

constexpr double kFontThousandths = 1000.0;
// Where xMin, yMin, xMax, yMax begin in the table 'head': ISO/IEC 14496-22 (Open Font Format).
constexpr std::size_t kBoxAt = 36;

using Table = std::shared_ptr<hb_blob_t>;

Table table_of(hb_face_t* face, hb_tag_t tag) {
  return {hb_face_reference_table(face, tag), hb_blob_destroy};
}

int signed_16(hb_blob_t* blob, std::size_t at) {
  unsigned size = 0;
  const char* data = hb_blob_get_data(blob, &size);
  if (at + 1 >= size) return 0;
  const auto byte = [&](std::size_t i) { return static_cast<unsigned char>(data[i]); };
  return static_cast<std::int16_t>(static_cast<std::uint16_t>((byte(at) << 8) | byte(at + 1)));
}

using Buffer = std::shared_ptr<hb_buffer_t>;

Buffer buffer_of(std::u32string_view letters, TextDirection direction) {
  Buffer buffer(hb_buffer_create(), hb_buffer_destroy);
  std::vector<std::uint32_t> codes(letters.begin(), letters.end());
  hb_buffer_add_codepoints(buffer.get(), codes.data(), static_cast<int>(codes.size()), 0, -1);
  hb_buffer_set_cluster_level(buffer.get(), HB_BUFFER_CLUSTER_LEVEL_MONOTONE_CHARACTERS);
  hb_buffer_set_direction(
      buffer.get(), direction == TextDirection::RightToLeft ? HB_DIRECTION_RTL : HB_DIRECTION_LTR);
  // Said here, because the guess would take the language from the machine's locale.
  hb_buffer_set_language(buffer.get(), hb_language_from_string("en", -1));
  hb_buffer_guess_segment_properties(buffer.get());
  return buffer;
}

/// The letters of the cluster that a glyph is the first of. Clusters begin at their letters'
/// numbers, which rise from glyph to glyph or, right to left, fall.
std::u32string_view letters_of(const hb_glyph_info_t* infos, unsigned count, unsigned first,
                               std::u32string_view letters) {
  const std::size_t begin = infos[first].cluster;
  std::size_t end = letters.size();
  if (first > 0 && infos[first - 1].cluster > begin) end = infos[first - 1].cluster;
  for (unsigned i = first + 1; i < count && infos[i].cluster >= begin; ++i) {
    if (infos[i].cluster == begin) continue;
    end = infos[i].cluster;
    break;
  }
  return letters.substr(begin, end - begin);
}

bool has_glyph(hb_font_t* font, char32_t letter) {
  hb_codepoint_t glyph = 0;
  return hb_font_get_nominal_glyph(font, letter, &glyph) != 0;
}

std::string name_entry(hb_face_t* face, hb_ot_name_id_t entry) {
  std::array<char, 64> buffer{};
  unsigned size = buffer.size();
  hb_ot_name_get_utf8(face, entry, HB_LANGUAGE_INVALID, &size, buffer.data());
  return {buffer.data(), size};
}

}  // namespace

Typeface::Typeface(hb_blob_t* file)
    : face_(hb_face_create(file, 0), hb_face_destroy),
      font_(hb_font_create(face_.get()), hb_font_destroy) {
  hb_blob_destroy(file);
  units_per_em_ = hb_face_get_upem(face_.get());
  for (char32_t letter = 0; letter < ascii_.size(); ++letter) {
    ascii_[letter] = has_glyph(font_.get(), letter);
  }
}

Typeface Typeface::from_memory(std::string_view file) {
  Typeface typeface(hb_blob_create(file.data(), static_cast<unsigned>(file.size()),
                                   HB_MEMORY_MODE_READONLY, nullptr, nullptr));
  require(hb_face_get_glyph_count(typeface.face_.get()) > 0, "the built-in font has no glyphs");
  return typeface;
}

std::optional<Typeface> Typeface::from_file(const std::string& path) {
  hb_blob_t* file = hb_blob_create_from_file_or_fail(path.c_str());
  if (file == nullptr) return std::nullopt;
  Typeface typeface(file);
  if (hb_face_get_glyph_count(typeface.face_.get()) == 0) return std::nullopt;
  return typeface;
}

bool Typeface::has(char32_t letter) const {
  return letter < ascii_.size() ? ascii_[letter] : has_glyph(font_.get(), letter);
}

std::vector<ShapedGlyph> Typeface::shape(std::u32string_view letters,
                                         TextDirection direction) const {
  const Buffer buffer = buffer_of(letters, direction);
  hb_shape(font_.get(), buffer.get(), nullptr, 0);
  unsigned count = 0;
  const hb_glyph_info_t* infos = hb_buffer_get_glyph_infos(buffer.get(), &count);
  const hb_glyph_position_t* places = hb_buffer_get_glyph_positions(buffer.get(), &count);
  std::vector<ShapedGlyph> glyphs;
  glyphs.reserve(count);
  for (unsigned i = 0; i < count; ++i) {
    const bool first = i == 0 || infos[i - 1].cluster != infos[i].cluster;
    glyphs.push_back({infos[i].codepoint,
                      std::u32string(first ? letters_of(infos, count, i, letters) : U""),
                      places[i].x_advance / units_per_em_, places[i].x_offset / units_per_em_,
                      places[i].y_offset / units_per_em_});
  }
  return glyphs;
}

double Typeface::advance(unsigned glyph) const {
  return hb_font_get_glyph_h_advance(font_.get(), glyph) / units_per_em_;
}

std::string Typeface::name() const {
  std::string name;
  for (const char c : name_entry(face_.get(), HB_OT_NAME_ID_POSTSCRIPT_NAME)) {
    const bool plain = (c >= '0' && c <= '9') || (c >= 'A' && c <= 'Z') || (c >= 'a' && c <= 'z');
    if (plain) name += c;
  }
  return name.empty() ? "Font" : name;
}

std::string Typeface::family() const { return name_entry(face_.get(), HB_OT_NAME_ID_FONT_FAMILY); }

bool Typeface::is_cff() const {
  return hb_blob_get_length(table_of(face_.get(), HB_TAG('C', 'F', 'F', ' ')).get()) > 0;
}

TypefaceMetrics Typeface::metrics() const {
  const Table head = table_of(face_.get(), HB_TAG('h', 'e', 'a', 'd'));
  const auto thousandths = [&](double units) {
    return static_cast<int>(std::lround(units * kFontThousandths / units_per_em_));
  };
  const auto box = [&](std::size_t i) {
    return thousandths(signed_16(head.get(), kBoxAt + 2 * i));
  };
  hb_font_extents_t extents{};
  hb_font_get_h_extents(font_.get(), &extents);
  hb_position_t cap_height = extents.ascender;
  hb_ot_metrics_get_position(font_.get(), HB_OT_METRICS_TAG_CAP_HEIGHT, &cap_height);
  return {box(0),
          box(1),
          box(2),
          box(3),
          thousandths(extents.ascender),
          thousandths(extents.descender),
          thousandths(cap_height)};
}

}  // namespace blockwright
