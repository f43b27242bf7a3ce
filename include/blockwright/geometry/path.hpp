#pragma once

#include "blockwright/geometry/curve.hpp"

#include <cstddef>
#include <initializer_list>
#include <span>
#include <utility>
#include <vector>

namespace blockwright {

/// An open chain of strokes, each starting where the last one ended.
///
///     Path seam;
///     seam.add(Segment{a, b});
///     seam.add(CubicCurve{b, c, d, e});
///     double l = length(seam);
///
/// Invariant: consecutive strokes share their joint to within kJointTolerance.
class Path {
 public:
  Path() = default;
  /// Requires: each stroke starts where the one before it ends.
  explicit Path(std::vector<Curve> curves);
  /// A path through the points by straight strokes. Requires: at least two points.
  static Path through(std::span<const Point> points);
  static Path through(std::initializer_list<Point> points) {
    return through(std::span(points.begin(), points.size()));
  }

  /// Requires: the stroke starts where the path ends.
  void add(const Curve& curve);
  void add(const Path& path);

  [[nodiscard]] bool empty() const { return curves_.empty(); }
  [[nodiscard]] const std::vector<Curve>& curves() const& { return curves_; }
  [[nodiscard]] std::vector<Curve> curves() && { return std::move(curves_); }
  /// Requires: not empty.
  [[nodiscard]] Point start() const;
  [[nodiscard]] Point end() const;

  bool operator==(const Path&) const = default;

 private:
  std::vector<Curve> curves_;
};

/// Joints of a path may differ by this much, in mm: rounding of a few operations at 1000 mm.
inline constexpr double kJointTolerance = 1e-9;

/// A place on a path: which stroke and where on it.
struct PathPlace {
  std::size_t curve = 0;
  double t = 0.0;
};

/// A point of a path found from outside.
struct NearestOnPath {
  PathPlace place;
  Point point;
  double distance = 0.0;  ///< mm from the asked point
  double along = 0.0;     ///< mm from the start of the path
};

/// Sum of the strokes' lengths, in mm, each within `accuracy`.
double length(const Path& path, double accuracy = kLengthAccuracy);
/// Place at arc length s from the start; s is clamped to the path.
PathPlace place_at_length(const Path& path, double s);
Point point_at(const Path& path, PathPlace place);
Point point_at_length(const Path& path, double s);
/// Unit tangent in the direction of travel at arc length s, at the start and at the end; strokes
/// that are single points are passed over. The null vector if the whole path is one point.
Vec tangent_at_length(const Path& path, double s);
Vec start_tangent(const Path& path);
Vec end_tangent(const Path& path);
/// The part between two arc lengths, both clamped; empty if nothing is left.
Path sub_path(const Path& path, Stretch stretch);
Path reversed(const Path& path);
Path placed(const Path& path, const Placement& placement);
/// How often the bend of paths that follow one another changes sides, counted at 49 places of each
/// stroke; a bend of more than a kilometre's radius counts as straight. A wriggle shorter than a
/// fiftieth of a stroke may be missed. The paths need not join: a closed dart may lie between them.
int inflections(const std::vector<Path>& paths);
/// Vertices of a polyline that leaves the path by at most `tolerance` mm; ends are exact.
/// Requires: tolerance > 0.
std::vector<Point> flattened(const Path& path, double tolerance);
/// Nearest point of the path, the first of several equally near; as exact as nearest_parameter().
/// Requires: path is not empty.
NearestOnPath nearest(const Path& path, Point to);

}  // namespace blockwright
