#pragma once

#include "blockwright/layout/print_plan.hpp"
#include "tiling.hpp"

namespace blockwright {

/// The page of one tile: frame, match marks where it joins neighbours, their labels, the small
/// square with the page's own label, and a line of text at the foot that also names the pieces on
/// the page. Labels and square go where the drawing leaves room.
Page tile_page(const Tiling& tiling, const Tile& tile, const Sheet& sheet, const Layout& layout,
               TextFonts& fonts);

}  // namespace blockwright
