#pragma once

#include "blockwright/geometry/box.hpp"
#include "blockwright/layout/print_plan.hpp"
#include "tiling.hpp"

#include <vector>

namespace blockwright {

/// Where a sheet's pages part. Without pages there is nothing in it.
struct PageBorders {
  std::vector<Tile> tiles;
  std::vector<Box> taken;  ///< what neighbours share, and match marks: no text goes there
};

PageBorders borders_of(const Tiling& tiling);
PageBorders shifted(const PageBorders& borders, Vec by);

/// The match marks of one page: where it joins a neighbour, halves of diamonds whose other halves
/// are on the neighbour. A page that joins one above it or to its left is cut along its frame and
/// laid over that page, which completes the diamonds across the cut edge.
std::vector<Path> match_marks(const Tiling& tiling, const Tile& tile);

/// The layout as one drawing, its texts clear of the borders; a piece is named on every page that
/// shows it and has room for its name.
Sheet drawn(const Layout& layout, const PageBorders& borders, TextFonts& fonts);

}  // namespace blockwright
