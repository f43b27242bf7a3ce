#include "tiling.hpp"

#include <algorithm>

namespace blockwright {
namespace {

// A half is this high and twice as wide, and the outer ones lie this far from the corners, in mm.
constexpr double kHalfDiamond = 5.0;
constexpr double kFromCorner = 25.0;

// The halves point to the left of the edge to join at.
void add_halves(std::vector<Path>& marks, const Segment& edge) {
  const Vec along = unit(edge.b - edge.a);
  const double whole = distance(edge.a, edge.b);
  for (const double at : {kFromCorner, 0.5 * whole, whole - kFromCorner}) {
    const Point middle = edge.a + at * along;
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

// Pages below and to the right are laid over this one: their edges run across it.
std::vector<Path> match_marks(const Tiling& tiling, const Tile& tile) {
  std::vector<Path> marks;
  for (const PageSide side : kPageSides) {
    const Tile* other = tiling.neighbour(tile, side);
    if (other == nullptr) continue;
    if (side.row_step < 0 || side.column_step < 0) {
      add_halves(marks, inner_edge(tile.window, side));
    } else {
      const Segment over = inner_edge(other->window, {-side.row_step, -side.column_step});
      add_halves(marks, {over.b, over.a});
    }
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
