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

void add_undarted(WaistEdge& edge, Point from, double side_x, double side_slope, double bend) {
  const Point level{side_x - bend, from.y};
  edge.side_waist = {side_x, from.y + waist_rise(bend, 0.0, side_slope)};
  edge.curves.push_back(Segment{from, level});
  edge.curves.push_back(waist_stretch(level, 0.0, edge.side_waist, side_slope));
}

double sewn_length(const WaistEdge& edge) {
  double sum = 0.0;
  for (const Curve& curve : edge.curves) {
    sum += std::copysign(length(curve, kSewnAccuracy), end_of(curve).x - start_of(curve).x);
  }
  return sum;
}

Path side_stretch(const WaistEdge& edge) {
  if (edge.darts.empty()) return Path({edge.curves.begin(), edge.curves.end()});
  return Path({edge.curves.back()});
}

WaistWithDarts waist_with_darts(const DartPosition& position, const WaistEdge& edge,
                                double hold_back) {
  if (edge.darts.empty()) return {side_stretch(edge), {}};
  WaistWithDarts waist{Path({edge.curves.front()}), {}};
  for (std::size_t i = 0; i < edge.darts.size(); ++i) {
    const WaistDart& d = edge.darts[i];
    Dart dart = drafted_dart(position, d.apex, {d.inner_leg, d.outer_leg}, hold_back,
                             tangent_at(edge.curves[i], 1.0));
    if (i > 0) dart.name += i == 1 ? "_outer" : "_side";
    waist.path.add(Path::through({d.inner_leg, dart.peak, d.outer_leg}));
    waist.path.add(edge.curves[i + 1]);
    waist.darts.push_back(dart);
  }
  return waist;
}

double taken_at_level(const Dart& dart, double y) {
  if (dart.point.y <= y) return 0.0;
  const auto at_level = [&](Point leg) {
    return (leg.x - dart.point.x) * (dart.point.y - y) / (dart.point.y - leg.y);
  };
  return std::abs(at_level(dart.legs[1]) - at_level(dart.legs[0]));
}

}  // namespace blockwright
