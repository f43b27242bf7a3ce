#pragma once

#include "blockwright/layout/print_plan.hpp"

namespace blockwright {

/// A piece ready for paper, in its own frame: its drawing and the room that it takes.
struct DressedPiece {
  Sheet drawing;  ///< width and height are not set
  Box box;        ///< round all lines; texts lie inside the cut line
};

/// Cut line, stitch lines, marks and texts of one piece, as the cut style asks for; under them the
/// stitch lines and darts of its previous version, if there is one.
DressedPiece dress(const Piece& piece, const PrintOptions& options, const SheetNotes& notes,
                   const Piece* previous = nullptr);

}  // namespace blockwright
