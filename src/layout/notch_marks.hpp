#pragma once

#include "blockwright/pattern/piece.hpp"

#include <vector>

namespace blockwright {

/// The strokes of a notch: square to the stitch line, from the cut line inwards. A double notch is
/// two of them, side by side.
std::vector<Path> notch_marks(const Piece& piece, const Notch& notch, const Path& cut);

/// A notch at each end of the dart's mouth, where the leg, led on, meets the cut line.
std::vector<Path> leg_notches(const Dart& dart, const Path& cut);

}  // namespace blockwright
