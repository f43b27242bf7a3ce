#include "grain.hpp"

#include "blockwright/geometry/box.hpp"
#include "blockwright/geometry/intersections.hpp"

#include <algorithm>
#include <vector>

namespace blockwright {
namespace {

constexpr int kUprights = 24;
constexpr double kOfTheRun = 0.8;

std::vector<Path> obstacles_of(const Piece& piece) {
  std::vector<Path> obstacles = {sewing_outline(piece)};
  for (const Edge& edge : piece.edges) obstacles.push_back(edge.path);
  return obstacles;
}

bool is_clear(const Segment& grain, const std::vector<Path>& obstacles) {
  return std::all_of(obstacles.begin(), obstacles.end(), [&](const Path& obstacle) {
    return intersections(Path({grain}), obstacle).empty();
  });
}

// The longest stretch of an upright between two crossings that lies inside the sewn outline.
Segment longest_run(double x, const Path& outline) {
  std::vector<double> heights;
  for (const LineCrossing& hit : intersections(outline, {x, 0.0}, {0.0, 1.0})) {
    heights.push_back(hit.point.y);
  }
  std::sort(heights.begin(), heights.end());
  Segment best{{x, 0.0}, {x, 0.0}};
  for (std::size_t i = 0; i + 1 < heights.size(); i += 2) {
    const double rest = 0.5 * (1.0 - kOfTheRun) * (heights[i + 1] - heights[i]);
    const Segment run{{x, heights[i] + rest}, {x, heights[i + 1] - rest}};
    if (distance(run.a, run.b) > distance(best.a, best.b)) best = run;
  }
  return best;
}

}  // namespace

Piece with_clear_grain(Piece piece) {
  const std::vector<Path> obstacles = obstacles_of(piece);
  const Box box = box_of(obstacles.front());
  const Segment old = piece.grainline;
  const bool inside = old.a.x > box.left && old.a.x < box.right && old.a.y > box.bottom &&
                      old.b.y < box.top && old.a != old.b;
  if (inside && is_clear(old, obstacles)) return piece;
  Segment best{old.a, old.a};
  for (int i = 1; i < kUprights; ++i) {
    const Segment run = longest_run(box.left + box.width() * i / kUprights, obstacles.front());
    if (distance(run.a, run.b) > distance(best.a, best.b) && is_clear(run, obstacles)) best = run;
  }
  piece.grainline = best;
  return piece;
}

}  // namespace blockwright
