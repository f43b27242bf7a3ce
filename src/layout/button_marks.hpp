#pragma once

#include "blockwright/pattern/piece.hpp"
#include "drawing.hpp"

namespace blockwright {

/// The centre line of a front that is buttoned, a cross where each button is sewn on, and each
/// buttonhole as a line between two short strokes. Nothing of other pieces. Source: common
/// practice for the marks, no source.
void draw_button_marks(const Piece& piece, Drawing& drawing);

}  // namespace blockwright
