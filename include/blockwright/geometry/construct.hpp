#pragma once

#include "blockwright/geometry/curve.hpp"

#include <optional>

namespace blockwright {

/// Where two endless lines meet, each given by a point and a direction; empty if they are parallel
/// to within 1e-12 of their lengths' product.
std::optional<Point> lines_meet(Point a, Vec along_a, Point b, Vec along_b);

/// A number for each end of a curve.
struct Ends {
  double from = 0.0, to = 0.0;
};

/// A cubic that leaves `from` along `leaving` and arrives at `to` along `arriving`, turning one way
/// only: both handles reach `fullness` of the way to the corner where the end tangents meet (0.5523
/// of a quarter circle's corner gives the circle to 0.03 %).
/// Where the corner does not lie ahead of `from` and before `to` the result is fair_curve() of the
/// same ends. Requires: 0 < fullness < 1.
CubicCurve corner_curve(Point from, Vec leaving, Point to, Vec arriving, double fullness);

/// As above with a fullness for each handle.
CubicCurve corner_curve(Point from, Vec leaving, Point to, Vec arriving, Ends fullness);

/// A fair cubic between two points with given directions, defined for all of them and changing
/// continuously with them. It bends one way where both ends turn the same way from the chord, by up
/// to 150 degrees, and neither by less than half of the other; an end that turns less than that may
/// get an inflection. `fullness` scales both handles; 1 is the roundest fair curve, less is
/// flatter. Handles reach at most four chords. Requires: leaving and arriving are not null. If from
/// and to are one point, so is the curve. Source: J. D. Hobby, "Smooth, easy to compute
/// interpolating splines", Discrete and Computational Geometry 1 (1986), 123-140, the velocity
/// function (coefficients from memory).
CubicCurve fair_curve(Point from, Vec leaving, Point to, Vec arriving, double fullness = 1.0);

}  // namespace blockwright
