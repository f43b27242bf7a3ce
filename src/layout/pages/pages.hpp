#pragma once

#include "blockwright/layout/print_plan.hpp"
#include "tiling.hpp"

#include <vector>

namespace blockwright {

/// The first page: whose pattern it is, the test squares, a miniature of the whole with the pages'
/// labels, pieces, ease, estimates and cautions. What has no room goes on to "map 2", "map 3" ...
std::vector<Page> map_pages(const Tiling& tiling, const Layout& layout, TextFonts& fonts);

/// The pages of the tiles, each with its frame, match marks where it joins neighbours, their
/// labels, the small square with the page's own label, and a line of text at the foot that also
/// names the pieces on the page. Labels and square go where the drawing leaves room.
std::vector<Page> tile_pages(const Tiling& tiling, const Sheet& sheet, const Layout& layout,
                             TextFonts& fonts);

}  // namespace blockwright
