#include "blockwright/geometry/placement.hpp"

#include <cmath>

namespace blockwright {

Placement Placement::shift(Vec by) {
  Placement p;
  p.dx_ = by.x;
  p.dy_ = by.y;
  return p;
}

Placement Placement::turn(Angle by, Point about) {
  Placement p;
  const double c = std::cos(by.radians());
  const double s = std::sin(by.radians());
  p.xx_ = c;
  p.xy_ = -s;
  p.yx_ = s;
  p.yy_ = c;
  p.dx_ = about.x - (c * about.x - s * about.y);
  p.dy_ = about.y - (s * about.x + c * about.y);
  return p;
}

Placement Placement::mirror(double x) {
  Placement p;
  p.xx_ = -1.0;
  p.dx_ = 2.0 * x;
  return p;
}

Placement Placement::mirror_in(Point on_line, Vec along) {
  Placement p;
  p.xx_ = along.x * along.x - along.y * along.y;
  p.yy_ = -p.xx_;
  p.xy_ = p.yx_ = 2.0 * along.x * along.y;
  const Vec moved = on_line - p(on_line);
  p.dx_ = moved.x;
  p.dy_ = moved.y;
  return p;
}

Point Placement::operator()(Point p) const {
  return {xx_ * p.x + xy_ * p.y + dx_, yx_ * p.x + yy_ * p.y + dy_};
}

Vec Placement::operator()(Vec v) const { return {xx_ * v.x + xy_ * v.y, yx_ * v.x + yy_ * v.y}; }

Placement Placement::then(const Placement& next) const {
  Placement p;
  p.xx_ = next.xx_ * xx_ + next.xy_ * yx_;
  p.xy_ = next.xx_ * xy_ + next.xy_ * yy_;
  p.yx_ = next.yx_ * xx_ + next.yy_ * yx_;
  p.yy_ = next.yx_ * xy_ + next.yy_ * yy_;
  const Point d = next(Point{dx_, dy_});
  p.dx_ = d.x;
  p.dy_ = d.y;
  return p;
}

}  // namespace blockwright
