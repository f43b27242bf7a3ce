#pragma once

#include "blockwright/base/angle.hpp"
#include "blockwright/geometry/path.hpp"

namespace blockwright {

/// The necklines of a block: the rise of the back neck, the curve, and where the front gives up its
/// right angle at the shoulder.

/// Rise of the side neck point above the nape as a fraction of the neck width: why the back neck is
/// as deep as it is. Ours, the mean of simulated torsos (0.17 to 0.74): with less the back is too
/// short over the shoulder, which pulls the bodice up and back; with more the back neckline takes
/// too much of the neck.
inline constexpr double kBackNeckRise = 0.40;
/// A front neckline keeps the corner of its end tangents at least this far from the centre front,
/// of the width, and gives up the right angle at the shoulder for it. Ours: with less the neckline
/// turns within less than 10 mm at the front neck point on one woman in ten of the 1988 survey.
inline constexpr double kNeckCornerRoom = 0.55;
/// ... this far where a fitting changes only the neck's depth, so that it keeps its direction at
/// the side neck point. Ours.
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

/// How much of its whole turn a neckline makes within 15 mm of its end: over 0.62 on no drafted
/// front of 300 people. One that runs nearly straight and turns at its end has a hook there.
double turn_at_end(const Path& neckline);

/// What a drafted neckline runs between, with its direction at the side neck point.
struct NecklineEnds {
  Point side_neck;
  Vec leaving;
  Point centre;
};
struct Necklines {
  CubicCurve front, back;
};
/// Both necklines as they are drafted, square to their centre lines; over the closed shoulder they
/// run on, the back bending at most twice as much as the front.
Necklines necklines(const NecklineEnds& front, const NecklineEnds& back);
/// The same between new ends (see reshape.hpp): its handles keep their share of the way to the
/// corner where the end tangents meet, so that it goes on bending one way.
CubicCurve reshaped_neckline(const CubicCurve& old, Point from, Vec leaving, Point to,
                             Vec arriving);
/// The same for a front neckline: the handle at the front neck point reaches by as much more or
/// less as the rule of the draft has it for a deeper or a flatter neck.
CubicCurve reshaped_front_neckline(const CubicCurve& old, Point from, Vec leaving, Point to,
                                   Vec arriving);

}  // namespace blockwright
