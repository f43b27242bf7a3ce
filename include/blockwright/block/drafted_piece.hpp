#pragma once

#include "blockwright/block/kinds.hpp"

#include <vector>

namespace blockwright {

/// The lines of a piece as they were drafted, each list in the order of its kind.
struct DraftedLines {
  std::vector<Path> edges;  ///< with the mouths of their darts
  std::vector<Dart> darts;
  std::vector<double> notches;  ///< mm along their edges
  std::vector<Path> balance_lines;
  Segment grainline;
};

/// The piece of a kind: names, roles and landmarks as the kind has them.
/// Requires: as many edges, notches and balance lines as the kind has; a dart for each apex.
Piece drafted_piece(const PieceKind& kind, const DraftedLines& lines);

/// Puts each landmark of the piece's kind where the outline has it. Requires: a piece with all
/// edges of its kind, in their order.
void set_landmarks(Piece& piece);

/// The seams that the pieces' kinds name, where both pieces are there.
std::vector<Seam> seams_between(const std::vector<Piece>& pieces);

/// The grain of a bodice piece, upright between its centre line and its apex.
Segment grain_beside_centre(Point apex, Point centre_neck);

}  // namespace blockwright
