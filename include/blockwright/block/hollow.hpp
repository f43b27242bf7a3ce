#pragma once

#include "blockwright/geometry/path.hpp"

#include <vector>

namespace blockwright {

/// How hollow a neckline or an armhole is cut.
struct Hollow {
  double deep = 0.0;   ///< mm: its greatest distance from the straight line between its ends
  double chord = 0.0;  ///< mm of that line
  [[nodiscard]] double share() const { return deep / chord; }
};

/// Of stretches that follow one another, drawn as the outline of a piece runs: into the piece is
/// positive. To 0.1 % of the depth. Requires: none of them empty, ends apart.
Hollow hollow_of(const std::vector<Path>& stretches);

}  // namespace blockwright
