#pragma once

#include "blockwright/geometry/curve.hpp"

namespace blockwright {

/// Arc length of a cubic between two parameters, in mm; negative if `to` is the smaller.
///
/// Accuracy: `accuracy` mm, by a proven bound, but never better than rounding (1e-15 of the control
/// polygon's length). Cost: one Gauss-Legendre rule of 8 to 32 points, chosen by the bound before
/// any point is evaluated; only curves that nearly stand still somewhere are halved.
///
/// The speed |B'| is the root of w(t) times its mirror image, w = x' + i y', a quadratic. Its only
/// singularities are the two zeros of w and their mirror images, so the largest Bernstein ellipse
/// in which it is analytic is known exactly, and with it the error of a rule. Source: L. N.
/// Trefethen, Approximation Theory and Approximation Practice (2013), theorem 19.3.
double arc_length(const CubicCurve& curve, Stretch stretch, double accuracy);

/// A curve whose length is known.
struct Measured {
  const Curve& curve;
  double length;
};
/// The parameter at arc length `s`, which is clamped to the curve. Within kLengthAccuracy along it.
double parameter_at_length(const Measured& measured, double s);

}  // namespace blockwright
