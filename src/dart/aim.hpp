#pragma once

#include "words.hpp"

#include <optional>
#include <string>

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

/// Throws "dart.blocked" if the way from the apex to the aim is barred.
void require_reachable(const Opened& open, DartSpot from, const Aim& aim);

}  // namespace blockwright
