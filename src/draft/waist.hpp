#pragma once

#include "blockwright/geometry/path.hpp"
#include "targets.hpp"

#include <vector>

namespace blockwright {

/// How the difference between bust line and waist is shared out, in mm on the half body.
struct Suppression {
  double front_bust = 0.0;  ///< the front's part of the bust line
  double back_bust = 0.0;
  double side_run = 0.0;     ///< each side edge, bust line to waist; negative flares out
  double front_waist = 0.0;  ///< the front's part of the waist, sewn
  double back_waist = 0.0;
};

/// A dart on the waist edge, standing upright: legs either side of the vertical under its apex.
struct WaistDart {
  Point apex;
  Point inner_leg;
  Point outer_leg;
  Angle angle;
};

/// A waist edge from the centre waist to the side waist point, with its darts.
struct WaistEdge {
  std::vector<WaistDart> darts;  ///< from centre to side
  std::vector<Path> stretches;   ///< what is sewn: one more than darts
  Point side_waist;
};

/// Shares out the bust between front and back.
double front_share_of_bust(const Targets& targets);

/// Shares out the suppression for a given front part of the bust.
Suppression suppression(const Targets& targets, double front_bust);

/// The front waist: one dart under the bust point, its angle such that the sewn waist is right. A
/// waist that needs no dart is closed by the side waist point instead.
WaistEdge front_waist(const Suppression& suppression, Point bust_point, double under_bust);

/// The back waist: none, one or two darts under the blade, with the same side slant as the front.
/// `bust_line` is the bust line's height on the side seam above the side waist point.
WaistEdge back_waist(const Suppression& suppression, double bust_line);

}  // namespace blockwright
