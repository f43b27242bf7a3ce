#pragma once

#include "blockwright/geometry/path.hpp"

#include <vector>

namespace blockwright {

/// The two edges of a panel seam, both from its first end to its second, before and after the
/// corners at its apexes are rounded.
struct SeamLines {
  Path centre;  ///< of the panel that keeps the centre waist, on the left of the seam
  Path side;
  /// Where both pass over the apexes, in mm from their starts.
  std::vector<double> centre_apexes, side_apexes;
  double zone_from = 0.0;  ///< mm from the start: outside the zone both lines are the legs
  double zone_to = 0.0;    ///< mm from the end
  double deepest = 0.0;    ///< how far a corner was rounded off, mm
};

/// Requires: as many points in both, at least three, ends apart or together, apexes (all between)
/// shared.
SeamLines rounded_seam(const std::vector<Point>& centre, const std::vector<Point>& side);

}  // namespace blockwright
