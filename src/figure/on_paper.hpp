#pragma once

#include "blockwright/geometry/box.hpp"
#include "blockwright/geometry/path.hpp"

namespace blockwright {

/// Brings body mm to paper mm.
class OnPaper {
 public:
  OnPaper(const Box& frame, double scale) : corner_{frame.left, frame.bottom}, scale_(scale) {}
  [[nodiscard]] Point operator()(Point p) const {
    const Vec from = scale_ * (p - corner_);
    return {from.x, from.y};
  }
  [[nodiscard]] Path operator()(const Path& path) const {
    Path scaled;
    for (const Curve& curve : path.curves()) {
      const CubicCurve c = as_cubic(curve);
      scaled.add(CubicCurve{(*this)(c.p0), (*this)(c.p1), (*this)(c.p2), (*this)(c.p3)});
    }
    return scaled;
  }

 private:
  Point corner_;
  double scale_;
};

}  // namespace blockwright
