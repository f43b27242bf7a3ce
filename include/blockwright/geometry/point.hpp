#pragma once

#include "blockwright/base/angle.hpp"

#include <cmath>

namespace blockwright {

/// A displacement in the plane, in millimetres; x to the right, y up.
struct Vec {
  double x = 0.0;
  double y = 0.0;

  bool operator==(const Vec&) const = default;
  friend Vec operator+(Vec a, Vec b) { return {a.x + b.x, a.y + b.y}; }
  friend Vec operator-(Vec a, Vec b) { return {a.x - b.x, a.y - b.y}; }
  friend Vec operator*(double factor, Vec a) { return {factor * a.x, factor * a.y}; }
  Vec operator-() const { return {-x, -y}; }
};

/// A place on the paper, in millimetres. Point - Point is a Vec; Point + Point does not compile.
struct Point {
  double x = 0.0;
  double y = 0.0;

  bool operator==(const Point&) const = default;
  friend Point operator+(Point p, Vec v) { return {p.x + v.x, p.y + v.y}; }
  friend Point operator-(Point p, Vec v) { return {p.x - v.x, p.y - v.y}; }
  friend Vec operator-(Point a, Point b) { return {a.x - b.x, a.y - b.y}; }
};

inline double dot(Vec a, Vec b) { return a.x * b.x + a.y * b.y; }
/// Positive when b lies anticlockwise of a.
inline double cross(Vec a, Vec b) { return a.x * b.y - a.y * b.x; }
inline double norm(Vec v) { return std::sqrt(dot(v, v)); }
inline double distance(Point a, Point b) { return norm(b - a); }
/// v turned by a quarter anticlockwise.
inline Vec left_of(Vec v) { return {-v.y, v.x}; }
/// v turned by a quarter clockwise.
inline Vec right_of(Vec v) { return {v.y, -v.x}; }
/// v at length 1; the null vector stays null.
Vec unit(Vec v);
/// The unit vector at `angle` anticlockwise from the x axis.
Vec direction(Angle angle);
/// Direction of v from the x axis, in (-180, 180] degrees; 0 for the null vector.
Angle angle_of(Vec v);
/// The turn that carries a's direction into b's, anticlockwise positive, in (-180, 180] degrees; 0
/// if either is null.
Angle turn_between(Vec a, Vec b);
Vec rotated(Vec v, Angle turn);
Point rotated_about(Point p, Point centre, Angle turn);
inline Point midpoint(Point a, Point b) { return {0.5 * (a.x + b.x), 0.5 * (a.y + b.y)}; }
/// The point a fraction of the way from a (0) to b (1).
inline Point between(Point a, Point b, double fraction) { return a + fraction * (b - a); }

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
