#pragma once

#include "blockwright/geometry/box.hpp"
#include "drawing.hpp"
#include "tiling.hpp"

namespace blockwright {

/// The room that the miniature takes below and to the right of `upper_left`, at most `width` mm
/// wide and `height` mm high.
Box miniature_frame(const Tiling& tiling, Point upper_left, double width, double height);

/// Draws the whole layout small into such a frame: the pieces' cut lines and names under the grid
/// of pages with their labels.
void draw_miniature(TextDrawing& page, const Tiling& tiling, const Layout& layout,
                    const Box& frame);

}  // namespace blockwright
