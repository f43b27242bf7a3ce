#pragma once

#include "blockwright/layout/print_plan.hpp"
#include "tiling.hpp"

#include <vector>

namespace blockwright {

/// The first page: whose pattern it is, the test squares, a miniature of the whole with the pages'
/// labels, pieces, ease, estimates and cautions. What has no room goes on to "map 2", "map 3" ...
std::vector<Page> map_pages(const Tiling& tiling, const Layout& layout, TextFonts& fonts);

}  // namespace blockwright
