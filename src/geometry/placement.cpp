#include "blockwright/geometry/placement.hpp"

#include <cmath>

namespace blockwright {

Placement Placement::shift(Vec by) {
  Placement p;
  p.shift_ = by;
  return p;
}

Placement Placement::turn(Angle by, Point about) {
  Placement p;
  const double c = std::cos(by.radians());
  const double s = std::sin(by.radians());
  p.x_ = {c, s};
  p.y_ = {-s, c};
  p.shift_ = {about.x - (c * about.x - s * about.y), about.y - (s * about.x + c * about.y)};
  return p;
}

Placement Placement::mirror(double x) {
  Placement p;
  p.x_ = {-1.0, 0.0};
  p.shift_ = {2.0 * x, 0.0};
  return p;
}

Placement Placement::mirror_in(Point on_line, Vec along) {
  Placement p;
  p.x_ = {along.x * along.x - along.y * along.y, 2.0 * along.x * along.y};
  p.y_ = {p.x_.y, -p.x_.x};
  p.shift_ = on_line - p(on_line);
  return p;
}

Point Placement::operator()(Point p) const {
  return {x_.x * p.x + y_.x * p.y + shift_.x, x_.y * p.x + y_.y * p.y + shift_.y};
}

Vec Placement::operator()(Vec v) const {
  return {x_.x * v.x + y_.x * v.y, x_.y * v.x + y_.y * v.y};
}

Placement Placement::then(const Placement& next) const {
  Placement p;
  p.x_ = next(x_);
  p.y_ = next(y_);
  p.shift_ = next(Point{} + shift_) - Point{};
  return p;
}

}  // namespace blockwright
