#include "tiling.hpp"

#include "blockwright/base/error.hpp"
#include "blockwright/base/number_text.hpp"
#include "ink.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>
#include <optional>

namespace blockwright {
namespace {

// Below this side the test squares of the first page do not fit, in mm.
constexpr double kSmallestPaper = 150.0;
// Where the grid is tried, as shares of the room left over: the middle first. Never quite at an
// end, where the drawing would run along the frame.
constexpr std::array<double, 7> kShifts = {0.5, 0.3, 0.7, 0.1, 0.9, 0.04, 0.96};
// Rounding must not cost a page.
constexpr double kSlack = 1e-6;

void require_usable(const PrintOptions& options) {
  const Paper& paper = options.paper;
  const double smaller = paper.shorter().mm();
  if (smaller >= kSmallestPaper) return;
  throw UsageError({Severity::Error, "paper.too_small", "--paper",
                    "'" + paper.name + "' is " + trimmed(smaller, 1) +
                        " mm on its shorter side; the test squares need " +
                        trimmed(kSmallestPaper, 0) + " mm",
                    "choose a larger paper"});
}

// A roll is as long as the drawing needs.
std::vector<Vec> page_sizes(const Ink& ink, const PrintOptions& options) {
  const Paper& paper = options.paper;
  const double shorter = paper.shorter().mm(), longer = paper.longer().mm();
  if (!paper.is_roll()) return {{shorter, longer}, {longer, shorter}};
  const double rim = 2.0 * options.margin.mm();
  return {{shorter, std::max(kSmallestPaper, ink.box().height() + rim + kFooter)},
          {std::max(kSmallestPaper, ink.box().width() + rim), shorter}};
}

int windows_for(double extent, double window, double overlap) {
  return std::max(1, static_cast<int>(std::ceil((extent - overlap - kSlack) / (window - overlap))));
}

double covered_by(int windows, double window, double overlap) {
  return windows * window - (windows - 1) * overlap;
}

// The grid on one page size, ready to be moved over the sheet.
struct Grid {
  double width, height, overlap;  // of one window
  int rows, columns;

  // The windows that are printed on, from an upper left corner; nothing once there are `most`.
  [[nodiscard]] std::optional<std::vector<Tile>> tiles(const Ink& ink, Point corner,
                                                       std::size_t most) const {
    std::vector<Tile> kept;
    for (int row = 0; row < rows; ++row) {
      for (int column = 0; column < columns; ++column) {
        const double left = corner.x + column * (width - overlap);
        const double top = corner.y - row * (height - overlap);
        const Box window = {left, top - height, left + width, top};
        if (!ink.touches(window)) continue;
        if (kept.size() + 1 >= most) return std::nullopt;
        kept.push_back({row, column, window, {}});
      }
    }
    return kept;
  }
};

std::vector<Tile> fewest_tiles(const Grid& grid, const Ink& ink) {
  const double over_x = covered_by(grid.columns, grid.width, grid.overlap) - ink.box().width();
  const double over_y = covered_by(grid.rows, grid.height, grid.overlap) - ink.box().height();
  std::vector<Tile> best;
  std::size_t fewest = std::numeric_limits<std::size_t>::max();
  for (const double share_y : kShifts) {
    for (const double share_x : kShifts) {
      const Point corner = {ink.box().left - share_x * over_x, ink.box().top + share_y * over_y};
      auto tiles = grid.tiles(ink, corner, fewest);
      if (!tiles) continue;
      fewest = tiles->size();
      best = std::move(*tiles);
    }
  }
  return best;
}

Tiling tiling_on(Vec page, const Ink& ink, const PrintOptions& options) {
  const double margin = options.margin.mm(), overlap = options.overlap.mm();
  const double width = page.x - 2.0 * margin;
  const double height = page.y - 2.0 * margin - kFooter;
  require(overlap >= 0.0 && std::min(width, height) > 2.0 * overlap,
          "margins and overlap leave no room on the paper");
  const Grid grid{width, height, overlap, windows_for(ink.box().height(), height, overlap),
                  windows_for(ink.box().width(), width, overlap)};
  return {page.x, page.y, {margin, margin + kFooter}, fewest_tiles(grid, ink)};
}

}  // namespace

Segment inner_edge(const Box& window, PageSide side) {
  const auto [left, bottom, right, top] = window;
  if (side.row_step < 0) return {{right, top}, {left, top}};
  if (side.row_step > 0) return {{left, bottom}, {right, bottom}};
  if (side.column_step < 0) return {{left, top}, {left, bottom}};
  return {{right, bottom}, {right, top}};
}

const Tile* Tiling::neighbour(const Tile& tile, PageSide side) const {
  const auto it = std::find_if(tiles.begin(), tiles.end(), [&](const Tile& other) {
    return other.row == tile.row + side.row_step && other.column == tile.column + side.column_step;
  });
  return it == tiles.end() ? nullptr : &*it;
}

Tiling choose_tiling(const Layout& layout) {
  require_usable(layout.options);
  const Ink ink(layout);
  require(!ink.box().empty(), "nothing to print");
  std::optional<Tiling> best;
  for (const Vec page : page_sizes(ink, layout.options)) {
    Tiling tiling = tiling_on(page, ink, layout.options);
    if (!best || tiling.tiles.size() < best->tiles.size()) best = std::move(tiling);
  }
  for (Tile& tile : best->tiles) tile.pieces = ink.pieces_in(tile.window);
  return *best;
}

std::string tile_label(const Tile& tile) {
  std::string row;
  for (int n = tile.row + 1; n > 0; n = (n - 1) / 26) {
    row.insert(row.begin(), static_cast<char>('A' + (n - 1) % 26));
  }
  return row + std::to_string(tile.column + 1);
}

}  // namespace blockwright
