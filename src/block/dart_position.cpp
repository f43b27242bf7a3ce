#include "blockwright/block/dart_position.hpp"

#include <algorithm>

namespace blockwright {
namespace {

// A stitched dart keeps at least this share of its legs. Our bound.
constexpr double kLeastStitched = 0.5;
// Where the hold-backs of a small and of a full bust are reached. Ours: about one and a half
// standard deviations of the 1988 survey to either side.
constexpr double kSmallCup = 80.0;
constexpr double kFullCup = 200.0;

}  // namespace

double hold_back(const DartPosition& position, double cup) {
  const double usual = position.usual_hold_back;
  const double less = std::clamp((kUsualCup - cup) / (kUsualCup - kSmallCup), 0.0, 1.0);
  const double more = std::clamp((cup - kUsualCup) / (kFullCup - kUsualCup), 0.0, 1.0);
  return usual + less * (position.small_hold_back - usual) +
         more * (position.full_hold_back - usual);
}

Dart drafted_dart(const DartPosition& position, Point apex, const std::array<Point, 2>& legs,
                  double hold_back, Vec seam) {
  Dart dart;
  dart.name = position.name;
  dart.edge = position.edge;
  dart.apex = apex;
  dart.legs = legs;
  dart.pressed_to = position.pressed_to;
  dart = held_back(dart, hold_back);
  dart.peak = dart_peak(dart.point, dart.inner_leg(), dart.outer_leg(), seam);
  return dart;
}

Dart held_back(Dart dart, double by) {
  const Vec centre = unit(unit(dart.legs[0] - dart.apex) + unit(dart.legs[1] - dart.apex));
  dart.point = dart.apex + std::min(by, (1.0 - kLeastStitched) * dart.leg()) * centre;
  return dart;
}

}  // namespace blockwright
