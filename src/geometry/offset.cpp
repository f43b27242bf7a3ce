#include "blockwright/geometry/offset.hpp"

#include "blockwright/base/error.hpp"
#include "blockwright/geometry/construct.hpp"
#include "blockwright/geometry/intersections.hpp"
#include "blockwright/geometry/path_parts.hpp"

#include <cmath>
#include <optional>
#include <utility>
#include <vector>

namespace blockwright {
namespace {

// Halvings of one cubic at most; only a cusp inside a stroke gets there.
constexpr int kMostHalvings = 14;
// Ends this near are joined by moving one of them, in shares of the tolerance.
constexpr double kSnapShare = 0.1;

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

CubicCurve hermite_fit(const Parallel& parallel, double from, double to) {
  const Point a = parallel.at(from), b = parallel.at(to);
  const double third = (to - from) / 3.0;
  return {a, a + third * parallel.derivative(from), b - third * parallel.derivative(to), b};
}

bool holds(const CubicCurve& fit, const Parallel& parallel, double from, double to,
           double tolerance) {
  for (const double u : {0.125, 0.25, 0.375, 0.5, 0.625, 0.75, 0.875}) {
    if (distance(point_at(fit, u), parallel.at(from + u * (to - from))) > tolerance) return false;
  }
  return true;
}

// The samples see nearly all of the error, not all of it: they must hold a little less.
constexpr double kSampleShare = 0.8;

void fit_parallel(const Parallel& parallel, double from, double to, double tolerance, int depth,
                  Path& result) {
  const CubicCurve fit = hermite_fit(parallel, from, to);
  if (holds(fit, parallel, from, to, kSampleShare * tolerance)) {
    result.add(fit);
  } else if (depth == kMostHalvings) {
    result.add(Segment{fit.p0, fit.p3});
  } else {
    const double middle = 0.5 * (from + to);
    fit_parallel(parallel, from, middle, tolerance, depth + 1, result);
    fit_parallel(parallel, middle, to, tolerance, depth + 1, result);
  }
}

Path offset_of(const Curve& curve, double distance, double tolerance) {
  Path result;
  if (const auto* s = std::get_if<Segment>(&curve)) {
    const Vec shift = distance * right_of(unit(s->b - s->a));
    result.add(Segment{s->a + shift, s->b + shift});
  } else {
    fit_parallel({std::get<CubicCurve>(curve), distance}, 0.0, 1.0, tolerance, 0, result);
  }
  return result;
}

// Leads the result on to a point straight ahead; a straight last stroke is made longer instead.
void extend_to(Path& path, Point to) {
  std::vector<Curve> curves = path.curves();
  if (const auto* s = std::get_if<Segment>(&curves.back())) {
    curves.back() = Segment{s->a, to};
    path = Path(std::move(curves));
  } else {
    append_line(path, to);
  }
}

// The path begun from a point straight behind its start, likewise.
Path begun_at(const Path& path, Point from) {
  if (std::holds_alternative<Segment>(path.curves().front())) return starting_at(path, from);
  Path longer = Path::through({from, path.start()});
  longer.add(path);
  return longer;
}

// The last point where the neighbours of an inner corner meet, seen along the first of them.
std::optional<PathCrossing> inner_meeting(const Path& before, const Path& after) {
  const auto meetings = intersections(before, after);
  if (meetings.empty()) return std::nullopt;
  return meetings.back();
}

std::optional<Point> mitre_point(const Path& before, const Path& after, Point corner,
                                 double limit) {
  const auto tip =
      lines_meet(before.end(), end_tangent(before), after.start(), start_tangent(after));
  if (!tip || distance(*tip, corner) > limit) return std::nullopt;
  return tip;
}

// Builds an offset stroke by stroke.
class OffsetBuilder {
 public:
  OffsetBuilder(double distance, double tolerance) : distance_(distance), tolerance_(tolerance) {}

  void add(const Curve& curve) {
    if (blockwright::length(curve, tolerance_) <= kJointTolerance) return;
    const Path next = offset_of(curve, distance_, tolerance_);
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
    const double snap = kSnapShare * tolerance_;
    if (distance(result_.end(), next.start()) <= snap) return append(result_, next, snap);
    if (cross(arriving_, leaving) * distance_ < 0.0) return join_inside(next, corner);
    join_outside(next, corner);
  }

  void join_outside(const Path& next, Point corner) {
    const auto tip = mitre_point(result_, next, corner, kMitreLimit * std::abs(distance_));
    if (tip) extend_to(result_, *tip);
    append(result_, tip ? begun_at(next, *tip) : next);
  }

  void join_inside(const Path& next, Point corner) {
    if (const auto meeting = inner_meeting(result_, next)) {
      result_ = part_before(result_, meeting->on_a);
      append(result_, part_after(next, meeting->on_b));
    } else {
      append_line(result_, corner);
      append(result_, next);
    }
  }

  double distance_;
  double tolerance_;
  Path result_;
  Vec arriving_;
};

}  // namespace

Path offset(const Path& path, double distance, double tolerance) {
  require(tolerance > 0.0, "an offset tolerance must be positive");
  if (distance == 0.0) return path;
  OffsetBuilder builder(distance, tolerance);
  for (const Curve& curve : path.curves()) builder.add(curve);
  return builder.take();
}

}  // namespace blockwright
