#include "drawing.hpp"
#include "dress.hpp"

#include <optional>

namespace blockwright {
namespace {

// Clear paper round and between pieces, in mm.
constexpr double kSheetMargin = 10.0;
constexpr double kBetweenPieces = 10.0;

std::optional<PreviousPiece> previous_of(const Piece& piece, const PreviousVersion* previous) {
  if (previous == nullptr) return std::nullopt;
  const Piece* old = earlier_version(piece, previous->pattern);
  if (old == nullptr) return std::nullopt;
  return PreviousPiece{old, laid_under(piece, *old, previous->alignment)};
}

Box box_of(const Sheet& lines) {
  Box box;
  for (const Stroke& stroke : lines.strokes) box.include(blockwright::box_of(stroke.path));
  return box;
}

}  // namespace

// Pieces stand on one waist level (y = 0 of their frames), as they would be drafted side by side.
Layout lay_out(const Pattern& pattern, const PrintOptions& options, const SheetNotes& notes,
               const PreviousVersion* previous, std::span<const EdgeBand> bands) {
  const bool compared = previous != nullptr && previous->compared;
  Layout layout{options, notes, {}, 0.0, 0.0, previous != nullptr, compared};
  Box upright;
  double x = kSheetMargin;
  for (const Piece& piece : pattern.pieces) {
    const auto older = previous_of(piece, previous);
    layout.pieces.push_back(compared ? dress_compared(piece, older)
                                     : dress(piece, options, older, bands));
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
