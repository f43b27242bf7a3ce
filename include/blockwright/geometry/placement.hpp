#pragma once

#include "blockwright/base/angle.hpp"
#include "blockwright/geometry/point.hpp"

namespace blockwright {

/// A rigid placement of paper on a table: optional mirror in the y axis, then a turn about the
/// origin, then a shift. Lengths and angles are kept (angles change sign when mirrored).
class Placement {
 public:
  Placement() = default;
  static Placement shift(Vec by);
  static Placement turn(Angle by, Point about = {});
  /// Mirrors left and right in the vertical line at `x`.
  static Placement mirror(double x = 0.0);
  /// Mirrors in the line through a point along a direction. Requires: the direction has length 1.
  static Placement mirror_in(Point on_line, Vec along);

  [[nodiscard]] Point operator()(Point p) const;
  [[nodiscard]] Vec operator()(Vec v) const;
  [[nodiscard]] bool mirrors() const { return cross(x_, y_) < 0.0; }
  /// The placement that does `this` first and `next` after it.
  [[nodiscard]] Placement then(const Placement& next) const;

 private:
  Vec x_{1.0, 0.0}, y_{0.0, 1.0};  // what becomes of the axes
  Vec shift_;
};

}  // namespace blockwright
