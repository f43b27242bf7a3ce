#pragma once

#include "blockwright/pattern/piece.hpp"

namespace blockwright {

/// How far a new grainline keeps off every edge and dart, in mm. Common practice, no source.
inline constexpr double kGrainOffEdges = 15.0;

/// The piece with its grainline kept where it runs clear inside the piece, off darts and outline,
/// and otherwise moved to the longest upright that keeps kGrainOffEdges off them. In a piece too
/// narrow for that it keeps 10, 7, 5, 3 or 1 mm off, whichever first leaves it 40 mm long.
Piece with_clear_grain(Piece piece);

/// The same for a panel, whose old grainline stays only if it keeps kGrainOffEdges.
Piece with_grain_off_edges(Piece panel);

}  // namespace blockwright
