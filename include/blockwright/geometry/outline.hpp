#pragma once

#include "blockwright/geometry/path.hpp"

#include <optional>

namespace blockwright {

/// Area enclosed by a closed path in mm^2, positive when it runs anticlockwise. Exact for lines and
/// cubics (Green's theorem) up to rounding. The closing stroke is implied.
double signed_area(const Path& closed);

/// True if the point lies inside the closed path (even-odd), after flattening to `tolerance` mm. A
/// point on the path itself may count as either.
bool contains(const Path& closed, Point p, double tolerance);

/// A point where the closed path crosses or touches itself, after flattening to `tolerance` mm, or
/// nothing. Chords that merely follow one another do not count, unless the second runs straight
/// back over the first; chords of at most kJointTolerance are left out. A touch is found to within
/// rounding. Cost: about n sqrt(n) for an ordinary outline of n chords, n squared at worst.
std::optional<Point> find_crossing(const Path& closed, double tolerance);

}  // namespace blockwright
