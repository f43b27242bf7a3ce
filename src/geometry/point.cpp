#include "blockwright/geometry/point.hpp"

#include <cmath>

namespace blockwright {
namespace {

// std::atan2 tells -0 from 0 and answers -pi or pi for it; adding 0 makes them one.
Angle angle_at(double x, double y) { return Angle::radians(std::atan2(y + 0.0, x + 0.0)); }

}  // namespace

Vec unit(Vec v) {
  const double length = norm(v);
  return length > 0.0 ? Vec{v.x / length, v.y / length} : Vec{};
}

Vec direction(Angle angle) { return {std::cos(angle.radians()), std::sin(angle.radians())}; }

Angle angle_of(Vec v) { return angle_at(v.x, v.y); }

Angle turn_between(Vec a, Vec b) { return angle_at(dot(a, b), cross(a, b)); }

Vec rotated(Vec v, Angle turn) {
  const double c = std::cos(turn.radians());
  const double s = std::sin(turn.radians());
  return {c * v.x - s * v.y, s * v.x + c * v.y};
}

Point rotated_about(Point p, Point centre, Angle turn) {
  return centre + rotated(p - centre, turn);
}

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
