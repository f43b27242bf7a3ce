#include "blockwright/base/number_text.hpp"
#include "blockwright/text/text_fonts.hpp"
#include "blockwright/write/writers.hpp"
#include "svg_parts.hpp"
#include "xml_text.hpp"

#include <algorithm>
#include <ostream>

namespace blockwright {
namespace {

using namespace writing;

constexpr int kAngleDecimals = 4;
constexpr std::string_view kAnchorNames[] = {"start", "middle", "end"};

/// Pieces in the order in which the sheet first names them; the empty name is the sheet's own
/// marks.
std::vector<std::string> piece_names(const Sheet& sheet) {
  std::vector<std::string> names;
  const auto note = [&](const std::string& name) {
    if (std::find(names.begin(), names.end(), name) == names.end()) names.push_back(name);
  };
  for (const Stroke& stroke : sheet.strokes) note(stroke.piece);
  for (const SheetText& text : sheet.texts) note(text.piece);
  return names;
}

std::string grey_text(double grey) {
  const std::string percent = trimmed(100.0 * grey, 0) + '%';
  return "rgb(" + percent + ',' + percent + ',' + percent + ')';
}

/// Width, dashes and colour as attributes, not as a style sheet: cutters and drawing programs that
/// ignore style sheets still see them.
std::string style_attributes(const LineStyle& style) {
  std::string text = " stroke-width=\"" + svg_number(style.width) + '"';
  if (!style.dashes.empty()) {
    text += " stroke-dasharray=\"";
    for (const double dash : style.dashes) text += svg_number(dash) + ' ';
    text.back() = '"';
  }
  if (style.grey > 0.0) text += " stroke=\"" + grey_text(style.grey) + '"';
  return text;
}

class SvgDrawing {
 public:
  SvgDrawing(std::ostream& out, const Sheet& sheet, const TextFonts& fonts)
      : out_(out), sheet_(sheet), font_(fonts.typeface(0).family()) {}

  void write(const std::string& title) {
    begin(title);
    for (const std::string& piece : piece_names(sheet_)) write_piece(piece);
    out_ << "</g>\n</svg>\n";
  }

 private:
  void begin(const std::string& title) {
    const std::string width = svg_number(sheet_.width);
    const std::string height = svg_number(sheet_.height);
    out_ << "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n"
         << "<svg xmlns=\"http://www.w3.org/2000/svg\" version=\"1.1\" width=\"" << width
         << "mm\" height=\"" << height << "mm\" viewBox=\"0 0 " << width << ' ' << height << "\">\n"
         << "<title>" << xml_text(title) << "</title>\n"
         << "<g fill=\"none\" stroke=\"black\" font-family=\"'" << xml_text(font_)
         << "', sans-serif\">\n";
  }

  void write_piece(const std::string& piece) {
    const std::string part = piece_part(piece);
    out_ << "<g id=\"" << ids_.unique({part}) << "\" class=\""
         << (piece.empty() ? "sheet" : "piece") << "\">\n";
    if (!piece.empty()) out_ << "<title>" << xml_text(piece) << "</title>\n";
    for (const SheetLayerNames& layer : kSheetLayers) write_layer(piece, part, layer);
    out_ << "</g>\n";
  }

  static std::string piece_part(const std::string& piece) {
    if (piece.empty()) return "sheet";
    std::string part = id_part(piece);
    return part.empty() ? "piece" : part;
  }

  void write_layer(const std::string& piece, std::string_view part, const SheetLayerNames& layer) {
    const auto belongs = [&](const auto& item) {
      return item.piece == piece && item.layer == layer.layer;
    };
    const auto drawn = [&](const Stroke& s) { return belongs(s) && !s.path.empty(); };
    if (std::ranges::none_of(sheet_.strokes, drawn) &&
        std::ranges::none_of(sheet_.texts, belongs)) {
      return;
    }
    out_ << "<g id=\"" << ids_.unique({part, layer.id}) << "\" class=\"" << layer.id << '"'
         << (sheet_.shows_at_first(layer.layer) ? "" : " display=\"none\"") << ">\n";
    for (const Stroke& stroke : sheet_.strokes) {
      if (drawn(stroke)) write_stroke(part, layer, stroke);
    }
    for (const SheetText& text : sheet_.texts) {
      if (belongs(text)) write_text(text);
    }
    out_ << "</g>\n";
  }

  void write_stroke(std::string_view part, const SheetLayerNames& layer, const Stroke& stroke) {
    const std::string_view name =
        stroke.name.empty() ? line_role_name(stroke.role) : std::string_view(stroke.name);
    out_ << "<path id=\"" << ids_.unique({part, id_part(name), layer.id}) << "\" class=\""
         << line_role_name(stroke.role) << '"' << style_attributes(style_of(stroke)) << " d=\""
         << svg_path_data(stroke, sheet_.height) << '"';
    if (stroke.name.empty()) {
      out_ << "/>\n";
    } else {
      out_ << "><title>" << xml_text(stroke.name) << "</title></path>\n";
    }
  }

  void write_text(const SheetText& text) {
    const std::string x = svg_number(text.at.x);
    const std::string y = svg_number(sheet_.height - text.at.y);
    out_ << "<text x=\"" << x << "\" y=\"" << y << "\" font-size=\"" << svg_number(text.height)
         << "\" fill=\"black\" stroke=\"none\"";
    if (text.anchor != TextAnchor::Start) {
      out_ << " text-anchor=\"" << kAnchorNames[static_cast<std::size_t>(text.anchor)] << '"';
    }
    if (text.turn != Angle{}) {
      out_ << " transform=\"rotate(" << trimmed(-text.turn.degrees(), kAngleDecimals) << ' ' << x
           << ' ' << y << ")\"";
    }
    out_ << '>' << xml_text(text.text) << "</text>\n";
  }

  std::ostream& out_;
  const Sheet& sheet_;
  std::string font_;
  SvgIds ids_;
};

}  // namespace

void write_svg(std::ostream& out, const Sheet& sheet, const std::string& title,
               const TextFonts& fonts) {
  SvgDrawing(out, sheet, fonts).write(title);
}

}  // namespace blockwright
