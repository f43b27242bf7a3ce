#include "blockwright/geometry/box.hpp"
#include "blockwright/geometry/intersections.hpp"
#include "moving.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <utility>
#include <vector>

namespace blockwright {
namespace {

constexpr int kUprights = 48;
constexpr std::array<double, 6> kOffEdges = {kGrainOffEdges, 10.0, 7.0, 5.0, 3.0, 1.0};
constexpr double kShortestGrain = 40.0;
// Truing moves an edge by less than this after the grain was set, in mm.
constexpr double kForTruing = 0.5;
// The outline is looked at in points this far apart, in mm.
constexpr double kPointStep = 0.5;
constexpr double kGrainFlattening = 0.01;

std::vector<Path> obstacles_of(const Piece& piece) {
  std::vector<Path> obstacles = {sewing_outline(piece)};
  for (const Edge& edge : piece.edges) obstacles.push_back(edge.path);
  return obstacles;
}

bool is_clear(const Piece& piece) {
  const Segment& grain = piece.grainline;
  const std::vector<Path> obstacles = obstacles_of(piece);
  const Box box = box_of(obstacles.front());
  const bool inside = grain.a.x > box.left && grain.a.x < box.right && grain.a.y > box.bottom &&
                      grain.b.y < box.top && grain.a != grain.b;
  return inside && std::all_of(obstacles.begin(), obstacles.end(), [&](const Path& obstacle) {
           return intersections(Path({grain}), obstacle).empty();
         });
}

std::vector<Point> points_along(const Piece& piece) {
  std::vector<Point> points;
  for (const Path& path : obstacles_of(piece)) {
    const auto corners = flattened(path, kGrainFlattening);
    for (std::size_t i = 1; i < corners.size(); ++i) {
      const Vec chord = corners[i] - corners[i - 1];
      const int steps = 1 + static_cast<int>(norm(chord) / kPointStep);
      for (int k = 0; k < steps; ++k) {
        points.push_back(corners[i - 1] + (static_cast<double>(k) / steps) * chord);
      }
    }
  }
  return points;
}

bool keeps_off(const Segment& upright, const std::vector<Point>& points, double off) {
  return std::all_of(points.begin(), points.end(), [&](Point p) {
    const double up = std::max({upright.a.y - p.y, p.y - upright.b.y, 0.0});
    return std::hypot(p.x - upright.a.x, up) >= off;
  });
}

// The longest stretch of an upright that lies inside the outline and off its points.
Segment longest_run(double x, const Path& outline, const std::vector<Point>& points, double off) {
  std::vector<std::pair<double, double>> blocked;
  for (const Point p : points) {
    const double aside = std::abs(p.x - x);
    if (aside >= off) continue;
    const double reach = std::sqrt(off * off - aside * aside);
    blocked.emplace_back(p.y - reach, p.y + reach);
  }
  std::sort(blocked.begin(), blocked.end());
  Segment best{{x, 0.0}, {x, 0.0}};
  double from = blocked.empty() ? 0.0 : blocked.front().second;
  for (const auto& [low, high] : blocked) {
    const bool longer = low - from > best.b.y - best.a.y;
    if (longer && contains(outline, {x, 0.5 * (from + low)}, kGrainFlattening)) {
      best = {{x, from}, {x, low}};
    }
    from = std::max(from, high);
  }
  return best;
}

Segment longest_grain(const Piece& piece, const std::vector<Point>& points) {
  const Path outline = sewing_outline(piece);
  const Box box = box_of(outline);
  Segment best{piece.grainline.a, piece.grainline.a};
  for (const double off : kOffEdges) {
    for (int i = 1; i < kUprights; ++i) {
      const double x = box.left + box.width() * i / kUprights;
      const Segment run = longest_run(x, outline, points, off + kForTruing);
      if (length(run) > length(best)) best = run;
    }
    if (length(best) >= kShortestGrain) break;
  }
  return best;
}

}  // namespace

Piece with_clear_grain(Piece piece, double least) {
  const bool clear = is_clear(piece);
  if (clear && least == 0.0) return piece;
  const std::vector<Point> points = points_along(piece);
  if (!clear || !keeps_off(piece.grainline, points, least)) {
    piece.grainline = longest_grain(piece, points);
  }
  return piece;
}

}  // namespace blockwright
