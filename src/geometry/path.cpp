#include "blockwright/geometry/path.hpp"

#include "arc_length.hpp"
#include "blockwright/base/error.hpp"
#include "blockwright/geometry/box.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

namespace blockwright {
namespace {

void require_joint(Point end, Point start) {
  require(distance(end, start) <= kJointTolerance, "a stroke does not start where the path ends");
}

// No point of a stroke lies nearer than this, but for rounding: the box about its control points.
double distance_to_controls(const Curve& curve, Point to) {
  const Box box = control_box(as_cubic(curve));
  const double x = std::fmax(0.0, std::fmax(box.left - to.x, to.x - box.right));
  const double y = std::fmax(0.0, std::fmax(box.bottom - to.y, to.y - box.top));
  return std::fmax(0.0, norm({x, y}) - kJointTolerance);
}

double distance_to_joints(const Path& path, Point to) {
  double least = distance(path.start(), to);
  for (const Curve& curve : path.curves()) least = std::fmin(least, distance(end_of(curve), to));
  return least;
}

// Where a stroke ends, or the path starts, just there: nothing is nearer.
std::optional<PathPlace> joint_at(const Path& path, Point at) {
  if (path.start() == at) return PathPlace{0, 0.0};
  for (std::size_t i = 0; i < path.curves().size(); ++i) {
    if (end_of(path.curves()[i]) == at) return PathPlace{i, 1.0};
  }
  return std::nullopt;
}

double length_before(const Path& path, PathPlace place) {
  double sum = 0.0;
  for (std::size_t i = 0; i < place.curve; ++i) sum += length(path.curves()[i]);
  const Curve& last = path.curves()[place.curve];
  return sum + length(place.t < 1.0 ? split_at(last, place.t).first : last);
}

// The direction in which the strokes from `from` on set out; single points have none.
Vec first_tangent(const Path& path, std::size_t from) {
  for (std::size_t i = from; i < path.curves().size(); ++i) {
    if (const Vec tangent = tangent_at(path.curves()[i], 0.0); tangent != Vec{}) return tangent;
  }
  return {};
}

// The direction in which the strokes up to `last` arrive.
Vec last_tangent(const Path& path, std::size_t last) {
  for (std::size_t i = last + 1; i > 0; --i) {
    if (const Vec tangent = tangent_at(path.curves()[i - 1], 1.0); tangent != Vec{}) return tangent;
  }
  return {};
}

Curve part_of(const Curve& curve, Stretch part) {
  const Curve before = part.to < 1.0 ? split_at(curve, part.to).first : curve;
  return part.from > 0.0 ? split_at(before, part.from / part.to).second : before;
}

// Number of equal parameter steps after which the chord error is below the tolerance, from the
// largest second difference of the control points (Wang's bound).
int flattening_steps(const Curve& curve, double tolerance) {
  const auto* c = std::get_if<CubicCurve>(&curve);
  if (c == nullptr) return 1;
  const double bend =
      std::max(norm((c->p2 - c->p1) - (c->p1 - c->p0)), norm((c->p3 - c->p2) - (c->p2 - c->p1)));
  return std::max(1, static_cast<int>(std::ceil(std::sqrt(0.75 * bend / tolerance))));
}

// How a stroke bends: curvature_at() for many places.
class Bend {
 public:
  explicit Bend(const CubicCurve& c)
      : start_(3.0 * (c.p1 - c.p0)),
        by_t_(6.0 * ((c.p2 - c.p1) - (c.p1 - c.p0))),
        by_square_(3.0 * ((c.p3 - c.p2) - 2.0 * (c.p2 - c.p1) + (c.p1 - c.p0))) {}
  [[nodiscard]] double at(double t) const {
    const Vec velocity = start_ + t * (by_t_ + t * by_square_);
    const double square = dot(velocity, velocity);
    if (!(square > kNoSpeed)) return 0.0;
    return cross(velocity, by_t_ + 2.0 * t * by_square_) / (square * std::sqrt(square));
  }

 private:
  static constexpr double kNoSpeed = 1e-24;
  Vec start_, by_t_, by_square_;  // the derivative, as a polynomial
};

// The largest curvature of a stroke, either way.
double sharpest_bend(const CubicCurve& curve) {
  constexpr int samples = 96;
  const Bend bend(curve);
  double at = 0.0, sharpest = 0.0;
  const auto try_at = [&](double t) {
    const double here = std::abs(bend.at(t));
    if (here <= sharpest) return;
    sharpest = here;
    at = t;
  };
  for (int i = 0; i <= samples; ++i) try_at(static_cast<double>(i) / samples);
  for (double step = 0.5 / samples; step > 1e-5; step *= 0.5) {
    const double middle = at;
    try_at(std::max(middle - step, 0.0));
    try_at(std::min(middle + step, 1.0));
  }
  return sharpest;
}

}  // namespace

Path::Path(std::vector<Curve> curves) : curves_(std::move(curves)) {
  for (std::size_t i = 1; i < curves_.size(); ++i) {
    require_joint(end_of(curves_[i - 1]), start_of(curves_[i]));
  }
}

Path Path::through(std::span<const Point> points) {
  require(points.size() >= 2, "a path needs two points");
  std::vector<Curve> curves;
  curves.reserve(points.size() - 1);
  for (std::size_t i = 1; i < points.size(); ++i) {
    curves.emplace_back(Segment{points[i - 1], points[i]});
  }
  return Path(std::move(curves));
}

void Path::add(const Curve& curve) {
  if (!empty()) require_joint(end(), start_of(curve));
  curves_.push_back(curve);
}

void Path::add(const Path& path) {
  if (path.empty()) return;
  if (&path == this) {
    add(Path(path));
    return;
  }
  if (!empty()) require_joint(end(), path.start());
  curves_.insert(curves_.end(), path.curves_.begin(), path.curves_.end());
}

Point Path::start() const {
  require(!empty(), "an empty path has no start");
  return start_of(curves_.front());
}

Point Path::end() const {
  require(!empty(), "an empty path has no end");
  return end_of(curves_.back());
}

double length(const Path& path, double accuracy) {
  double sum = 0.0;
  for (const Curve& curve : path.curves()) sum += length(curve, accuracy);
  return sum;
}

PathPlace place_at_length(const Path& path, double s) {
  require(!path.empty(), "an empty path has no places");
  const auto& curves = path.curves();
  for (std::size_t i = 0; i < curves.size(); ++i) {
    const double here = length(curves[i]);
    if (s <= here || i + 1 == curves.size()) {
      return {i, parameter_at_length(Measured{curves[i], here}, s)};
    }
    s -= here;
  }
  return {curves.size() - 1, 1.0};
}

Point point_at(const Path& path, PathPlace place) {
  return point_at(path.curves().at(place.curve), place.t);
}

Point point_at_length(const Path& path, double s) {
  return point_at(path, place_at_length(path, s));
}

Vec tangent_at_length(const Path& path, double s) {
  const PathPlace place = place_at_length(path, s);
  const Vec tangent = tangent_at(path.curves()[place.curve], place.t);
  if (tangent != Vec{}) return tangent;
  const Vec onward = first_tangent(path, place.curve);
  return onward != Vec{} ? onward : last_tangent(path, place.curve);
}

Vec start_tangent(const Path& path) {
  require(!path.empty(), "an empty path has no tangent");
  return first_tangent(path, 0);
}

Vec end_tangent(const Path& path) {
  require(!path.empty(), "an empty path has no tangent");
  return last_tangent(path, path.curves().size() - 1);
}

Path sub_path(const Path& path, Stretch stretch) {
  Path part;
  double at = 0.0;
  for (const Curve& curve : path.curves()) {
    const double here = length(curve);
    const double low = std::clamp(stretch.from - at, 0.0, here);
    const double high = std::clamp(stretch.to - at, 0.0, here);
    at += here;
    if (high - low <= kLengthAccuracy) continue;
    const Measured whole{curve, here};
    part.add(part_of(curve, {parameter_at_length(whole, low), parameter_at_length(whole, high)}));
  }
  return part;
}

Path reversed(const Path& path) {
  std::vector<Curve> curves = path.curves();
  std::reverse(curves.begin(), curves.end());
  for (Curve& curve : curves) curve = reversed(curve);
  return Path(std::move(curves));
}

Path placed(const Path& path, const Placement& placement) {
  std::vector<Curve> curves = path.curves();
  for (Curve& curve : curves) curve = placed(curve, placement);
  return Path(std::move(curves));
}

std::vector<Point> flattened(const Path& path, double tolerance) {
  require(tolerance > 0.0, "a flattening tolerance must be positive");
  std::vector<Point> points;
  if (path.empty()) return points;
  points.push_back(path.start());
  for (const Curve& curve : path.curves()) {
    const int steps = flattening_steps(curve, tolerance);
    for (int i = 1; i < steps; ++i) {
      points.push_back(point_at(curve, static_cast<double>(i) / steps));
    }
    points.push_back(end_of(curve));
  }
  return points;
}

NearestOnPath nearest(const Path& path, Point to) {
  require(!path.empty(), "an empty path has no nearest point");
  if (const auto joint = joint_at(path, to)) return {*joint, to, 0.0, length_before(path, *joint)};
  NearestOnPath best;
  best.distance = std::numeric_limits<double>::infinity();
  const double at_a_joint = distance_to_joints(path, to);
  for (std::size_t i = 0; i < path.curves().size(); ++i) {
    const Curve& curve = path.curves()[i];
    if (distance_to_controls(curve, to) > std::fmin(best.distance, at_a_joint)) continue;
    const double t = nearest_parameter(curve, to);
    const Point p = point_at(curve, t);
    if (distance(p, to) < best.distance) best = {{i, t}, p, distance(p, to), 0.0};
  }
  best.along = length_before(path, best.place);
  return best;
}

double least_radius(const Path& path) {
  double sharpest = 0.0;
  for (const Curve& curve : path.curves()) {
    if (const auto* c = std::get_if<CubicCurve>(&curve)) {
      sharpest = std::max(sharpest, sharpest_bend(*c));
    }
  }
  return sharpest > 0.0 ? 1.0 / sharpest : std::numeric_limits<double>::infinity();
}

int inflections(const std::vector<Path>& paths) {
  constexpr int samples = 48;
  constexpr double straight = 1e-6;  // 1/mm
  int changes = 0;
  double last = 0.0;
  for (const Path& path : paths) {
    for (const Curve& curve : path.curves()) {
      const auto* c = std::get_if<CubicCurve>(&curve);
      if (c == nullptr) continue;
      const Bend bend(*c);
      for (int i = 0; i <= samples; ++i) {
        const double here = bend.at(static_cast<double>(i) / samples);
        if (std::abs(here) < straight) continue;
        if (last * here < 0.0) ++changes;
        last = here;
      }
    }
  }
  return changes;
}

}  // namespace blockwright
