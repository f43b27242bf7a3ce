#pragma once

#include "blockwright/block/waist_edge.hpp"
#include "targets.hpp"

namespace blockwright {

/// How the difference between bust line and waist is shared out, in mm on the half body.
struct Suppression {
  double front_bust = 0.0;  ///< the front's part of the bust line
  double back_bust = 0.0;
  double side_run = 0.0;     ///< each side edge, bust line to waist; negative flares out
  double front_waist = 0.0;  ///< the front's part of the waist, sewn
  double back_waist = 0.0;
};

/// Both waist edges, with the bust line's height over either side waist point.
struct Waists {
  Suppression suppression;
  WaistEdge front;
  WaistEdge back;
  double bust_line = 0.0;
};

/// Shares out the bust between front and back.
double front_share_of_bust(const Targets& targets);

/// Shares out the suppression for a given front part of the bust and draws both waist edges: on the
/// front one dart under the bust point, on the back one or two under the blade, their angles such
/// that the sewn waist is right, and the same side slant on both. A waist that is no smaller than
/// the bust has no darts; its side seams flare until the waist is right.
Waists waists(const Targets& targets, double front_bust, Point bust_point);

}  // namespace blockwright
