#pragma once

#include "blockwright/geometry/curve.hpp"

namespace blockwright {

/// A curve of a block redrawn between new ends with new end directions. There and back gives the
/// old curve again but for rounding; a mere shift or turn shifts or turns. Here and in
/// reshaped_neckline() and reshaped_armhole().

/// Each handle goes with its end and keeps its length.
CubicCurve reshaped(const CubicCurve& old, Point from, Vec leaving, Point to, Vec arriving);

/// The same, and the curve goes on bending one way: as the way to the corner of the end tangents
/// grows shorter, handles keep their share of it (`follows` 0) or rather their length (2), but
/// never reach beyond. Requires: both directions have length 1.
CubicCurve bent_one_way(const CubicCurve& old, Point from, Vec out, Point to, Vec in,
                        double follows);

/// A curve as it was drafted, and as it is drafted through other points.
struct DraftedCurves {
  CubicCurve was, is;
};

/// The curve drafted again, with what it was changed by since: each handle turns and grows as the
/// drafted one does, and keeps the odds of its share of the way to the corner of the end tangents
/// against the drafted one's, so that a curve that bends one way goes on to.
CubicCurve redrawn_as(const CubicCurve& old, const DraftedCurves& drafted);

/// The cubic with both handles scaled so that it becomes `length` mm long; they become at most a
/// third longer and at most a quarter shorter, and the length is met as nearly as that allows.
CubicCurve with_length(const CubicCurve& curve, double length);

/// The curve with its handles nearer to those of the roundest between these ends, as far as it
/// takes to turn nowhere within less than `radius` mm, or as round as that goes. Ours.
CubicCurve rounder(const CubicCurve& curve, double radius);

}  // namespace blockwright
