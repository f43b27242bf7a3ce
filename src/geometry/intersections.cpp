#include "blockwright/geometry/intersections.hpp"

#include "blockwright/base/error.hpp"
#include "blockwright/geometry/box.hpp"
#include "blockwright/geometry/solve.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <optional>
#include <utility>

namespace blockwright {
namespace {

// Two hits nearer than this are one point: far above rounding, far below anything drawn.
constexpr double kSamePoint = 1e-6;
// The same where the paths touch without crossing: there a hit is known only to the square root.
constexpr double kSameTouch = 1e-3;
// Pieces of nearly parallel curves are not split below this size, in mm.
constexpr double kSmallest = 0.01;
// Sine of the angle (6 degrees) above which two nearly straight pieces count as crossing plainly.
constexpr double kPlainAngle = 0.1;
// A piece whose handles leave its chord by less than this share of its length is nearly straight.
constexpr double kNearlyStraight = 0.02;
// Two cubics that share more points than this run along each other (Bezout's theorem).
constexpr std::size_t kMostCrossings = 9;

// A part of a stroke with its own control points.
struct StrokePart {
  CubicCurve curve;
  double from = 0.0;
  double to = 1.0;
  Box box = control_box(curve);

  [[nodiscard]] double size() const { return std::max(box.width(), box.height()); }
  [[nodiscard]] bool nearly_straight() const {
    const Vec chord = curve.p3 - curve.p0;
    const double limit = kNearlyStraight * dot(chord, chord);
    return std::abs(cross(chord, curve.p1 - curve.p0)) <= limit &&
           std::abs(cross(chord, curve.p2 - curve.p0)) <= limit &&
           dot(chord, curve.p1 - curve.p0) >= 0.0 && dot(chord, curve.p3 - curve.p2) >= 0.0;
  }
  [[nodiscard]] std::array<StrokePart, 2> halves() const {
    const auto [left, right] = split_at(Curve(curve), 0.5);
    const double middle = 0.5 * (from + to);
    return {
        {{std::get<CubicCurve>(left), from, middle}, {std::get<CubicCurve>(right), middle, to}}};
  }
};

bool cross_plainly(const StrokePart& a, const StrokePart& b) {
  const Vec u = a.curve.p3 - a.curve.p0, v = b.curve.p3 - b.curve.p0;
  return a.nearly_straight() && b.nearly_straight() &&
         std::abs(cross(u, v)) > kPlainAngle * norm(u) * norm(v);
}

struct Parameters {
  double s = 0.0;
  double t = 0.0;
};

// One step towards the shared point: Newton's where the tangents differ, otherwise each point moves
// to the foot of the other (Gauss-Newton with a little damping, which also settles on touches).
Parameters step_towards(const Curve& a, const Curve& b, Parameters at) {
  const Vec gap = point_at(b, at.t) - point_at(a, at.s);
  const Vec u = derivative_at(a, at.s), v = derivative_at(b, at.t);
  const double turn = cross(u, v);
  if (std::abs(turn) > 1e-7 * norm(u) * norm(v)) {
    return {at.s + cross(gap, v) / turn, at.t + cross(gap, u) / turn};
  }
  const double square = dot(u, u);
  return {square > 0.0 ? at.s + dot(gap, u) / square : at.s, at.t};
}

// The shared point near a start, or nothing. Parameters stay on the strokes.
std::optional<Parameters> refined(const Curve& a, const Curve& b, Parameters at) {
  for (int step = 0; step < 60; ++step) {
    const Parameters next = step_towards(a, b, at);
    const Parameters kept = {std::clamp(next.s, 0.0, 1.0), std::clamp(next.t, 0.0, 1.0)};
    const bool still = std::abs(kept.s - at.s) + std::abs(kept.t - at.t) < 1e-15;
    at = kept;
    if (still) break;
  }
  if (distance(point_at(a, at.s), point_at(b, at.t)) > kCrossingTolerance) return std::nullopt;
  return at;
}

// Whether a point lies in the box about a stroke, or within the tolerance of it.
bool may_lie_on(const Curve& curve, Point p) {
  Box at;
  at.include(p);
  return control_box(as_cubic(curve)).overlaps(at, 2.0 * kCrossingTolerance);
}

// Finds the shared points of two strokes by halving whatever may still meet.
struct StrokeMeeting {
  const Curve& a;
  const Curve& b;
  std::vector<Parameters> hits = {};

  std::vector<Parameters> find() {
    search({as_cubic(a)}, {as_cubic(b)});
    if (run_together()) hits.clear();
    try_ends();
    return hits;
  }
  [[nodiscard]] bool run_together() const { return hits.size() > kMostCrossings; }

  void search(const StrokePart& in_a, const StrokePart& in_b) {
    if (run_together() || !in_a.box.overlaps(in_b.box, kCrossingTolerance)) return;
    if (cross_plainly(in_a, in_b) || std::max(in_a.size(), in_b.size()) <= kSmallest) {
      keep(refined(a, b, {0.5 * (in_a.from + in_a.to), 0.5 * (in_b.from + in_b.to)}));
    } else if (in_a.size() >= in_b.size()) {
      for (const StrokePart& half : in_a.halves()) search(half, in_b);
    } else {
      for (const StrokePart& half : in_b.halves()) search(in_a, half);
    }
  }

  // Ends that lie on the other stroke: Newton may miss them by its last step, and of strokes that
  // run along each other they are all that is reported.
  void try_ends() {
    for (const double s : {0.0, 1.0}) {
      const Point end = point_at(a, s);
      if (may_lie_on(b, end)) keep_if_met({s, nearest_parameter(b, end)});
    }
    for (const double t : {0.0, 1.0}) {
      const Point end = point_at(b, t);
      if (may_lie_on(a, end)) keep_if_met({nearest_parameter(a, end), t});
    }
  }

  void keep_if_met(Parameters at) {
    if (distance(point_at(a, at.s), point_at(b, at.t)) <= kCrossingTolerance) keep(at);
  }

  void keep(std::optional<Parameters> hit) {
    if (!hit) return;
    const auto is_hit = [&](const Parameters& other) { return is_same(*hit, other); };
    if (std::ranges::none_of(hits, is_hit)) hits.push_back(*hit);
  }

  [[nodiscard]] bool is_same(const Parameters& one, const Parameters& other) const {
    const double apart = distance(point_at(a, one.s), point_at(a, other.s));
    if (apart <= kSamePoint) return true;
    const double turn = cross(tangent_at(a, one.s), tangent_at(b, one.t));
    return std::abs(turn) < kSameTouch && apart <= kSameTouch;
  }
};

// A joint belongs to two strokes: its hits on both are one point.
template <class Crossing>
void drop_repeats(std::vector<Crossing>& sorted) {
  auto kept = sorted.begin();
  for (const Crossing& crossing : sorted) {
    const bool repeats = std::any_of(sorted.begin(), kept, [&](const Crossing& other) {
      return distance(other.point, crossing.point) <= kSamePoint;
    });
    if (!repeats) *kept++ = crossing;
  }
  sorted.erase(kept, sorted.end());
}

// Distances of a stroke's control points from a line, as a polynomial in Bernstein form.
using Heights = std::array<double, 4>;

bool near_zero(const Heights& h) {
  return std::all_of(h.begin(), h.end(),
                     [](double x) { return std::abs(x) <= kCrossingTolerance; });
}

std::pair<Heights, Heights> halved(const Heights& h) {
  const double a = 0.5 * (h[0] + h[1]), b = 0.5 * (h[1] + h[2]), c = 0.5 * (h[2] + h[3]);
  const double ab = 0.5 * (a + b), bc = 0.5 * (b + c), middle = 0.5 * (ab + bc);
  return {{h[0], a, ab, middle}, {middle, bc, c, h[3]}};
}

double value_at(const Heights& h, double t) {
  const double u = 1.0 - t;
  return u * u * (u * h[0] + 3.0 * t * h[1]) + t * t * (3.0 * u * h[2] + t * h[3]);
}

// Rises or falls all the way, from one side of the line to plainly on the other.
bool passes_once(const Heights& h) {
  const bool rises = h[0] < -kCrossingTolerance && h[3] > kCrossingTolerance;
  const bool falls = h[0] > kCrossingTolerance && h[3] < -kCrossingTolerance;
  return (rises && std::is_sorted(h.begin(), h.end())) ||
         (falls && std::is_sorted(h.rbegin(), h.rend()));
}

// Adds the stretches of the parameter on which the polynomial is zero to within the tolerance,
// ascending. A stretch that goes on where the last one ended belongs to it: so does the far side of
// a touch.
void find_zeros(const Heights& h, Stretch within, std::vector<Stretch>& zeros) {
  const auto [from, to] = within;
  const auto [low, high] = std::minmax_element(h.begin(), h.end());
  if (*low > kCrossingTolerance || *high < -kCrossingTolerance) return;
  if (passes_once(h)) {
    const auto value = [&](double t) { return value_at(h, t); };
    const double zero = from + solve_between(value, {0.0, 1.0}, 1e-15) * (to - from);
    zeros.push_back({zero, zero});
    return;
  }
  if (to - from < 1e-13 || (near_zero(h) && to - from < 1e-3)) {
    if (!zeros.empty() && zeros.back().to == from) {
      zeros.back().to = to;
    } else {
      zeros.push_back(within);
    }
    return;
  }
  const auto [left, right] = halved(h);
  const double middle = 0.5 * (from + to);
  find_zeros(left, {from, middle}, zeros);
  find_zeros(right, {middle, to}, zeros);
}

// Where a stroke lies on a line: stretches of its parameter.
std::vector<Stretch> line_parameters(const Curve& curve, Point through, Vec normal) {
  const CubicCurve c = as_cubic(curve);
  const Heights h = {dot(c.p0 - through, normal), dot(c.p1 - through, normal),
                     dot(c.p2 - through, normal), dot(c.p3 - through, normal)};
  if (!std::isfinite(h[0] + h[1] + h[2] + h[3])) return {};  // what is no number meets nothing
  if (near_zero(h)) return {{0.0, 0.0}, {1.0, 1.0}};
  std::vector<Stretch> zeros;
  find_zeros(h, {0.0, 1.0}, zeros);
  return zeros;
}

}  // namespace

std::vector<PathCrossing> intersections(const Path& a, const Path& b) {
  std::vector<PathCrossing> found;
  for (std::size_t i = 0; i < a.curves().size(); ++i) {
    const Curve& here = a.curves()[i];
    for (std::size_t j = 0; j < b.curves().size(); ++j) {
      const Curve& there = b.curves()[j];
      if (!control_box(as_cubic(here)).overlaps(control_box(as_cubic(there)), kCrossingTolerance))
        continue;
      for (const Parameters& hit : StrokeMeeting{here, there}.find()) {
        found.push_back({{i, hit.s}, {j, hit.t}, point_at(here, hit.s)});
      }
    }
  }
  std::sort(found.begin(), found.end(), [](const PathCrossing& x, const PathCrossing& y) {
    return comes_before(x.on_a, y.on_a);
  });
  drop_repeats(found);
  return found;
}

std::vector<LineCrossing> intersections(const Path& path, Point through, Vec direction) {
  require(norm(direction) > 0.0, "a line needs a direction");
  const Vec along = unit(direction);
  std::vector<LineCrossing> found;
  for (std::size_t i = 0; i < path.curves().size(); ++i) {
    const Curve& curve = path.curves()[i];
    for (const auto& [from, to] : line_parameters(curve, through, left_of(along))) {
      const double t = 0.5 * (from + to);
      const Point p = point_at(curve, t);
      found.push_back({{i, t}, p, dot(p - through, along)});
    }
  }
  drop_repeats(found);
  return found;
}

}  // namespace blockwright
