#pragma once

#include "blockwright/geometry/box.hpp"
#include "blockwright/geometry/path.hpp"

#include <algorithm>
#include <variant>

namespace blockwright {

/// Sheet millimetres to the page's, smaller by `scale`.
struct Reduction {
  double scale;
  Point sheet_corner, page_corner;

  [[nodiscard]] Point operator()(Point p) const { return page_corner + scale * (p - sheet_corner); }
  [[nodiscard]] Box operator()(const Box& box) const {
    Box small;
    small.include((*this)(Point{box.left, box.bottom}));
    small.include((*this)(Point{box.right, box.top}));
    return small;
  }
  [[nodiscard]] Curve operator()(const Curve& curve) const {
    const Reduction& map = *this;
    if (const auto* s = std::get_if<Segment>(&curve)) return Segment{map(s->a), map(s->b)};
    const auto& c = std::get<CubicCurve>(curve);
    return CubicCurve{map(c.p0), map(c.p1), map(c.p2), map(c.p3)};
  }
  [[nodiscard]] Path operator()(const Path& path) const {
    Path small;
    for (const Curve& curve : path.curves()) small.add((*this)(curve));
    return small;
  }
};

/// The upper left corners lie on each other.
inline Reduction reduction_into(const Box& whole, const Box& frame) {
  const double scale = std::min(frame.width() / whole.width(), frame.height() / whole.height());
  return {scale, {whole.left, whole.top}, {frame.left, frame.top}};
}

}  // namespace blockwright
