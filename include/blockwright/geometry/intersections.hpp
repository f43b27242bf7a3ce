#pragma once

#include "blockwright/geometry/path.hpp"

#include <vector>

namespace blockwright {

/// How closely a reported crossing lies on both of its paths, in mm.
inline constexpr double kCrossingTolerance = 1e-9;

/// A point that two paths share.
struct PathCrossing {
  PathPlace on_a;
  PathPlace on_b;
  Point point;
};

/// A point where a path meets an endless line.
struct LineCrossing {
  PathPlace place;
  Point point;
  double along_line = 0.0;  ///< mm from the line's given point, in its direction
};

/// All points that two paths share, crossings and touches, in the order of travel along `a`.
///
/// Accuracy: each point lies within kCrossingTolerance of both paths; a touch may be off by 1e-4 mm
/// along them, for there the distance hardly changes. Two crossings closer than 0.01 mm, at less
/// than 6 degrees, may be reported as one. A shared joint of two strokes is reported once. Where
/// strokes run along each other, the ends of the shared stretch are reported.
/// Cost: strokes of a times strokes of b whose boxes overlap.
std::vector<PathCrossing> intersections(const Path& a, const Path& b);

/// All points where the path meets the endless line through `through` along `direction`, in the
/// order of travel along the path; a touch is reported once. A stroke that lies in the line is
/// reported by its two ends. Within kCrossingTolerance.
/// Requires: direction is not null.
std::vector<LineCrossing> intersections(const Path& path, Point through, Vec direction);

}  // namespace blockwright
