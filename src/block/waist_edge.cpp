#include "blockwright/block/waist_edge.hpp"

#include <algorithm>
#include <cmath>

namespace blockwright {
namespace {

// A waist without a dart bends over this width, but over at most this share of what there is, so
// that the curve stays flat. Ours.
constexpr double kUndartedBend = 100.0;
constexpr double kMostBend = 0.8;
// Accuracy of a length that a waist is solved for, in mm.
constexpr double kSewnAccuracy = 1e-7;

Vec heading(double slope) { return {std::cos(slope), std::sin(slope)}; }

}  // namespace

CubicCurve waist_stretch(Point from, double slope_from, Point to, double slope_to) {
  return fair_curve(from, heading(slope_from), to, heading(slope_to));
}

double waist_rise(double width, double slope_from, double slope_to) {
  return width * std::tan(0.5 * (slope_from + slope_to));
}

double undarted_bend(double from_x, double side_x, double over_side_waist) {
  return std::min({kUndartedBend, kMostBend * (side_x - from_x), kMostBend * over_side_waist});
}

Path undarted_stretch(Point from, double side_x, double side_slope, double bend) {
  const Point level{side_x - bend, from.y};
  Path path({Segment{from, level}});
  path.add(
      waist_stretch(level, 0.0, {side_x, from.y + waist_rise(bend, 0.0, side_slope)}, side_slope));
  return path;
}

double sewn_length(const WaistEdge& edge) {
  double sum = 0.0;
  for (const Path& path : edge.stretches) sum += length(path, kSewnAccuracy);
  return sum;
}

WaistWithDarts waist_with_darts(const DartPosition& position, const WaistEdge& edge,
                                double hold_back) {
  WaistWithDarts waist;
  waist.path = edge.stretches.front();
  for (std::size_t i = 0; i < edge.darts.size(); ++i) {
    const WaistDart& d = edge.darts[i];
    Dart dart = drafted_dart(position, d.apex, {d.inner_leg, d.outer_leg}, hold_back,
                             end_tangent(edge.stretches[i]));
    if (i > 0) dart.name += i == 1 ? "_outer" : "_side";
    waist.path.add(Path::through({d.inner_leg, dart.peak, d.outer_leg}));
    waist.path.add(edge.stretches[i + 1]);
    waist.darts.push_back(dart);
  }
  return waist;
}

double taken_at_level(const Dart& dart, double y) {
  if (dart.point.y <= y) return 0.0;
  return dart.intake() * (dart.point.y - y) / (dart.point.y - dart.legs[0].y);
}

}  // namespace blockwright
