#pragma once

#include "blockwright/block/dart_position.hpp"
#include "blockwright/geometry/path.hpp"

namespace blockwright {

/// The shoulder of a block, with one dart: straight when the dart is closed.

/// The shoulder dart opens half way along. Common practice, no source.
inline constexpr double kShoulderDartPlace = 0.5;
/// Intake of the back shoulder dart. Half an inch: common practice, no source.
inline constexpr double kBackShoulderDart = 13.0;
/// Blade point: half of the half across back from the centre back, on the across-back line.
/// Common practice, no source.
inline constexpr double kBladePlace = 0.5;

/// A shoulder dart, named and pressed as its position is. Legs in order of travel: outer, then
/// inner. `along` is the direction of the shoulder at the inner leg, away from the neck.
Dart shoulder_dart(const DartPosition& position, Point apex, Point inner_leg, Point outer_leg,
                   Vec along, double hold_back);

/// A shoulder with one dart, travelled from the shoulder point to the side neck point.
Path shoulder_edge(Point shoulder_point, const Dart& dart, Point side_neck);

}  // namespace blockwright
