#include "torso/cloth.hpp"

#include <algorithm>
#include <cmath>

namespace blockwright::torso {
namespace {

double twice_area(const Vec2& a, const Vec2& b, const Vec2& c) {
  return (b.x() - a.x()) * (c.y() - a.y()) - (b.y() - a.y()) * (c.x() - a.x());
}

/// Requires: a, b, c anticlockwise.
bool circle_holds(const Vec2& a, const Vec2& b, const Vec2& c, const Vec2& p) {
  const Vec2 u = a - p, v = b - p, w = c - p;
  return u.squaredNorm() * (v.x() * w.y() - v.y() * w.x()) -
             v.squaredNorm() * (u.x() * w.y() - u.y() * w.x()) +
             w.squaredNorm() * (u.x() * v.y() - u.y() * v.x()) >
         1e-9;
}

bool inside(const std::vector<Vec2>& chain, const Vec2& p) {
  bool in = false;
  for (std::size_t i = 0, j = chain.size() - 1; i < chain.size(); j = i++) {
    const Vec2 &a = chain[i], &b = chain[j];
    if ((a.y() > p.y()) != (b.y() > p.y()) &&
        p.x() < a.x() + (p.y() - a.y()) / (b.y() - a.y()) * (b.x() - a.x())) {
      in = !in;
    }
  }
  return in;
}

double distance_from(const std::vector<Vec2>& chain, const Vec2& p) {
  double least = 1e9;
  for (std::size_t i = 0; i < chain.size(); ++i) {
    const Vec2 a = chain[i], along = chain[(i + 1) % chain.size()] - a;
    const double t =
        std::clamp((p - a).dot(along) / std::max(along.squaredNorm(), 1e-12), 0.0, 1.0);
    least = std::min(least, (a + t * along - p).norm());
  }
  return least;
}

/// Delaunay's triangles, one point after the other (Bowyer and Watson, from memory). Slow and
/// simple: thousands of points at most.
std::vector<std::array<int, 3>> delaunay(std::vector<Vec2> points) {
  const int n = static_cast<int>(points.size());
  points.emplace_back(-1e5, -1e5);
  points.emplace_back(1e5, -1e5);
  points.emplace_back(0.0, 1e5);
  const auto at = [&](int i) -> const Vec2& { return points[static_cast<std::size_t>(i)]; };
  std::vector<std::array<int, 3>> triangles{{n, n + 1, n + 2}}, next;
  for (int i = 0; i < n; ++i) {
    std::vector<std::pair<int, int>> rim;
    next.clear();
    for (const auto& t : triangles) {
      if (!circle_holds(at(t[0]), at(t[1]), at(t[2]), at(i))) {
        next.push_back(t);
        continue;
      }
      for (std::size_t k = 0; k < 3; ++k) {
        const std::pair<int, int> edge(t[k], t[(k + 1) % 3]);
        const auto twin = std::ranges::find(rim, std::pair(edge.second, edge.first));
        if (twin != rim.end()) {
          rim.erase(twin);
        } else {
          rim.push_back(edge);
        }
      }
    }
    for (const auto& [a, b] : rim) next.push_back({a, b, i});
    triangles.swap(next);
  }
  std::erase_if(triangles, [&](const auto& t) { return t[0] >= n || t[1] >= n || t[2] >= n; });
  return triangles;
}

}  // namespace

FlatMesh triangulated(const std::vector<Vec2>& chain, double spacing) {
  FlatMesh mesh{chain, {}};
  Vec2 low = chain.front(), high = chain.front();
  for (const Vec2& p : chain) {
    low = low.cwiseMin(p);
    high = high.cwiseMax(p);
  }
  const double rise = 0.5 * std::sqrt(3.0) * spacing;
  int row = 0;
  for (double y = low.y() + 0.5 * rise; y < high.y(); y += rise, ++row) {
    for (double x = low.x() + (row % 2) * 0.5 * spacing; x < high.x(); x += spacing) {
      // A hair off the regular grid, so that no four points lie on one circle.
      const Vec2 p(x + 0.01 * std::sin(12.9 * y + x), y + 0.01 * std::sin(7.3 * x));
      if (inside(chain, p) && distance_from(chain, p) > 0.55 * spacing) mesh.points.push_back(p);
    }
  }
  for (const auto& t : delaunay(mesh.points)) {
    const auto at = [&](std::size_t k) { return mesh.points[static_cast<std::size_t>(t[k])]; };
    if (twice_area(at(0), at(1), at(2)) < 1e-3) continue;
    if (inside(chain, (at(0) + at(1) + at(2)) / 3.0)) mesh.triangles.push_back(t);
  }
  return mesh;
}

}  // namespace blockwright::torso
