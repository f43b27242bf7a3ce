#pragma once

#include "blockwright/geometry/box.hpp"
#include "drawing.hpp"
#include "tiling.hpp"

namespace blockwright {

/// Height of the miniature that fits `width` mm and at most `most` mm of height.
double miniature_height(const Tiling& tiling, double width, double most);

/// Draws the whole layout small into `frame`, top left: the pieces' cut lines and names under the
/// grid of pages with their labels.
void draw_miniature(Sheet& page, const Tiling& tiling, const Sheet& sheet, const Box& frame);

}  // namespace blockwright
