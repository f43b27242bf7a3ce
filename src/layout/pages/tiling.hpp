#pragma once

#include "blockwright/layout/print_plan.hpp"

#include <string>
#include <vector>

namespace blockwright {

/// One page's window on the sheet. Rows count from the top, columns from the left, both from 0.
struct Tile {
  int row = 0;
  int column = 0;
  Box window;
  std::vector<std::string> pieces;  ///< names of those that it shows
};

/// A side of a page, by where its neighbour lies.
struct PageSide {
  int row_step;
  int column_step;
};
inline constexpr PageSide kPageSides[] = {{-1, 0}, {1, 0}, {0, -1}, {0, 1}};

/// That side of a window, run so that the page lies to its left.
Segment inner_edge(const Box& window, PageSide side);

/// How a sheet is split over pages of one size.
struct Tiling {
  double page_width = 0.0;
  double page_height = 0.0;
  Point window_at;          ///< lower left corner of the window on each page
  std::vector<Tile> tiles;  ///< row by row; blank ones are left out

  /// Null where there is none.
  [[nodiscard]] const Tile* neighbour(const Tile& tile, PageSide side) const;
};

/// Room kept at the foot of each page, above the margin, for its line of text, in mm.
inline constexpr double kFooter = 6.0;

/// The tiling with the fewest pages: portrait or landscape, the grid moved where that leaves tiles
/// blank. Throws UsageError "paper.too_small" for papers that are too small for the first page.
Tiling choose_tiling(const Layout& layout);

/// "A1": row letter (AA after Z), column number.
std::string tile_label(const Tile& tile);

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
