#pragma once

#include "blockwright/geometry/curve.hpp"

namespace blockwright {

/// A curve of a block redrawn between new ends with new end directions. There and back gives the
/// old curve again but for rounding; a mere shift or turn shifts or turns. Here and in
/// reshaped_neckline(), reshaped_lower_armhole() and reshaped_upper_armhole().

/// Each handle goes with its end and keeps its length.
CubicCurve reshaped(const CubicCurve& old, Point from, Vec leaving, Point to, Vec arriving);

/// The cubic with both handles scaled so that it becomes `length` mm long; they become at most a
/// third longer and at most a quarter shorter, and the length is met as nearly as that allows.
CubicCurve with_length(const CubicCurve& curve, double length);

}  // namespace blockwright
