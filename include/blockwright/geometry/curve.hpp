#pragma once

#include "blockwright/geometry/point.hpp"

#include <optional>
#include <utility>
#include <variant>

namespace blockwright {

/// A straight stroke from a to b.
struct Segment {
  Point a;
  Point b;
  bool operator==(const Segment&) const = default;
};

/// A cubic Bezier stroke from p0 to p3, leaving towards p1 and arriving from p2.
struct CubicCurve {
  Point p0, p1, p2, p3;
  bool operator==(const CubicCurve&) const = default;
};

/// One stroke of a path. The parameter t runs from 0 (start) to 1 (end) and is not length.
using Curve = std::variant<Segment, CubicCurve>;

/// A stretch of a line, between two lengths along it in mm, or between two parameters.
struct Stretch {
  double from = 0.0;
  double to = 1.0;
};

/// How closely arc lengths are computed unless a caller says otherwise, in millimetres: ten times
/// below the 1e-9 mm that dart moves promise.
inline constexpr double kLengthAccuracy = 1e-10;

/// The same stroke as a cubic, with the same parameters.
CubicCurve as_cubic(const Curve& curve);
Point start_of(const Curve& curve);
Point end_of(const Curve& curve);
Point point_at(const Curve& curve, double t);
/// d(point)/dt, in mm per unit of t; null only at a cusp, at an end whose handle is null, or where
/// the curve is a single point.
Vec derivative_at(const Curve& curve, double t);
/// d2(point)/dt2 of a cubic, in mm per unit of t squared.
Vec second_derivative(const CubicCurve& curve, double t);
/// Unit tangent; at an end whose handle is null it is the limit direction. A single point has none:
/// the null vector.
Vec tangent_at(const Curve& curve, double t);
/// Signed curvature in 1/mm, positive where the path turns anticlockwise; 0 where undefined.
double curvature_at(const Curve& curve, double t);
/// Arc length in mm, within `accuracy` by a proven bound, but never better than rounding (1e-15 of
/// the control polygon). A cubic without a near-cusp costs one quadrature of 8 to 32 points.
double length(const Curve& curve, double accuracy = kLengthAccuracy);
/// The parameter at arc length s from the start; s is clamped to the curve. Within kLengthAccuracy.
double parameter_at_length(const Curve& curve, double s);
/// The parameter of the point nearest to `to`, the first of several equally near; exact to about
/// 1e-9 mm for points not near a centre of curvature. Searched from 32 samples: a stroke that
/// wriggles within a thirtieth of its parameter may hide a nearer point.
double nearest_parameter(const Curve& curve, Point to);
/// The parts before and after t; they join exactly.
std::pair<Curve, Curve> split_at(const Curve& curve, double t);
Curve reversed(const Curve& curve);
Curve placed(const Curve& curve, const Placement& placement);

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
