#include "blockwright/block/kinds.hpp"
#include "drawing.hpp"
#include "dress.hpp"

#include <optional>
#include <utility>

namespace blockwright {
namespace {

// Clear paper round and between pieces, in mm.
constexpr double kSheetMargin = 10.0;
constexpr double kBetweenPieces = 10.0;

// A panel is named after its piece: "side_front" of "front", "front_yoke" of "front".
bool is_panel_of(const Piece& panel, const Piece& piece) {
  const auto& [whole, part] = std::pair(piece.name, panel.name);
  return part == whole || part.ends_with("_" + whole) || part.starts_with(whole + "_");
}

std::optional<PreviousPiece> previous_of(const Piece& piece, const PreviousVersion* previous) {
  if (previous == nullptr) return std::nullopt;
  for (const Piece& old : previous->pattern.pieces) {
    if (!is_panel_of(piece, old)) continue;
    const auto here = alignment_level(piece, previous->alignment);
    const auto there = alignment_level(old, previous->alignment);
    const double up = here && there ? *here - *there : 0.0;
    const Placement side =
        is_mirrored(piece) == is_mirrored(old) ? Placement() : Placement::mirror();
    return PreviousPiece{&old, side.then(Placement::shift({0.0, up})), previous->distances};
  }
  return std::nullopt;
}

Box box_of(const Sheet& lines) {
  Box box;
  for (const Stroke& stroke : lines.strokes) box.include(blockwright::box_of(stroke.path));
  return box;
}

}  // namespace

std::optional<double> alignment_level(const Piece& piece, Alignment alignment) {
  if (alignment == Alignment::Bust) {
    const BalanceLine* line = find_line(piece, LineUse::Bust);
    return line == nullptr ? std::nullopt : std::optional(line->path.start().y);
  }
  const Landmark* point = find_landmark(
      piece, alignment == Alignment::Neck ? PointUse::CentreNeck : PointUse::CentreWaist);
  return point == nullptr ? std::nullopt : std::optional(point->at.y);
}

// Pieces stand on one waist level (y = 0 of their frames), as they would be drafted side by side.
Layout lay_out(const Pattern& pattern, const PrintOptions& options, const SheetNotes& notes,
               const PreviousVersion* previous, std::span<const EdgeBand> bands) {
  Layout layout{options, notes, {}, 0.0, 0.0, previous != nullptr};
  Box upright;
  double x = kSheetMargin;
  for (const Piece& piece : pattern.pieces) {
    layout.pieces.push_back(dress(piece, options, previous_of(piece, previous), bands));
    const Box box = box_of(layout.pieces.back().lines);
    layout.pieces.back().at.x = x - box.left;
    x += box.width() + kBetweenPieces;
    upright.include(Box{0.0, box.bottom, 0.0, box.top});
  }
  for (LaidPiece& piece : layout.pieces) piece.at.y = kSheetMargin - upright.bottom;
  layout.width = (layout.pieces.empty() ? x : x - kBetweenPieces) + kSheetMargin;
  layout.height = upright.height() + 2.0 * kSheetMargin;
  return layout;
}

Sheet drawn(const Layout& layout, const PageBorders& borders, TextFonts& fonts) {
  Sheet sheet{layout.width, layout.height, {}, {}, layout.shows_previous};
  for (const LaidPiece& piece : layout.pieces) {
    Sheet drawing = piece.lines;
    set_piece_texts(piece, layout, shifted(borders, -piece.at), fonts, drawing);
    add(sheet, shifted(drawing, piece.at));
  }
  return sheet;
}

Sheet sheet_of(const Layout& layout, TextFonts& fonts) { return drawn(layout, {}, fonts); }

}  // namespace blockwright
