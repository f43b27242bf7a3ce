#pragma once

#include "blockwright/pattern/piece.hpp"

namespace blockwright {

/// The piece with its grainline kept where it runs clear inside the piece, off darts and outline,
/// and otherwise moved to the upright that has the longest clear run, over four fifths of it.
Piece with_clear_grain(Piece piece);

}  // namespace blockwright
