#include "page_borders.hpp"

#include <algorithm>

namespace blockwright {
namespace {

// A half is this high and twice as wide, and the outer ones lie this far from the corners, in mm.
constexpr double kHalfDiamond = 5.0;
constexpr double kFromCorner = 25.0;

// `from` and `to` are the ends of the edge to join at; the half points to the left of it.
void add_halves(std::vector<Path>& marks, Point from, Point to) {
  const Vec along = unit(to - from);
  const double whole = distance(from, to);
  for (const double at : {kFromCorner, 0.5 * whole, whole - kFromCorner}) {
    const Point middle = from + at * along;
    const Point a = middle - kHalfDiamond * along, b = middle + kHalfDiamond * along;
    marks.push_back(Path::through({a, b, middle + kHalfDiamond * left_of(along), a}));
  }
}

// What two windows share; empty unless they overlap.
Box shared_by(const Box& a, const Box& b) {
  return {std::max(a.left, b.left), std::max(a.bottom, b.bottom), std::min(a.right, b.right),
          std::min(a.top, b.top)};
}

Box shifted(const Box& box, Vec by) {
  return {box.left + by.x, box.bottom + by.y, box.right + by.x, box.top + by.y};
}

}  // namespace

std::vector<Path> match_marks(const Tiling& tiling, const Tile& tile) {
  const Box& w = tile.window;
  std::vector<Path> marks;
  if (tiling.find(tile.row - 1, tile.column)) {
    add_halves(marks, {w.right, w.top}, {w.left, w.top});
  }
  if (const Tile* below = tiling.find(tile.row + 1, tile.column)) {
    add_halves(marks, {w.left, below->window.top}, {w.right, below->window.top});
  }
  if (tiling.find(tile.row, tile.column - 1)) {
    add_halves(marks, {w.left, w.top}, {w.left, w.bottom});
  }
  if (const Tile* right = tiling.find(tile.row, tile.column + 1)) {
    add_halves(marks, {right->window.left, w.bottom}, {right->window.left, w.top});
  }
  return marks;
}

PageBorders borders_of(const Tiling& tiling) {
  PageBorders borders;
  for (const Tile& tile : tiling.tiles) {
    for (const Tile& other : borders.tiles) {
      const Box shared = shared_by(tile.window, other.window);
      if (!shared.empty()) borders.taken.push_back(shared);
    }
    borders.tiles.push_back(tile);
    for (const Path& mark : match_marks(tiling, tile)) borders.taken.push_back(box_of(mark));
  }
  return borders;
}

PageBorders shifted(const PageBorders& borders, Vec by) {
  PageBorders moved = borders;
  for (Tile& tile : moved.tiles) tile.window = shifted(tile.window, by);
  for (Box& box : moved.taken) box = shifted(box, by);
  return moved;
}

}  // namespace blockwright
