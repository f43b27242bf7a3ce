#pragma once

#include "armholes.hpp"
#include "blockwright/draft/draft.hpp"

namespace blockwright {

/// The half front and the half back from their settled frame: edges, darts, balance lines, notches.
/// `cup` is the bust girth less the underbust girth, in mm: it sets how far the stitching of a dart
/// stops short of the apex.
Piece front_block(const NeckAndShoulder& upper, const Armholes& lower, double cup);
Piece back_block(const NeckAndShoulder& upper, const Armholes& lower, double cup);

/// The draft told point by point, in the order of drawing.
DraftLog steps(const Targets& targets, const NeckAndShoulder& upper, const Armholes& lower,
               const Pattern& block);

}  // namespace blockwright
