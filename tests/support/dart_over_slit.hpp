#pragma once

#include "blockwright/block/kinds.hpp"

namespace blockwright_tests {

using namespace blockwright;

/// A piece like a C, with a dart in its upper arm that opens into the slit. Trued, the dart's peak
/// hangs 3.7 mm below the edge.
inline Piece dart_over_slit(double slit) {
  const double low = 50.0 - slit;
  Piece piece;
  piece.name = "front";
  piece.kind = &kBodiceFront;
  piece.edges = {
      {"lower", EdgeRole::Hem,
       Path::through({{0, low}, {0, 0}, {200, 0}, {200, 200}, {0, 200}, {0, 50}})},
      {"slit", EdgeRole::Hem,
       Path::through({{0, 50}, {60, 50}, {75, 50}, {90, 50}, {150, 50}, {150, low}, {0, low}})}};
  piece.darts = {{"waist", "slit", {75, 140}, {75, 140}, {Point{60, 50}, Point{90, 50}}, {75, 50}}};
  piece.grainline = {{170, 20}, {170, 180}};
  return piece;
}

}  // namespace blockwright_tests
