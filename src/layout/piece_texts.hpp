#pragma once

#include "blockwright/layout/print_plan.hpp"

#include <string>
#include <vector>

namespace blockwright {

/// The arrow beside an edge on the fold: where it stands along the edge, as shares of its length,
/// and how far inside, in mm.
inline constexpr double kBracketFrom = 0.2;
inline constexpr double kBracketTo = 0.8;
inline constexpr double kBracketDepth = 8.0;

/// A named point that lies elsewhere than in an older version.
struct MovedPoint {
  std::string name;
  Point was, is;
};

/// Sets a piece's texts into its drawing, where its lines leave room: names of balance lines, fold
/// and opening along their edges, the bust point, how far points moved, and the label: what it is,
/// whose, of which session, how to cut it. Texts stay inside the stitch lines and never touch one
/// another or a line. Where room is short the label becomes smaller, then shorter; it always says
/// which piece it is.
void set_piece_texts(const Piece& piece, const PrintOptions& options, const SheetNotes& notes,
                     const std::vector<MovedPoint>& moved, Sheet& drawing);

}  // namespace blockwright
