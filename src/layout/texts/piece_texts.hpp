#pragma once

#include "page_borders.hpp"

namespace blockwright {

/// The room of a piece drawn with these lines.
std::shared_ptr<const PieceRoom> room_on(const Piece& piece, const Sheet& lines);

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
