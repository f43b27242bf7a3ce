#pragma once

#include "blockwright/pattern/piece.hpp"
#include "waist.hpp"

#include <string>

namespace blockwright {

/// A waist edge as one path, across its darts' caps, and its darts as pattern darts.
struct WaistWithDarts {
  Path path;
  std::vector<Dart> darts;
};

/// `name` is the darts' name; a second dart gets `name` + "_outer". Waist darts are pressed towards
/// the centre.
WaistWithDarts waist_with_darts(const WaistEdge& edge, const std::string& name, double hold_back);

/// A shoulder with one dart, travelled from the shoulder point to the side neck point.
Path shoulder_edge(Point shoulder_point, const Dart& dart, Point side_neck);

/// A shoulder dart, its stitching `hold_back` mm short of the apex, pressed towards the centre.
/// Legs in order of travel: outer, then inner. `along` is the direction of the shoulder at the
/// inner leg, away from the neck.
Dart shoulder_dart(const std::string& name, Point apex, Point inner_leg, Point outer_leg, Vec along,
                   double hold_back);

}  // namespace blockwright
