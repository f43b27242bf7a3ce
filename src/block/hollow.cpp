#include "blockwright/block/hollow.hpp"

#include <cmath>

namespace blockwright {
namespace {

// Points looked at on each curve: between two of them a curve of a block leaves its chord by less
// than a thousandth.
constexpr int kPointsOnCurve = 40;

}  // namespace

Hollow hollow_of(const std::vector<Path>& stretches) {
  const Point start = stretches.front().start();
  const Vec straight = stretches.back().end() - start;
  Hollow hollow{0.0, norm(straight)};
  for (const Path& stretch : stretches) {
    for (const Curve& curve : stretch.curves()) {
      for (int i = 0; i <= kPointsOnCurve; ++i) {
        const Point p = point_at(curve, static_cast<double>(i) / kPointsOnCurve);
        const double deep = cross(unit(straight), p - start);
        if (std::abs(deep) > std::abs(hollow.deep)) hollow.deep = deep;
      }
    }
  }
  return hollow;
}

}  // namespace blockwright
