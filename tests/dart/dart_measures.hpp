#pragma once

#include "blockwright/geometry/curve.hpp"
#include "blockwright/geometry/intersections.hpp"
#include "blockwright/geometry/path.hpp"
#include "blockwright/pattern/pattern.hpp"

#include <algorithm>
#include <cmath>
#include <utility>
#include <vector>

namespace blockwright_tests {

using namespace blockwright;

/// Sum of the angles about each apex of a piece, smallest first; apexes within 1e-6 mm are one. An
/// apex may be carried along when another dart moves, so they have no lasting place.
inline std::vector<double> angles_by_apex(const Piece& piece) {
  std::vector<std::pair<Point, double>> sums;
  for (const Dart& dart : piece.darts) {
    const auto same = std::find_if(sums.begin(), sums.end(), [&](const auto& sum) {
      return distance(sum.first, dart.apex) < 1e-6;
    });
    if (same == sums.end()) {
      sums.emplace_back(dart.apex, dart.angle().radians());
    } else {
      same->second += dart.angle().radians();
    }
  }
  std::vector<double> angles;
  for (const auto& [apex, sum] : sums) angles.push_back(sum);
  std::sort(angles.begin(), angles.end());
  return angles;
}

inline double total_angle(const Piece& piece) {
  double sum = 0.0;
  for (const Dart& dart : piece.darts) sum += dart.angle().radians();
  return sum;
}

/// Area of the piece without its darts' mouths: each dart cut out to its apex, in mm^2.
inline double closed_area(const Piece& piece) { return signed_area(sewing_outline(piece)); }

/// Width of the cloth of a piece on one level: the dart mouths left out.
inline double width_at(const Piece& piece, double y) {
  std::vector<double> xs;
  for (const LineCrossing& hit : intersections(sewing_outline(piece), {0.0, y}, {1.0, 0.0})) {
    xs.push_back(hit.point.x);
  }
  std::sort(xs.begin(), xs.end());
  double width = 0.0;
  for (std::size_t i = 0; i + 1 < xs.size(); i += 2) width += xs[i + 1] - xs[i];
  return width;
}

/// Largest distance from points of one path to the other and the reverse, in mm.
inline double apart(const Path& a, const Path& b) {
  double most = 0.0;
  for (int i = 0; i <= 200; ++i) {
    const double share = i / 200.0;
    most = std::fmax(most, nearest(b, point_at_length(a, share * length(a))).distance);
    most = std::fmax(most, nearest(a, point_at_length(b, share * length(b))).distance);
  }
  return most;
}

/// The largest turn between strokes that follow each other, in degrees.
inline double sharpest_corner(const Path& path) {
  double most = 0.0;
  for (std::size_t i = 0; i + 1 < path.curves().size(); ++i) {
    const Vec in = tangent_at(path.curves()[i], 1.0), out = tangent_at(path.curves()[i + 1], 0.0);
    most = std::fmax(most, std::abs(turn_between(in, out).degrees()));
  }
  return most;
}

}  // namespace blockwright_tests
