#include "blockwright/geometry/point.hpp"

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

}  // namespace blockwright
