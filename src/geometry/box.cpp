#include "blockwright/geometry/box.hpp"

#include <array>
#include <cmath>

namespace blockwright {
namespace {

// Adds the points where one coordinate of the cubic stands still: roots of a t^2 + b t + c.
void include_extremes(Box& box, const Curve& curve, const std::array<double, 3>& d) {
  const double a = d[0] - 2.0 * d[1] + d[2], b = 2.0 * (d[1] - d[0]), c = d[0];
  std::array<double, 2> roots = {-1.0, -1.0};
  if (std::abs(a) < 1e-12) {
    if (std::abs(b) > 1e-12) roots[0] = -c / b;
  } else if (const double disc = b * b - 4.0 * a * c; disc >= 0.0) {
    const double q = -0.5 * (b + std::copysign(std::sqrt(disc), b));
    roots[0] = q / a;
    if (q != 0.0) roots[1] = c / q;
  }
  for (const double t : roots) {
    if (t > 0.0 && t < 1.0) box.include(point_at(curve, t));
  }
}

}  // namespace

Box control_box(const CubicCurve& curve) {
  Box box;
  for (const Point p : {curve.p0, curve.p1, curve.p2, curve.p3}) box.include(p);
  return box;
}

Box box_of(const Path& path) {
  Box box;
  for (const Curve& curve : path.curves()) {
    box.include(start_of(curve));
    box.include(end_of(curve));
    if (const auto* c = std::get_if<CubicCurve>(&curve)) {
      const Vec d0 = c->p1 - c->p0, d1 = c->p2 - c->p1, d2 = c->p3 - c->p2;
      include_extremes(box, curve, {d0.x, d1.x, d2.x});
      include_extremes(box, curve, {d0.y, d1.y, d2.y});
    }
  }
  return box;
}

}  // namespace blockwright
