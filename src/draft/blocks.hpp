#pragma once

#include "blockwright/pattern/piece.hpp"
#include "neck_shoulder.hpp"
#include "scye.hpp"

namespace blockwright {

/// The half front from its settled frame: edges, darts, balance lines, notches.
Piece front_block(const NeckAndShoulder& upper, const Scye& scye);

/// The half back.
Piece back_block(const NeckAndShoulder& upper, const Scye& scye);

/// The point on the line from apex to the middle of the mouth where the stitching ends.
Point dart_point(Point apex, Point leg_a, Point leg_b, double hold_back);

}  // namespace blockwright
