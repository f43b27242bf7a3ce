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
  [[nodiscard]] bool overlaps(const Box& other) const {
    return left < other.right && other.left < right && bottom < other.top && other.bottom < top;
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

/// The smallest upright box round a path, within 1e-9 mm.
Box box_of(const Path& path);

}  // namespace blockwright
