#include "blockwright/layout/print_plan.hpp"
#include "drawing.hpp"
#include "dress.hpp"

namespace blockwright {
namespace {

// Clear paper round and between pieces, in mm.
constexpr double kSheetMargin = 10.0;
constexpr double kBetweenPieces = 10.0;

}  // namespace

// Pieces stand on one waist level (y = 0 of their frames), as they would be drafted side by side.
Sheet lay_out(const Pattern& pattern, const PrintOptions& options, const SheetNotes& notes) {
  std::vector<DressedPiece> pieces;
  Box upright;
  for (const Piece& piece : pattern.pieces) {
    pieces.push_back(dress(piece, options, notes));
    upright.include(Point{0.0, pieces.back().box.bottom});
    upright.include(Point{0.0, pieces.back().box.top});
  }
  Sheet sheet;
  double x = kSheetMargin;
  for (const DressedPiece& piece : pieces) {
    add(sheet, shifted(piece.drawing, {x - piece.box.left, kSheetMargin - upright.bottom}));
    x += piece.box.width() + kBetweenPieces;
  }
  sheet.width = (pieces.empty() ? x : x - kBetweenPieces) + kSheetMargin;
  sheet.height = upright.height() + 2.0 * kSheetMargin;
  return sheet;
}

}  // namespace blockwright
