#pragma once

#include "blockwright/geometry/curve.hpp"
#include "targets.hpp"

namespace blockwright {

/// The upper frame of both pieces, in each piece's own frame: necklines, bust point and shoulders.
/// On the front the shoulder dart is still closed; on the back it is open.
struct NeckAndShoulder {
  double neck_width = 0.0;
  // front
  Point front_neck_point;
  Point front_side_neck;
  Point bust_point;
  Angle front_slope;
  Point front_shoulder_point;  ///< shoulder dart closed
  CubicCurve front_neckline;   ///< side neck point to front neck point
  // back
  Point nape;
  Point back_side_neck;
  Angle back_slope;  ///< of the closed shoulder
  Point blade_point;
  Point dart_inner_leg;  ///< back shoulder dart, leg end nearer the neck
  Point dart_outer_leg;
  Point back_shoulder_point;  ///< dart open
  CubicCurve back_neckline;   ///< side neck point to nape
  double across_back_level = 0.0;
};

/// Solves neck width, side neck points, bust point and shoulder points from the neck base girth,
/// the lengths and the slants (or the slope). Where the front lengths ask for an impossible neck,
/// `targets` are changed to what is drawn.
NeckAndShoulder neck_and_shoulder(Targets& targets, Settlement& settlement);

}  // namespace blockwright
