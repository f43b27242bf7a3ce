#include "blockwright/block/kinds.hpp"
#include "blockwright/layout/print_plan.hpp"
#include "blockwright/pattern/sides.hpp"
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
Sheet lay_out(const Pattern& pattern, const PrintOptions& options, const SheetNotes& notes,
              const PreviousVersion* previous) {
  std::vector<DressedPiece> pieces;
  Box upright;
  for (const Piece& piece : pattern.pieces) {
    pieces.push_back(dress(piece, options, notes, previous_of(piece, previous)));
    upright.include(Point{0.0, pieces.back().box.bottom});
    upright.include(Point{0.0, pieces.back().box.top});
  }
  Sheet sheet;
  sheet.shows_previous = previous != nullptr;
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
