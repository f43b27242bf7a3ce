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
/// ... and this where a fitting is to keep the hollow below. Ours: with less, the upper armhole
/// bends back on more than one block of a hundred.
inline constexpr double kHollowLean = 0.4;

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

/// How far the heading at the across point must lean to the centre, in radians off `up`; negative
/// where it may lean outwards, at most 6 degrees. It runs about straight up the piece, so that the
/// across line is about the narrowest; where the shoulder point lies too far in for that it leans,
/// so that the upper armhole still bends one way, as far as the lower armhole allows.
/// `along_underarm` is not looked at.
double lean_at_across(const ArmholeLine& line, double most = kMostArmholeLean);

/// The armhole as it is drafted, from the underarm point through the across point into the shoulder
/// point: its curvature has no jump at the across point, where its heading is the one with which
/// lower and upper armhole bend most alike, within 6 degrees outwards and 10 inwards of `up`.
Path armhole(const ArmholeLine& line);

/// An armhole below the across point between new ends (see reshape.hpp): its handles rather keep
/// their length, but never reach beyond the corner where the end tangents meet.
CubicCurve reshaped_lower_armhole(const CubicCurve& old, Point from, Vec leaving, Point to,
                                  Vec arriving);
/// The same above the across point: a fair curve whose upper handle stops short of where the end
/// tangents meet, so that it bends one way wherever it can, as it is drafted.
CubicCurve reshaped_upper_armhole(const CubicCurve& old, Point from, Vec leaving, Point to,
                                  Vec arriving);

}  // namespace blockwright
