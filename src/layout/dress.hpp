#pragma once

#include "blockwright/layout/print_plan.hpp"

#include <optional>

namespace blockwright {

/// A piece of an older version, laid under a piece.
struct PreviousPiece {
  const Piece* piece = nullptr;
  Placement lies;          ///< where it is laid
  bool distances = false;  ///< say how far named points moved
};

/// Cut line, stitch lines and marks of one piece, as the cut style asks for; under them the stitch
/// lines and darts of its previous version, if there is one. It is not yet placed on the sheet.
LaidPiece dress(const Piece& piece, const PrintOptions& options,
                const std::optional<PreviousPiece>& previous = std::nullopt);

}  // namespace blockwright
