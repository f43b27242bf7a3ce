#pragma once

#include "blockwright/geometry/curve.hpp"

namespace blockwright {

/// Arc length of a cubic between the parameters `from` and `to`, in mm; negative if to < from.
///
/// Accuracy: `accuracy` mm, by a proven bound, but never better than rounding (1e-15 of the control
/// polygon's length). Cost: one Gauss-Legendre rule of 8 to 32 points, chosen by the bound before
/// any point is evaluated; only curves that nearly stand still somewhere are halved.
///
/// The speed |B'| is the root of w(t) times its mirror image, w = x' + i y', a quadratic. Its only
/// singularities are the two zeros of w and their mirror images, so the largest Bernstein ellipse
/// in which it is analytic is known exactly, and with it the error of a rule. Source: L. N.
/// Trefethen, Approximation Theory and Approximation Practice (2013), theorem 19.3.
double arc_length(const CubicCurve& curve, double from, double to, double accuracy);

/// The parameter at arc length `s` of a curve whose whole length is known; s is clamped to the
/// curve. Within `accuracy` mm along the curve.
double parameter_at_length(const Curve& curve, double s, double whole, double accuracy);

}  // namespace blockwright
