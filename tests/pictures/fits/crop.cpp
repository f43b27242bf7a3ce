#include "fits/crop.hpp"

#include "blockwright/geometry/intersections.hpp"

#include <algorithm>
#include <variant>

namespace blockwright_pictures {

using namespace blockwright;

namespace {

constexpr double kSame = 1e-6;      // mm
constexpr double kShortest = 1e-3;  // mm, of a stretch that is drawn

bool holds(const Box& box, Point p) {
  return p.x > box.left && p.x < box.right && p.y > box.bottom && p.y < box.top;
}

// Where a path starts, ends and crosses the lines of a box, in mm along it.
std::vector<double> cuts(const Path& path, const Box& box) {
  std::vector<double> along{0.0, length(path)};
  const Point low{box.left, box.bottom}, high{box.right, box.top};
  for (const Point corner : {low, high}) {
    for (const Vec line : {Vec{1.0, 0.0}, Vec{0.0, 1.0}}) {
      for (const LineCrossing& hit : intersections(path, corner, line)) {
        along.push_back(nearest(path, hit.point).along);
      }
    }
  }
  std::sort(along.begin(), along.end());
  return along;
}

bool same(const Curve& a, const Curve& b) {
  const auto near = [](Point p, Point q) { return distance(p, q) < kSame; };
  if (a.index() != b.index()) return false;
  if (const auto* s = std::get_if<Segment>(&a)) {
    const auto& t = std::get<Segment>(b);
    return near(s->a, t.a) && near(s->b, t.b);
  }
  const auto &c = std::get<CubicCurve>(a), &d = std::get<CubicCurve>(b);
  return near(c.p0, d.p0) && near(c.p1, d.p1) && near(c.p2, d.p2) && near(c.p3, d.p3);
}

}  // namespace

std::vector<Path> inside(const Path& path, const Box& box) {
  std::vector<Path> parts;
  const std::vector<double> along = cuts(path, box);
  for (std::size_t i = 0; i + 1 < along.size(); ++i) {
    if (along[i + 1] - along[i] < kShortest) continue;
    if (!holds(box, point_at_length(path, 0.5 * (along[i] + along[i + 1])))) continue;
    parts.push_back(sub_path(path, {along[i], along[i + 1]}));
  }
  return parts;
}

std::vector<Path> differing(const Path& path, const Path& other) {
  std::vector<Path> parts;
  for (const Curve& curve : path.curves()) {
    const auto& strokes = other.curves();
    const bool kept = std::any_of(strokes.begin(), strokes.end(),
                                  [&](const Curve& stroke) { return same(curve, stroke); });
    if (!kept) parts.push_back(Path({curve}));
  }
  return parts;
}

}  // namespace blockwright_pictures
