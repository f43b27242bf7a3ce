#pragma once

#include "blockwright/geometry/path.hpp"

#include <algorithm>
#include <limits>

namespace blockwright {

/// An upright rectangle in mm; empty until something is put in.
struct Box {
  double left = std::numeric_limits<double>::infinity();
  double bottom = std::numeric_limits<double>::infinity();
  double right = -std::numeric_limits<double>::infinity();
  double top = -std::numeric_limits<double>::infinity();

  [[nodiscard]] bool empty() const { return right < left || top < bottom; }
  [[nodiscard]] double width() const { return empty() ? 0.0 : right - left; }
  [[nodiscard]] double height() const { return empty() ? 0.0 : top - bottom; }
  [[nodiscard]] bool overlaps(const Box& other, double slack = 0.0) const {
    return left < other.right + slack && other.left < right + slack && bottom < other.top + slack &&
           other.bottom < top + slack;
  }
  void include(Point p) {
    left = std::min(left, p.x);
    right = std::max(right, p.x);
    bottom = std::min(bottom, p.y);
    top = std::max(top, p.y);
  }
  void include(const Box& other) {
    if (other.empty()) return;
    include(Point{other.left, other.bottom});
    include(Point{other.right, other.top});
  }
};

/// The box about the control points, which encloses the curve.
Box control_box(const CubicCurve& curve);
/// The smallest upright box round a path, within 1e-9 mm.
Box box_of(const Path& path);

}  // namespace blockwright
