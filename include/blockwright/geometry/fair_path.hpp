#pragma once

#include "blockwright/geometry/path.hpp"

#include <optional>
#include <span>

namespace blockwright {

/// A point that a line is led through, and the line's direction there where it is given.
struct Through {
  Point at;
  std::optional<Vec> along = {};
};

/// A smooth line through the points. Where no direction is given it runs along the circle through
/// the point and its neighbours, and at an end along the circle of the end's stroke. A line that is
/// moved, turned, mirrored or scaled is led through the points moved likewise. Points of a circle
/// give that circle within 0.1 % where they are no more than 25 degrees apart.
/// Requires: at least two points, none twice in a row; no direction is null.
Path fair_path(std::span<const Through> points);

/// Directions at the ends of a line; the null vector where the line itself decides.
struct EndDirections {
  Vec leaving = {}, arriving = {};
};

/// fair_path() through points without directions but at its ends.
Path smooth_through(std::span<const Point> points, const EndDirections& ends);

}  // namespace blockwright
