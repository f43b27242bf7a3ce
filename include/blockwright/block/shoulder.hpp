#pragma once

#include "blockwright/pattern/piece.hpp"

namespace blockwright {

/// The shoulder of a block, with one dart: straight when the dart is closed.

/// The shoulder dart opens half way along. Common practice, no source.
inline constexpr double kShoulderDartPlace = 0.5;
/// Intake of the back shoulder dart. Ours, from simulated torsos; 10 to 13 mm is common practice,
/// no source.
inline constexpr double kBackShoulderDart = 8.0;
/// Blade point: half of the half across back from the centre back, on the across-back line.
/// Common practice, no source.
inline constexpr double kBladePlace = 0.5;

/// A shoulder with one dart, travelled from the shoulder point to the side neck point.
inline Path shoulder_edge(Point shoulder_point, const Dart& dart, Point side_neck) {
  return Path::through({shoulder_point, dart.legs[0], dart.peak, dart.legs[1], side_neck});
}

}  // namespace blockwright
