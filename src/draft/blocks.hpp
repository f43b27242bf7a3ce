#pragma once

#include "blockwright/pattern/piece.hpp"
#include "neck_shoulder.hpp"
#include "scye.hpp"

namespace blockwright {

/// `cup` is the bust girth less the underbust girth, in mm: it sets how far the stitching of a dart
/// stops short of the apex.

/// The half front from its settled frame: edges, darts, balance lines, notches.
Piece front_block(const NeckAndShoulder& upper, const Scye& scye, double cup);

/// The half back.
Piece back_block(const NeckAndShoulder& upper, const Scye& scye, double cup);

}  // namespace blockwright
