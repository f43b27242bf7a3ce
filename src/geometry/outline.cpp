#include "blockwright/geometry/path.hpp"

#include <algorithm>
#include <cmath>
#include <utility>
#include <vector>

namespace blockwright {
namespace {

// Integral of (x dy - y dx) / 2 over a cubic, as a polynomial in its control points.
double swept_area(const CubicCurve& c) {
  const auto z = [](Point a, Point b) { return a.x * b.y - a.y * b.x; };
  return (6.0 * z(c.p0, c.p1) + 3.0 * z(c.p0, c.p2) + z(c.p0, c.p3) + 3.0 * z(c.p1, c.p2) +
          3.0 * z(c.p1, c.p3) + 6.0 * z(c.p2, c.p3)) /
         20.0;
}

double swept_area(const Segment& s) { return 0.5 * (s.a.x * s.b.y - s.a.y * s.b.x); }

struct Chord {
  Point a, b;
  std::size_t place;  // in the order of travel

  [[nodiscard]] double left() const { return std::min(a.x, b.x); }
  [[nodiscard]] double right() const { return std::max(a.x, b.x); }
  [[nodiscard]] double bottom() const { return std::min(a.y, b.y); }
  [[nodiscard]] double top() const { return std::max(a.y, b.y); }
};

std::vector<Chord> chords_of(const Path& closed, double tolerance) {
  const auto points = flattened(closed, tolerance);
  std::vector<Chord> chords;
  chords.reserve(points.size());
  for (std::size_t i = 0; i < points.size(); ++i) {
    const Point a = points[i];
    const Point b = points[(i + 1) % points.size()];
    if (distance(a, b) <= kJointTolerance) continue;
    chords.push_back({a, b, chords.size()});
  }
  return chords;
}

// Left ends and places of the chords, sorted; chords that share a left end keep the order of
// travel.
std::vector<std::pair<double, std::size_t>> from_left_to_right(const std::vector<Chord>& chords) {
  std::vector<std::pair<double, std::size_t>> order;
  order.reserve(chords.size());
  for (const Chord& chord : chords) order.emplace_back(chord.left(), chord.place);
  std::sort(order.begin(), order.end());
  return order;
}

bool are_parallel(Vec u, Vec v) { return std::abs(cross(u, v)) <= 1e-12 * norm(u) * norm(v); }

// Where two parallel chords lie on each other.
std::optional<Point> chords_overlap(const Chord& s, const Chord& t) {
  const Vec along = unit(s.b - s.a);
  if (std::abs(cross(along, t.a - s.a)) > kJointTolerance) return std::nullopt;
  const double from = dot(along, t.a - s.a), to = dot(along, t.b - s.a);
  if (std::max(from, to) < 0.0 || std::min(from, to) > distance(s.a, s.b)) return std::nullopt;
  return s.a + std::max(std::min(from, to), 0.0) * along;
}

// Where two chords that are not neighbours cross or touch.
std::optional<Point> chords_cross(const Chord& s, const Chord& t) {
  const Vec u = s.b - s.a, v = t.b - t.a, w = t.a - s.a;
  if (are_parallel(u, v)) return chords_overlap(s, t);
  const double at_s = cross(w, v) / cross(u, v);
  const double at_t = cross(w, u) / cross(u, v);
  if (at_s < 0.0 || at_s > 1.0 || at_t < 0.0 || at_t > 1.0) return std::nullopt;
  return s.a + at_s * u;
}

// Where a chord runs back over the one before it.
std::optional<Point> chords_fold(const Chord& before, const Chord& after) {
  const Vec u = before.b - before.a, v = after.b - after.a;
  if (!are_parallel(u, v) || dot(u, v) > 0.0) return std::nullopt;
  return before.b;
}

// The crossing of two chords of a closed chain of `count`.
std::optional<Point> crossing_of(const Chord& s, const Chord& t, std::size_t count) {
  if ((s.place + 1) % count == t.place) return chords_fold(s, t);
  if ((t.place + 1) % count == s.place) return chords_fold(t, s);
  return chords_cross(s, t);
}

}  // namespace

double signed_area(const Path& closed) {
  if (closed.empty()) return 0.0;
  double area = 0.0;
  for (const Curve& curve : closed.curves()) {
    area += std::visit([](const auto& stroke) { return swept_area(stroke); }, curve);
  }
  return area + swept_area(Segment{closed.end(), closed.start()});
}

bool contains(const Path& closed, Point p, double tolerance) {
  const auto points = flattened(closed, tolerance);
  bool inside = false;
  for (std::size_t i = 0; i < points.size(); ++i) {
    const Point a = points[i];
    const Point b = points[(i + 1) % points.size()];
    if ((a.y > p.y) == (b.y > p.y)) continue;
    const double at = (p.y - a.y) / (b.y - a.y);
    if (p.x < a.x + at * (b.x - a.x)) inside = !inside;
  }
  return inside;
}

// Sweeps a line from left to right: only chords that share a stretch of x are compared.
std::optional<Point> find_crossing(const Path& closed, double tolerance) {
  const auto chords = chords_of(closed, tolerance);
  const auto order = from_left_to_right(chords);
  for (auto i = order.begin(); i != order.end(); ++i) {
    const Chord& s = chords[i->second];
    const double right = s.right(), bottom = s.bottom(), top = s.top();
    for (auto j = i + 1; j != order.end() && j->first <= right; ++j) {
      const Chord& t = chords[j->second];
      if (t.bottom() > top || t.top() < bottom) continue;
      if (const auto point = crossing_of(s, t, chords.size())) return point;
    }
  }
  return std::nullopt;
}

}  // namespace blockwright
