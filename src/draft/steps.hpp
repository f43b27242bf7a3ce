#pragma once

#include "blockwright/draft/draft.hpp"
#include "neck_shoulder.hpp"
#include "scye.hpp"
#include "targets.hpp"

namespace blockwright {

/// The draft told point by point, in the order of drawing.
/// `front` and `back` are the finished pieces.
DraftLog steps(const Targets& targets, const NeckAndShoulder& upper, const Scye& scye,
               const Piece& front, const Piece& back);

}  // namespace blockwright
