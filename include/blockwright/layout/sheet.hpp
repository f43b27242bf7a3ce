#pragma once

#include "blockwright/geometry/box.hpp"
#include "blockwright/text/text_fonts.hpp"

#include <array>
#include <string>
#include <string_view>
#include <vector>

namespace blockwright {

/// The layers a viewer can switch: each is one optional-content group in PDF and one class in SVG.
enum class SheetLayer { Cut, Stitch, Marks, Text, Previous };

/// Their names for people and as SVG classes, in the order of the layers.
struct SheetLayerNames {
  SheetLayer layer;
  std::string_view name, id;
};
inline constexpr std::array<SheetLayerNames, 5> kSheetLayers = {{
    {SheetLayer::Cut, "cut line", "cut"},
    {SheetLayer::Stitch, "stitch line", "stitch"},
    {SheetLayer::Marks, "marks and grain", "marks"},
    {SheetLayer::Text, "text", "text"},
    {SheetLayer::Previous, "previous version", "previous"},
}};

/// What a stroke is; writers choose width and dashes from it, never colour alone.
enum class LineRole {
  CutLine,
  StitchLine,
  FoldLine,
  DartLeg,
  BalanceLine,
  Grainline,
  Notch,
  Hole,  ///< outline of a hole to punch, or a drill mark
  Band,  ///< how far a line could lie to either side
  TestSquare,
  Frame,  ///< page furniture: frames, crosses, overlap guides
  // Of a picture that nothing is cut by.
  Before,     ///< where a line lay
  After,      ///< where it lies, and lay
  AfterDart,  ///< the same of a dart's legs
  MovedEdge,  ///< where it lies, having moved
  Level,      ///< the bust line, bust and blade points
  LevelBefore,
  Arrow,  ///< how far
  // Of the figures on the form of a tape session.
  BodyLine,    ///< outline of the body
  BodyDetail,  ///< what lies within it
  Tape,        ///< a tape where it is seen
  HiddenTape,  ///< behind the body; a level that a tape begins or ends at
  TapeEnd,     ///< the end held still, the end read off
  Cloth,       ///< the toile on the body
  SeenFault,   ///< folds and edges that show a fault
};
/// "cut-line", "stitch-line" ... as used for SVG classes.
std::string_view line_role_name(LineRole role);

/// One drawn line, in mm on the sheet.
struct Stroke {
  SheetLayer layer = SheetLayer::Cut;
  LineRole role = LineRole::CutLine;
  std::string piece;  ///< the piece it belongs to; empty for furniture
  std::string name;   ///< e.g. "armhole"
  Path path;
  bool closed = false;
};

/// How a stroke is drawn on paper, the same in every output.
struct LineStyle {
  double width = 0.3;          ///< mm
  std::vector<double> dashes;  ///< mm on, off ...; empty for a solid line
  double grey = 0.0;           ///< 0 black to 1 white
  bool operator==(const LineStyle&) const = default;
};
/// The style of the stroke's role. On the layer of the previous version every line is dotted and
/// grey instead, so that nobody cuts along it by mistake.
LineStyle style_of(const Stroke& stroke);

enum class TextAnchor { Start, Middle, End };
/// The share of a text's width that lies before its anchor.
double share_before(TextAnchor anchor);

/// One line of text. `at` is on the baseline; `height` is the letters' nominal size in mm (the em);
/// turned anticlockwise by `turn`.
struct SheetText {
  SheetLayer layer = SheetLayer::Text;
  std::string piece;
  std::string text;  ///< UTF-8
  Point at;
  double height = 4.0;
  TextAnchor anchor = TextAnchor::Start;
  Angle turn = {};
  TextRoom room = {};  ///< as the layout's font sets it
};

/// A drawing in true millimetres: origin at the lower left corner, x to the right, y up. It knows
/// nothing of file formats.
struct Sheet {
  double width = 0.0;
  double height = 0.0;
  std::vector<Stroke> strokes;
  std::vector<SheetText> texts;
  /// Whether the layer of the previous version shows until somebody switches it off: on a sheet
  /// made to compare with it.
  bool shows_previous = false;
  [[nodiscard]] bool shows_at_first(SheetLayer layer) const {
    return layer != SheetLayer::Previous || shows_previous;
  }
};

}  // namespace blockwright
