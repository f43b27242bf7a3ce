#pragma once

#include "blockwright/layout/print_plan.hpp"

#include <optional>

namespace blockwright {

/// A piece ready for paper, in its own frame: its drawing and the room that it takes.
struct DressedPiece {
  Sheet drawing;  ///< width and height are not set
  Box box;        ///< round all lines; texts lie inside the cut line
};

/// A piece of an older version, laid under a piece.
struct PreviousPiece {
  const Piece* piece = nullptr;
  Placement lies;          ///< where it is laid
  bool distances = false;  ///< say how far named points moved
};

/// Cut line, stitch lines, marks and texts of one piece, as the cut style asks for; under them the
/// stitch lines and darts of its previous version, if there is one.
DressedPiece dress(const Piece& piece, const PrintOptions& options, const SheetNotes& notes,
                   const std::optional<PreviousPiece>& previous = std::nullopt);

}  // namespace blockwright
