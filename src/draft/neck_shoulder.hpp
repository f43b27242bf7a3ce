#pragma once

#include "blockwright/geometry/curve.hpp"
#include "targets.hpp"

namespace blockwright {

/// The upper lines of one piece.
struct UpperLines {
  Point centre_neck;  ///< front neck point or nape
  Point side_neck;
  Angle slope;  ///< of the shoulder, its dart closed
  Point shoulder_point;
  CubicCurve neckline;  ///< side neck point to centre
};

/// The upper frame of both pieces, in each piece's own frame: necklines, bust point and shoulders.
/// On the front the shoulder dart is still closed; on the back it is open.
struct NeckAndShoulder {
  double neck_width = 0.0;
  UpperLines front, back;
  Point bust_point;
  Point blade_point;     ///< on the across-back line
  Point dart_inner_leg;  ///< back shoulder dart, leg end nearer the neck
  Point dart_outer_leg;
};

/// Solves neck width, side neck points, bust point and shoulder points from the neck base girth,
/// the lengths and the slants (or the slope). Where the front lengths ask for an impossible neck,
/// `targets` are changed to what is drawn.
NeckAndShoulder neck_and_shoulder(Targets& targets, Settlement& settlement);

/// The height over which across front and across back are measured: a share of the scye depth above
/// the armpit, kept well between armpit and shoulder point.
double across_level(const Targets& targets, double armpit, Point shoulder_point);

}  // namespace blockwright
