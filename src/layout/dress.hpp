#pragma once

#include "tiling.hpp"

#include <optional>
#include <span>
#include <vector>

namespace blockwright {

/// A piece of an older version, laid under a piece.
struct PreviousPiece {
  const Piece* piece = nullptr;
  Placement lies;  ///< where it is laid
};

/// Cut line, stitch lines and marks of one piece, as the cut style asks for; under them the stitch
/// lines and darts of its previous version, if there is one, and the bands of its edges. It is not
/// yet placed on the sheet.
LaidPiece dress(const Piece& piece, const PrintOptions& options,
                const std::optional<PreviousPiece>& previous = std::nullopt,
                std::span<const EdgeBand> bands = {});

/// The stitch lines and darts of a piece that is compared with its previous version, if there is
/// one: heavier where they moved, the previous ones where they lay elsewhere, and arrows where
/// named points moved. Nothing to cut by.
LaidPiece dress_compared(const Piece& piece, const std::optional<PreviousPiece>& previous);

/// The strokes of a notch: square to the stitch line, from the cut line inwards. A double notch is
/// two of them, side by side.
std::vector<Path> notch_marks(const Piece& piece, const Notch& notch, const Path& cut);

/// A notch at each end of the dart's mouth, where the leg, led on, meets the cut line.
std::vector<Path> leg_notches(const Dart& dart, const Path& cut);

/// The room inside the outline of a piece drawn with these lines.
std::shared_ptr<const PieceRoom> room_on(const Path& outline, const Piece& piece,
                                         const Sheet& lines);

/// Sets a piece's texts into its drawing, where its lines and the pages' borders (both in the
/// piece's frame) leave room: names of balance lines, fold and opening along their edges, the bust
/// point, how far points moved, and the label: what it is, whose, of which session, how to cut it.
/// Texts stay inside the stitch lines and never touch one another or a line. The label keeps
/// kLabelFromEdge off every edge where the piece is wide enough. Where room is short it becomes
/// smaller, then shorter; it always says which piece it is. Further pages that show the piece
/// repeat its name.
void set_piece_texts(const LaidPiece& laid, const Layout& layout, const PageBorders& borders,
                     TextFonts& fonts, Sheet& drawing);

/// In mm. Common practice, no source.
inline constexpr double kLabelFromEdge = 15.0;

}  // namespace blockwright
