#include "pdf_fonts.hpp"

#include "blockwright/base/number_text.hpp"

#include <cmath>
#include <cstdint>

namespace blockwright::writing {
namespace {

constexpr double kGlyphThousandths = 1000.0;
constexpr int kWidthDecimals = 3;
constexpr double kWidthGrid = 1000.0;        // 10 to the kWidthDecimals
constexpr std::size_t kCharsPerBlock = 100;  // the most that one beginbfchar may announce

std::string utf16_hex(std::u32string_view letters) {
  std::string text;
  for (const char32_t letter : letters) {
    if (letter < 0x10000) {
      text += pdf_hex_16(letter);
    } else {
      text += pdf_hex_16(0xD800 + ((letter - 0x10000) >> 10));
      text += pdf_hex_16(0xDC00 + ((letter - 0x10000) & 0x3FF));
    }
  }
  return text;
}

void append_16(std::string& bytes, unsigned value) {
  bytes += static_cast<char>(value >> 8);
  bytes += static_cast<char>(value & 0xFF);
}

/// Six capitals from the glyphs used, by the FNV-1a hash.
std::string subset_tag(const std::set<unsigned>& glyphs) {
  std::uint64_t hash = 14695981039346656037u;
  for (const unsigned glyph : glyphs) hash = (hash ^ glyph) * 1099511628211u;
  std::string tag;
  for (int i = 0; i < 6; ++i, hash /= 26) tag += static_cast<char>('A' + hash % 26);
  return tag;
}

// Symbolic (bit 3), since the codes follow no standard alphabet. StemV only matters to viewers that
// must replace the font; it is embedded, so a usual value for regular weight will do.
constexpr std::string_view kFixedEntries = " /Flags 4 /ItalicAngle 0 /StemV 80";
constexpr std::string_view kMapHead =
    "/CIDInit /ProcSet findresource begin\n12 dict begin\nbegincmap\n"
    "/CIDSystemInfo << /Registry (Adobe) /Ordering (UCS) /Supplement 0 >> def\n"
    "/CMapName /Adobe-Identity-UCS def\n/CMapType 2 def\n"
    "1 begincodespacerange\n<0000> <FFFF>\nendcodespacerange\n";
constexpr std::string_view kMapTail =
    "endcmap\nCMapName currentdict /CMap defineresource pop\nend\nend\n";

}  // namespace

std::vector<PdfGlyph> PdfFont::shown(const std::vector<ShapedGlyph>& shaped_glyphs) {
  std::vector<PdfGlyph> glyphs;
  for (const ShapedGlyph& shaped : shaped_glyphs) {
    const double width = width_of(shaped.glyph) / kGlyphThousandths;
    glyphs.push_back({code_of(shaped), width, shaped.advance, shaped.dx, shaped.dy});
  }
  return glyphs;
}

/// TrueType glyphs get a code for each text that they stand for, so that even the box for a missing
/// letter can be searched. The codes of a CFF font are bound to its glyph numbers; this holds for
/// the CFF fonts that TextFonts looks for, where CID and glyph number agree.
unsigned PdfFont::code_of(const ShapedGlyph& glyph) {
  if (is_cff_) {
    by_code_.try_emplace(glyph.glyph, Shown{glyph.glyph, glyph.letters});
    return glyph.glyph;
  }
  const auto next = static_cast<unsigned>(codes_.size() + 1);
  const auto [entry, is_new] = codes_.try_emplace({glyph.glyph, glyph.letters}, next);
  if (is_new) by_code_[next] = {glyph.glyph, glyph.letters};
  return entry->second;
}

double PdfFont::width_of(unsigned glyph) const {
  return std::round(typeface_.advance(glyph) * kGlyphThousandths * kWidthGrid) / kWidthGrid;
}

std::set<unsigned> PdfFont::glyphs() const {
  std::set<unsigned> glyphs;
  for (const auto& [code, shown] : by_code_) glyphs.insert(shown.glyph);
  return glyphs;
}

std::string PdfFont::tagged_name() const {
  return '/' + subset_tag(glyphs()) + '+' + typeface_.name();
}

PdfId PdfFont::add_to(PdfObjects& objects) const {
  const PdfId descendant = add_descendant(objects);
  const PdfId letters = objects.add_stream({code_to_letters()});
  return objects.add("<< /Type /Font /Subtype /Type0 /BaseFont " + tagged_name() +
                     " /Encoding /Identity-H /DescendantFonts [" + pdf_ref(descendant) +
                     "] /ToUnicode " + pdf_ref(letters) + " >>");
}

PdfId PdfFont::add_descendant(PdfObjects& objects) const {
  const FontSubset used = typeface_.subset(glyphs());
  const PdfId descriptor = add_descriptor(objects, used);
  std::string font = "<< /Type /Font /BaseFont " + tagged_name() +
                     " /CIDSystemInfo << /Registry (Adobe) /Ordering (Identity) /Supplement 0 >>"
                     " /FontDescriptor " +
                     pdf_ref(descriptor) + " /W [" + widths() + ']';
  if (is_cff_) return objects.add(font + " /Subtype /CIDFontType0 >>");
  const PdfId map = objects.add_stream({code_to_glyph(used)});
  return objects.add(font + " /Subtype /CIDFontType2 /CIDToGIDMap " + pdf_ref(map) + " >>");
}

PdfId PdfFont::add_descriptor(PdfObjects& objects, const FontSubset& used) const {
  const TypefaceMetrics m = typeface_.metrics();
  const PdfId program = objects.add_stream(
      {used.program,
       is_cff_ ? "/Subtype /CIDFontType0C" : "/Length1 " + std::to_string(used.program.size())});
  std::string text = "<< /Type /FontDescriptor /FontName " + tagged_name();
  text += kFixedEntries;
  text += " /FontBBox [" + std::to_string(m.left) + ' ' + std::to_string(m.bottom) + ' ' +
          std::to_string(m.right) + ' ' + std::to_string(m.top) + ']';
  text += " /Ascent " + std::to_string(m.ascent) + " /Descent " + std::to_string(m.descent) +
          " /CapHeight " + std::to_string(m.cap_height);
  return objects.add(text + (is_cff_ ? " /FontFile3 " : " /FontFile2 ") + pdf_ref(program) + " >>");
}

std::string PdfFont::widths() const {
  std::string text;
  unsigned expected = 0;
  for (const auto& [code, shown] : by_code_) {
    if (text.empty() || code != expected) {
      text += (text.empty() ? "" : "] ") + std::to_string(code) + " [";
    }
    text += trimmed(width_of(shown.glyph), kWidthDecimals) + ' ';
    expected = code + 1;
  }
  return text + ']';
}

std::string PdfFont::code_to_glyph(const FontSubset& used) const {
  std::string map;
  append_16(map, 0);
  for (const auto& [code, shown] : by_code_) append_16(map, used.renumber.at(shown.glyph));
  return map;
}

std::string PdfFont::code_to_letters() const {
  std::vector<std::string> lines;
  for (const auto& [code, shown] : by_code_) {
    if (shown.letters.empty()) continue;
    lines.push_back('<' + pdf_hex_16(code) + "> <" + utf16_hex(shown.letters) + ">\n");
  }
  std::string text(kMapHead);
  for (std::size_t i = 0; i < lines.size(); ++i) {
    if (i % kCharsPerBlock == 0) {
      text += std::to_string(std::min(kCharsPerBlock, lines.size() - i)) + " beginbfchar\n";
    }
    text += lines[i];
    if (i % kCharsPerBlock == kCharsPerBlock - 1 || i + 1 == lines.size()) text += "endbfchar\n";
  }
  return text.append(kMapTail);
}

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
