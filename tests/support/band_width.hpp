#pragma once

#include "blockwright/draft/bands.hpp"

#include <cmath>

namespace blockwright {

/// Root mean square of how far all places of all bands could lie to either side, mm.
inline double width_of(const BlockBands& bands) {
  double sum = 0.0, count = 0.0;
  for (const EdgeBand& edge : bands.edges) {
    for (const BandPlace& place : edge.places) {
      sum += place.aside() * place.aside();
      count += 1.0;
    }
  }
  return std::sqrt(sum / count);
}

}  // namespace blockwright
