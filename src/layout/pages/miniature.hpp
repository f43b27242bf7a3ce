#pragma once

#include "blockwright/geometry/box.hpp"
#include "drawing.hpp"
#include "tiling.hpp"

namespace blockwright {

/// What the miniature takes of the room, in its upper left corner.
Box miniature_frame(const Tiling& tiling, const Box& room);

/// Draws the whole layout small into such a frame: the pieces' cut lines and names under the grid
/// of pages with their labels.
void draw_miniature(TextDrawing& page, const Tiling& tiling, const Layout& layout,
                    const Box& frame);

}  // namespace blockwright
