#pragma once

#include "blockwright/geometry/curve.hpp"
#include "blockwright/geometry/path.hpp"
#include "support/random.hpp"

#include <cmath>

namespace blockwright {

inline Point random_point(Random& random, double size) {
  const double x = random.between(0.0, size);
  return {x, random.between(0.0, size)};
}

inline Vec random_heading(Random& random) {
  return direction(Angle::degrees(random.between(-180.0, 180.0)));
}

/// Any cubic in a square of `size` mm: loops, near-cusps and inflections among them.
inline CubicCurve random_cubic(Random& random, double size) {
  const Point p0 = random_point(random, size), p1 = random_point(random, size);
  const Point p2 = random_point(random, size), p3 = random_point(random, size);
  return {p0, p1, p2, p3};
}

/// A curve such as an armhole or a neckline has: both ends turn the same way, by 5 to 80 degrees.
inline CubicCurve random_fair_curve(Random& random) {
  const Point from = random_point(random, 400.0);
  const Vec chord = random.between(30.0, 300.0) * random_heading(random);
  const double side = random.whole(0, 1) == 0 ? -1.0 : 1.0;
  const Vec leaving = rotated(chord, Angle::degrees(-side * random.between(5.0, 80.0)));
  const Vec arriving = rotated(chord, Angle::degrees(side * random.between(5.0, 80.0)));
  return fair_curve(from, leaving, from + chord, arriving);
}

/// A path of straight strokes and fair curves with corners between them.
inline Path random_path(Random& random, int strokes) {
  Path path;
  Point from = random_point(random, 400.0);
  for (int i = 0; i < strokes; ++i) {
    const Vec chord = random.between(20.0, 200.0) * random_heading(random);
    const Vec leaving = rotated(chord, Angle::degrees(random.between(-80.0, 80.0)));
    const Vec arriving = rotated(chord, Angle::degrees(random.between(-80.0, 80.0)));
    const bool straight = random.whole(0, 2) == 0;
    const Curve curve = straight ? Curve(Segment{from, from + chord})
                                 : Curve(fair_curve(from, leaving, from + chord, arriving));
    path.add(curve);
    from = path.end();
  }
  return path;
}

/// The handle that brings a cubic nearest to a quarter of a circle of radius 1: 4/3 (sqrt 2 - 1).
inline constexpr double kQuarterCircleHandle = 0.5522847498307936;

/// A circle by so many equal cubics, anticlockwise from the right, whose middles lie on the circle.
inline Path round_path(Point centre, double radius, int arcs) {
  const Angle step = Angle::degrees(360.0 / arcs);
  const double handle = 4.0 / 3.0 * std::tan(step.radians() / 4.0) * radius;
  Path path;
  for (int i = 0; i < arcs; ++i) {
    const Vec from = direction(static_cast<double>(i) * step);
    const Vec to = direction(static_cast<double>(i + 1) * step);
    const Point start = i == 0 ? centre + radius * from : path.end();
    const Point end = i + 1 == arcs ? path.start() : centre + radius * to;
    path.add(CubicCurve{start, start + handle * left_of(from), end - handle * left_of(to), end});
  }
  return path;
}

}  // namespace blockwright
