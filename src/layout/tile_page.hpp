#pragma once

#include "blockwright/layout/print_plan.hpp"
#include "tiling.hpp"

namespace blockwright {

/// The page of one tile: frame, match crosses where neighbours overlap, their labels, the small
/// square with the page's own label, and a line of text at the foot. Labels and square stand where
/// the drawing leaves room.
Page tile_page(const Tiling& tiling, const Tile& tile, const Sheet& sheet,
               const PrintOptions& options, const SheetNotes& notes);

}  // namespace blockwright
