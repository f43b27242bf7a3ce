#pragma once

#include "blockwright/geometry/point.hpp"

#include <string>
#include <vector>

namespace blockwright {

/// A place on a line of a piece, and how far it could lie to either side, in mm.
struct BandPlace {
  Point at;
  Vec across;  ///< unit, square to the line
  double off = 0.0;
};

/// How far a stretch of an edge between its darts could be off.
struct EdgeBand {
  std::string piece, edge;
  std::vector<BandPlace> places;  ///< in the order of travel, from the stretch's start to its end
};

}  // namespace blockwright
