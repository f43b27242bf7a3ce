#pragma once

#include "blockwright/geometry/path.hpp"

namespace blockwright {

/// The armhole of a block: two strokes, below and above the across point. It leaves the underarm
/// square to the side seam and runs square into the shoulder.

/// The upper armhole bends at the across point at least this share of what it bends at the
/// shoulder; for that its heading there leans to the centre. Ours, by eye.
inline constexpr double kUpperArmholeEvenness = 0.35;
/// It leans at most this share of what the lower armhole has turned by then. Ours, by eye.
inline constexpr double kMostArmholeLean = 0.8;

/// The sleeve's notches lie this share of their own armhole from the underarm, so that a sleeve cap
/// finds them well below its middle. About a third: common practice; the numbers are ours.
inline constexpr double kFrontNotchShare = 0.35;
inline constexpr double kBackNotchShare = 0.40;

/// What an armhole passes through: points, and directions of travel from underarm to shoulder.
struct ArmholeLine {
  Point underarm;
  Vec along_underarm;  ///< about square to the side seam: the joined underarm may lean
  Point across;
  Vec up;  ///< square to the across line
  Point shoulder_point;
  Vec into_shoulder;  ///< square to the shoulder
};

/// A shoulder point lies this far outside the across point, in mm: with less the armhole's lower
/// part bends too sharply (seen: Baldt 1916 has the shoulder end half an inch nearer the arm than
/// the across-back line). The number is ours. Where a shoulder point comes in, the across point
/// comes in with it, so that it stays as far outside, or as far as it lay, where that is less.
inline constexpr double kLeastAcrossInside = 7.5;
/// How far, in mm towards the centre and square to `up`, the across point comes in with a shoulder
/// point that comes in; 0 where it may stay.
double across_in(const ArmholeLine& line, Point new_shoulder_point);

/// The armhole as it is drafted, from the underarm point through the across point into the shoulder
/// point: its curvature has no jump at the across point, where its heading is the one with which
/// lower and upper armhole bend most alike, within 6 degrees outwards and 10 inwards of `up`.
Path armhole(const ArmholeLine& line);

/// An armhole below and above the across point.
struct ArmholeStrokes {
  CubicCurve lower, upper;
};
/// The same armhole through other points, drawn anew as a whole: where it was as drafted through
/// `was`, it is as drafted through `is`. What a fitting has changed of it before, its heading at
/// the across point and the reach of its handles, stays changed by as much. Its own directions at
/// underarm and shoulder turn as those of the lines do.
ArmholeStrokes reshaped_armhole(const ArmholeStrokes& old, const ArmholeLine& was,
                                const ArmholeLine& is);

}  // namespace blockwright
