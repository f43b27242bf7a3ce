#pragma once

#include "blockwright/pattern/pattern.hpp"
#include "torso/torso.hpp"

#include <array>
#include <map>
#include <string>
#include <vector>

namespace blockwright::torso {

/// Triangles over an area that is bounded by a closed, anticlockwise chain of points. The first
/// points are those of the chain, in order; the rest lie inside, about `spacing` mm apart.
struct FlatMesh {
  std::vector<Vec2> points;
  std::vector<std::array<int, 3>> triangles;  ///< anticlockwise
};
FlatMesh triangulated(const std::vector<Vec2>& chain, double spacing);

/// A piece of cloth as cut: which point of the sewn cloth each corner is.
struct ClothTriangle {
  std::array<int, 3> corners;
  std::array<Vec2, 3> flat;  ///< as cut, mm; y runs along the grain
};

/// A point of a piece within one of its triangles.
struct ClothPoint {
  int triangle = 0;
  std::array<double, 3> share{};
};

/// The half bodice sewn together: front and back joined at shoulder and side, the darts closed from
/// the edge to where their stitching ends. Points that are sewn together are one.
struct Cloth {
  std::vector<ClothTriangle> triangles;
  int points = 0;
  /// Of each point: its places as cut, each with its piece (0 front, 1 back).
  std::vector<std::vector<std::pair<int, Vec2>>> places;
  std::vector<bool> at_centre;                    ///< held on the centre plane
  std::map<std::string, std::vector<int>> edges;  ///< "front.neckline" ...: its points in order
  std::map<std::string, double> cut_lengths;      ///< of the same, darts closed, mm
  ClothPoint bust_point;                          ///< the apex of the front's darts
};

/// Requires: a pattern with half pieces "front" and "back".
Cloth sewn_cloth(const Pattern& pattern, double spacing);

}  // namespace blockwright::torso
