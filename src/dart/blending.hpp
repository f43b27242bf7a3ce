#pragma once

#include "blockwright/dart/opened.hpp"

#include <vector>

namespace blockwright {

/// The stretches before and after a dart, and how far their points moved at most, in mm.
struct Blended {
  Path before, after;
  double moved = 0.0;
};

/// Both stretches at a dart, each turned there by half of the kink between them. Their other ends
/// stay, and so does everything further than kBlendingReach from the dart; the change fades out
/// smoothly. For small turns: about 20 degrees. A path whose end bows too far to be turned so is
/// left as it is.
Blended blended(const OpenEdge& edge, std::size_t dart, Angle kink);

/// Lays blended stretches in. They are a trifle longer or shorter: a mark at an end stays on them.
void lay_in(Opened& open, DartSpot spot, const Blended& stretches);

/// The two edges of a panel seam, both from its first end to its second, their corners at the
/// apexes rounded.
struct SeamLines {
  Path centre;  ///< of the panel that keeps the centre waist
  Path side;
  /// Where both pass the apexes, in mm from their starts.
  std::vector<double> centre_apexes, side_apexes;
  double zone_from = 0.0;  ///< mm from the start: outside the zone both lines are the darts' legs
  double zone_to = 0.0;    ///< mm from the end
  double bulge = 0.0;      ///< largest distance of a line from the legs, mm
  double let_down = 0.0;   ///< of the side panel's waist end, mm
};

/// Both lines pass through the apexes exactly, in the direction half way between the legs, and flow
/// into the legs over 50 mm (less on short legs).
/// Requires: as many points in both, at least three; the apexes (all between the ends) are shared.
SeamLines rounded_seam(const std::vector<Point>& centre, const std::vector<Point>& side);

}  // namespace blockwright
