#pragma once

#include "blockwright/base/angle.hpp"
#include "blockwright/geometry/curve.hpp"

namespace blockwright {

/// The necklines of a block: the rise of the back neck, the curve, and where the front gives up its
/// right angle at the shoulder.

/// Rise of the side neck point above the nape as a fraction of the neck width: why the back neck is
/// as deep as it is. Baldt 1916 (seen) has 3/4 in at a width of 65 mm; that it grows with the width
/// is ours.
inline constexpr double kBackNeckRise = 0.3;
/// Length of a handle as a fraction of the way to where the end tangents meet: a quarter circle has
/// 0.5523; slightly fuller looks fair on the deeper than wide front. Ours, by eye.
inline constexpr double kNecklineFullness = 0.60;
/// A front neckline turns one way only while the corner of its end tangents lies at least this far
/// from the centre front, of the width. Ours.
inline constexpr double kNeckCornerRoom = 0.30;
/// ... and this far where a fitting changes only its depth. Ours.
inline constexpr double kLeastNeckRoom = 0.05;

/// Of half a neckline, in mm.
struct NeckSize {
  double width, depth;
};
/// How far off upright a front neckline may leave the side neck point, so that its corner has room.
Angle steepest_neckline(NeckSize size);
/// The same for a neckline that is redrawn, as a direction: `wished`, or what leaves the corner the
/// room `least` off the far end.
Vec neckline_leaving(Point from, Vec wished, Point to, Vec arriving, double least);
/// How much room the corner of a neckline's end tangents has, of its width; 1 if they do not meet.
double neckline_room(Point from, Vec leaving, Point to, Vec arriving);

/// A neckline as it is drafted.
CubicCurve neckline(Point side_neck, Vec leaving, Point centre, Vec arriving);
/// The same between new ends (see reshape.hpp): its handles keep their share of the way to the
/// corner where the end tangents meet, so that it goes on bending one way.
CubicCurve reshaped_neckline(const CubicCurve& old, Point from, Vec leaving, Point to,
                             Vec arriving);

}  // namespace blockwright
