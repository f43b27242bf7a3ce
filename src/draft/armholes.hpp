#pragma once

#include "blockwright/geometry/path.hpp"
#include "neck_shoulder.hpp"
#include "waist.hpp"

namespace blockwright {

/// Side seams, bust dart and armholes, each in its piece's frame; the front with its darts open.
struct Armholes {
  Waists waists;
  double drop = 0.0;          ///< underarm point below the armpit, along the side seam
  Angle bust_dart;            ///< the front shoulder dart
  double width = 0.0;         ///< between the across points, where the arm goes through
  double back_width = 0.0;    ///< the back's part of it
  Point across_front_closed;  ///< across-front point with the shoulder dart closed
  Point across_front;         ///< ... open
  Point across_back;
  Point front_underarm;
  Point back_underarm;
  Point front_shoulder_point;  ///< shoulder dart open
  Path front;                  ///< underarm point to shoulder point
  Path back;
};

/// Solves the share of the bust, the waist edges, the underarm drop, the armhole width and the bust
/// dart, within the bounds of rules.hpp; what gave way (docs/method.md) goes to `settlement`.
Armholes armholes(const Targets& targets, const NeckAndShoulder& upper, Settlement& settlement);

}  // namespace blockwright
