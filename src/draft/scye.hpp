#pragma once

#include "blockwright/geometry/path.hpp"
#include "neck_shoulder.hpp"
#include "targets.hpp"
#include "waist.hpp"

namespace blockwright {

/// Side seams, bust dart and armholes, each in its piece's frame; the front with its darts open.
struct Scye {
  Waists waists;
  double drop = 0.0;          ///< underarm point below the armpit, along the side seam
  Angle bust_dart;            ///< the front shoulder dart
  Point across_front_closed;  ///< across-front point with the shoulder dart closed
  Point across_front;         ///< ... open
  Point across_back;
  Point front_underarm;
  Point back_underarm;
  Point front_shoulder_point;  ///< shoulder dart open
  Path front_armhole;          ///< underarm point to shoulder point
  Path back_armhole;
};

/// Solves the share of the bust, the waist edges, the underarm drop, the armhole width and the bust
/// dart, within the bounds of rules.hpp; what gave way (docs/method.md) goes to `settlement`.
Scye scye(const Targets& targets, const NeckAndShoulder& upper, Settlement& settlement);

}  // namespace blockwright
