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

/// Largest distance of points of strokes from a path, in mm, found from 32 samples of each
/// stroke.
double largest_distance(const std::vector<Curve>& of, const Path& from);

}  // namespace blockwright
