#include "blockwright/geometry/intersections.hpp"
#include "dress.hpp"

#include <cmath>
#include <limits>

namespace blockwright {
namespace {

// Common practice, no source: 3 to 4 mm deep; a double notch stands 5 mm apart.
constexpr double kNotchDepth = 4.0;
// On a bound edge a notch is cut into the garment, where the narrowest binding must cover it.
constexpr double kBoundNotchDepth = 2.0;
constexpr double kDoubleNotchStep = 5.0;
// The stitch line of a bare edge is its cut line to within this, in mm.
constexpr double kOnEdge = 0.02;

// From the cut line, met from `on` along `outward`, straight back by the depth of a notch. On a
// bare edge the cut line is met at once.
Path notch_from(Point on, Vec outward, const Path& cut, double depth = kNotchDepth) {
  double out = std::numeric_limits<double>::infinity();
  for (const LineCrossing& hit : intersections(cut, on, outward)) {
    if (hit.along_line > -kOnEdge) out = std::fmin(out, std::fmax(hit.along_line, 0.0));
  }
  const Point edge = std::isfinite(out) ? on + out * outward : on;
  return Path::through({edge, edge - depth * outward});
}

}  // namespace

std::vector<Path> notch_marks(const Piece& piece, const Notch& notch, const Path& cut) {
  const Edge& on = piece.edge(notch.edge);
  const Path& edge = on.path;
  const double depth = on.finish.how == Finish::Bound ? kBoundNotchDepth : kNotchDepth;
  std::vector<Path> marks;
  for (int i = 0; i < notch.count; ++i) {
    const double along = notch.along + (i - 0.5 * (notch.count - 1)) * kDoubleNotchStep;
    const Vec outward = right_of(tangent_at_length(edge, along));
    marks.push_back(notch_from(point_at_length(edge, along), outward, cut, depth));
  }
  return marks;
}

std::vector<Path> leg_notches(const Dart& dart, const Path& cut) {
  std::vector<Path> marks;
  for (const Point end : dart.legs) marks.push_back(notch_from(end, unit(end - dart.apex), cut));
  return marks;
}

}  // namespace blockwright
