#pragma once

#include "words.hpp"

namespace blockwright {

/// Where a dart is to go: onto another dart of its apex, or to a free place of an edge.
struct Aim {
  const DartPosition* position = nullptr;
  std::size_t edge = 0;
  double along = 0.0;               ///< mm of the closed edge; of a dart to merge into, its mouth
  std::optional<std::string> onto;  ///< name of the dart that takes the angle up
};

/// Finds the place that is meant. Without a fraction or distance it is the usual place: the middle
/// of shoulder and neckline, the notch of the armhole, 6 cm under the underarm, 4 cm over the waist
/// (french), straight under the apex (waist), level with it (centre); or the dart that the edge
/// already has about the apex. Throws "dart.unknown", "dart.place".
Aim aim_of(const Opened& open, DartSpot from, const std::string& to);

/// True if a straight way meets another path further than 1e-6 mm from both of its own ends.
bool meets(const Path& way, const Path& other);
/// What bars the straight way from an apex to a point of the outline, in words ("dart waist", "the
/// outline"), or nothing. Darts of the same apex bar nothing but their mouths.
std::optional<std::string> barrier(const Opened& open, Point apex, Point to);
/// The place on the aim's edge, in whole hundredths of it, that can be reached from the apex and
/// lies nearest to the fraction `wanted` (both from the trade's end), off the corners and off the
/// mouths of darts; nothing if there is none.
std::optional<double> nearest_reachable(const Opened& open, Point apex, const Aim& aim,
                                        double wanted);

/// Throws "dart.blocked" if the way from the apex to the aim is barred.
void require_reachable(const Opened& open, DartSpot from, const Aim& aim);

}  // namespace blockwright
