#pragma once

#include "blockwright/pattern/pattern.hpp"

#include <string>
#include <vector>

namespace blockwright {

/// The armhole of a drafted block as a maker judges it, measured on its pieces.
struct ArmholeShape {
  /// Greatest distance of the back armhole from the straight line between underarm point and
  /// shoulder point, over that line's length.
  double back_hollow = 0.0;
  double back_share = 0.0;     ///< the back's part of the width between the across points
  double least_radius = 0.0;   ///< mm, of front and back
  double sewn_underarm = 0.0;  ///< degrees between both armholes where the side seam joins them
};

ArmholeShape armhole_shape(const Pattern& block);

/// What of it no maker wants: "back hollow", "back share", "radius", "underarm". Empty: none.
std::vector<std::string> broken_laws(const ArmholeShape& shape);

}  // namespace blockwright
