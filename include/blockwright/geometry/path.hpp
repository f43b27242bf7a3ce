#pragma once

#include "blockwright/geometry/curve.hpp"

#include <cstddef>
#include <initializer_list>
#include <optional>
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
/// The least radius of curvature, in mm; infinite where nothing bends. Looked for at 97 places of
/// each stroke and narrowed down from the sharpest: exact to a thousandth of itself, but a bend
/// shorter than a hundredth of a stroke may be missed. Corners between strokes have none.
double least_radius(const Path& path);
/// Vertices of a polyline that leaves the path by at most `tolerance` mm; ends are exact.
/// Requires: tolerance > 0.
std::vector<Point> flattened(const Path& path, double tolerance);
/// Nearest point of the path, the first of several equally near; as exact as nearest_parameter().
/// Requires: path is not empty.
NearestOnPath nearest(const Path& path, Point to);

/// Paths are taken apart at exact places and put together again by these; nothing is measured.

/// True if `a` comes before `b` in the direction of travel.
bool comes_before(PathPlace a, PathPlace b);

/// The part of a path before a place, the part after it, and the part between two places. A part of
/// no extent has no strokes. Requires of part_between: `from` does not come after `to`.
Path part_before(const Path& path, PathPlace place);
Path part_after(const Path& path, PathPlace place);
Path part_between(const Path& path, PathPlace from, PathPlace to);

/// The path with its start or its end moved, the rest unchanged (a cubic's nearest handle moves
/// too). Meant for rounding errors.
Path starting_at(Path path, Point start);
Path ending_at(Path path, Point end);

/// The path without strokes of no extent, which rounding leaves where a path is taken apart; a path
/// of nothing else stays. No point moves by more than 1e-9 mm.
Path without_specks(Path path);

/// The same with straight strokes that go on in one line made one stroke.
Path without_straight_joints(Path path);

/// Appends `next` to `path`: joined exactly where the gap is no more than `snap` mm (the start of
/// `next` is moved), bridged by a straight stroke where it is wider.
void append(Path& path, const Path& next, double snap = 1e-6);
void append_line(Path& path, Point to, double snap = 1e-6);

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
