#include "blockwright/geometry/offset.hpp"

#include "blockwright/geometry/intersections.hpp"

#include <cmath>
#include <utility>

namespace blockwright {
namespace {

// A cubic is halved 14 times at most; only a cusp inside a stroke gets there.
constexpr double kLeastPart = 1.0 / 16384.0;
// Ends this near are joined by moving one of them, in mm.
constexpr double kSnap = 0.1 * kOffsetTolerance;

Vec third_derivative(const CubicCurve& c) {
  return 6.0 * ((c.p3 - c.p2) - 2.0 * (c.p2 - c.p1) + (c.p1 - c.p0));
}

// How fast the tangent turns, in radians per unit of t; finite even where a handle is null.
double turning_rate(const CubicCurve& c, double t) {
  const Vec d = derivative_at(c, t), second = second_derivative(c, t);
  const double square = dot(d, d);
  if (square > 1e-18) return cross(d, second) / square;
  const double at_rest = dot(second, second);
  return at_rest > 0.0 ? 0.5 * cross(second, third_derivative(c)) / at_rest : 0.0;
}

// The true parallel of one cubic: its points, and its derivative by the cubic's own parameter.
struct Parallel {
  const CubicCurve& curve;
  double distance;

  [[nodiscard]] Point at(double t) const {
    return point_at(curve, t) + distance * right_of(tangent_at(curve, t));
  }
  [[nodiscard]] Vec derivative(double t) const {
    return derivative_at(curve, t) + distance * turning_rate(curve, t) * tangent_at(curve, t);
  }
};

CubicCurve hermite_fit(const Parallel& parallel, Stretch stretch) {
  const auto [from, to] = stretch;
  const Point a = parallel.at(from), b = parallel.at(to);
  const double third = (to - from) / 3.0;
  return {a, a + third * parallel.derivative(from), b - third * parallel.derivative(to), b};
}

// The samples see nearly all of the error, not all of it: they must hold a little less.
constexpr double kSampleShare = 0.8;

bool holds(const CubicCurve& fit, const Parallel& parallel, Stretch stretch) {
  const auto [from, to] = stretch;
  for (const double u : {0.125, 0.25, 0.375, 0.5, 0.625, 0.75, 0.875}) {
    const double off = distance(point_at(fit, u), parallel.at(from + u * (to - from)));
    if (off > kSampleShare * kOffsetTolerance) return false;
  }
  return true;
}

void fit_parallel(const Parallel& parallel, Stretch stretch, Path& result) {
  const CubicCurve fit = hermite_fit(parallel, stretch);
  if (holds(fit, parallel, stretch)) {
    result.add(fit);
  } else if (stretch.to - stretch.from <= kLeastPart) {
    result.add(Segment{fit.p0, fit.p3});
  } else {
    const double middle = 0.5 * (stretch.from + stretch.to);
    fit_parallel(parallel, {stretch.from, middle}, result);
    fit_parallel(parallel, {middle, stretch.to}, result);
  }
}

Path offset_of(const Curve& curve, double distance) {
  if (const auto* s = std::get_if<Segment>(&curve)) {
    const Vec shift = distance * right_of(unit(s->b - s->a));
    return Path::through({s->a + shift, s->b + shift});
  }
  Path result;
  fit_parallel({std::get<CubicCurve>(curve), distance}, {0.0, 1.0}, result);
  return result;
}

// The path led on to a point straight ahead; a straight last stroke is made longer instead.
Path led_on_to(Path path, Point to) {
  if (std::holds_alternative<Segment>(path.curves().back())) return ending_at(std::move(path), to);
  append_line(path, to);
  return path;
}

// Builds an offset stroke by stroke.
class OffsetBuilder {
 public:
  explicit OffsetBuilder(double distance) : distance_(distance) {}

  void add(const Curve& curve) {
    if (blockwright::length(curve, kOffsetTolerance) <= kJointTolerance) return;
    const Path next = offset_of(curve, distance_);
    if (result_.empty()) {
      result_ = next;
    } else {
      join(next, start_of(curve), tangent_at(curve, 0.0));
    }
    arriving_ = tangent_at(curve, 1.0);
  }

  Path take() { return std::move(result_); }

 private:
  void join(const Path& next, Point corner, Vec leaving) {
    if (distance(result_.end(), next.start()) <= kSnap) return append(result_, next, kSnap);
    if (cross(arriving_, leaving) * distance_ < 0.0) return join_inside(next, corner);
    join_outside(next, corner);
  }

  void join_outside(const Path& next, Point corner) {
    const auto tip =
        lines_meet(result_.end(), end_tangent(result_), next.start(), start_tangent(next));
    if (!tip || distance(*tip, corner) > kMitreLimit * std::abs(distance_)) {
      return append(result_, next);
    }
    result_ = led_on_to(std::move(result_), *tip);
    append(result_, reversed(led_on_to(reversed(next), *tip)));
  }

  // The corner is cut off at the last point where its neighbours meet, seen along the first.
  void join_inside(const Path& next, Point corner) {
    const auto meetings = intersections(result_, next);
    if (meetings.empty()) {
      append_line(result_, corner);
      append(result_, next);
    } else {
      result_ = part_before(result_, meetings.back().on_a);
      append(result_, part_after(next, meetings.back().on_b));
    }
  }

  double distance_;
  Path result_;
  Vec arriving_;
};

}  // namespace

Path offset(const Path& path, double distance) {
  if (distance == 0.0) return path;
  OffsetBuilder builder(distance);
  for (const Curve& curve : path.curves()) builder.add(curve);
  return builder.take();
}

}  // namespace blockwright
