#pragma once

#include "blockwright/geometry/point.hpp"

#include <string>
#include <vector>

namespace blockwright {

/// A place on a line of a piece, and how far the line could lie to either side.
struct BandPlace {
  Point at;
  Vec across;  ///< unit, square to the line
  Vec off;     ///< where the band's edge lies from there; the other edge opposite. In mm

  /// How far the line could lie to either side there, in mm.
  [[nodiscard]] double aside() const { return dot(off, across); }
};

/// How far a stretch of an edge between its darts could be off.
struct EdgeBand {
  std::string piece, edge;
  std::vector<BandPlace> places;  ///< in the order of travel, from the stretch's start to its end
};

}  // namespace blockwright
