#include "blending.hpp"

#include "blockwright/dart/truing.hpp"
#include "blockwright/geometry/solve.hpp"

#include <cmath>
#include <optional>
#include <utility>

namespace blockwright {
namespace {

// A tail of several strokes becomes one cubic if its last stroke is shorter than this, in mm: the
// turn would else be pressed into it.
constexpr double kShortestTurn = 20.0;
constexpr double kSnap = 1e-6;
// Such a cubic is as long as the strokes that it replaces, in mm.
constexpr double kLengthKept = 0.01;
// A cubic's handle carries its points by 3 (1 - t) t^2 of its own way, most at t = 2/3.
constexpr double kMostByHandle = 4.0 / 9.0;

// Largest distance of points of strokes from a path, in mm, found from 32 samples of each stroke.
double largest_distance(const std::vector<Curve>& of, const Path& from) {
  constexpr int samples = 32;
  double most = 0.0;
  for (const Curve& curve : of) {
    for (int i = 0; i <= samples; ++i) {
      const Point p = point_at(curve, static_cast<double>(i) / samples);
      most = std::fmax(most, nearest(from, p).distance);
    }
  }
  return most;
}

// One cubic in place of several strokes: the same ends, directions and length. Nothing where they
// bow so far that no such cubic follows them.
std::optional<CubicCurve> one_stroke(const Path& path) {
  const Point from = path.start(), to = path.end();
  const Vec leaving = start_tangent(path), arriving = end_tangent(path);
  const auto with_handles = [&](double handle) {
    return CubicCurve{from, from + handle * leaving, to - handle * arriving, to};
  };
  const double whole = length(path);
  const auto too_long = [&](double handle) { return length(Curve(with_handles(handle))) - whole; };
  const double handle = solve_between(too_long, {0.2 * whole, 0.5 * whole}, 1e-9);
  if (std::abs(too_long(handle)) > kLengthKept) return std::nullopt;
  return with_handles(handle);
}

// A path that was turned, and how far its points moved at most, in mm.
struct Turned {
  Path path;
  double moved = 0.0;
};

std::optional<Turned> turned_within(const Path& path, Angle by, double reach) {
  const double whole = length(path);
  Path turned = reach < whole ? sub_path(path, {0.0, whole - reach}) : Path();
  const Path tail = reach < whole ? sub_path(path, {whole - reach, whole}) : path;
  const bool whole_tail = tail.curves().size() > 1 && length(tail.curves().back()) < kShortestTurn;
  const auto stroke = whole_tail ? one_stroke(tail) : as_cubic(tail.curves().back());
  if (!stroke) return std::nullopt;
  CubicCurve last = *stroke;
  const Point handle = last.p2;
  last.p2 = rotated_about(handle, last.p3, by);
  for (std::size_t i = 0; !whole_tail && i + 1 < tail.curves().size(); ++i) {
    append(turned, Path({tail.curves()[i]}), kSnap);
  }
  append(turned, Path({last}), kSnap);
  const double moved =
      whole_tail ? largest_distance({last}, tail) : kMostByHandle * distance(handle, last.p2);
  return Turned{std::move(turned), moved};
}

Turned with_end_turned(const Path& path, Angle by) {
  for (double within = kBlendingReach; within >= kShortestTurn; within *= 0.5) {
    if (auto turned = turned_within(path, by, within)) return std::move(*turned);
  }
  return {path, 0.0};
}

// From memory of handbooks: flatten the corner over 4 to 6 cm to either side.
constexpr double kMostReach = 50.0;
// Reach at most this share of the way to the next corner or end.
constexpr double kShareOfLeg = 0.45;

struct Corner {
  Point before, at, after;

  [[nodiscard]] Vec in() const { return unit(at - before); }
  [[nodiscard]] Vec out() const { return unit(after - at); }
};

Corner corner_at(const std::vector<Point>& points, std::size_t i) {
  return {points[i - 1], points[i], points[i + 1]};
}

double reach_at(const Corner& corner) {
  const double room =
      std::fmin(distance(corner.before, corner.at), distance(corner.at, corner.after));
  return std::fmin(kMostReach, kShareOfLeg * room);
}

// A fair stroke between a leg and the apex.
CubicCurve stroke(Point from, Vec leaving, Point to, Vec arriving) {
  const double third = distance(from, to) / 3.0;
  return {from, from + third * leaving, to - third * arriving, to};
}

// The line by the corners, rounded; `apexes` gets how far along it passes them.
Path rounded(const std::vector<Point>& points, const std::vector<double>& reaches,
             std::vector<double>& apexes) {
  Path line;
  Point end = points.front();
  for (std::size_t i = 1; i + 1 < points.size(); ++i) {
    const Corner corner = corner_at(points, i);
    const Vec along = unit(corner.in() + corner.out());
    const Point from = corner.at - reaches[i] * corner.in();
    const Point to = corner.at + reaches[i] * corner.out();
    line.add(Segment{end, from});
    line.add(stroke(from, corner.in(), corner.at, along));
    apexes.push_back(length(line));
    line.add(stroke(corner.at, along, to, corner.out()));
    end = to;
  }
  line.add(Segment{end, points.back()});
  return line;
}

}  // namespace

Blended blended(const OpenEdge& edge, std::size_t dart, Angle kink) {
  Turned in = with_end_turned(edge.stretches[dart], 0.5 * kink);
  const Turned out = with_end_turned(reversed(edge.stretches[dart + 1]), -(0.5 * kink));
  return {std::move(in.path), reversed(out.path), std::fmax(in.moved, out.moved)};
}

void lay_in(Opened& open, DartSpot spot, const Blended& stretches) {
  auto& all = open.edges[spot.edge].stretches;
  all[spot.dart] = stretches.before;
  all[spot.dart + 1] = stretches.after;
  const double before = length(stretches.before), after = length(stretches.after);
  change_anchors(open, [&](Anchor& mark) {
    if (mark.edge != spot.edge) return;
    if (mark.stretch == spot.dart) mark.along = std::fmin(mark.along, before);
    if (mark.stretch == spot.dart + 1) mark.along = std::fmin(mark.along, after);
  });
}

SeamLines rounded_seam(const std::vector<Point>& centre, const std::vector<Point>& side) {
  std::vector<double> reaches(centre.size(), 0.0);
  const std::size_t last = centre.size() - 2;
  for (std::size_t i = 1; i <= last; ++i) {
    reaches[i] = std::fmin(reach_at(corner_at(centre, i)), reach_at(corner_at(side, i)));
  }
  SeamLines lines;
  lines.centre = rounded(centre, reaches, lines.centre_apexes);
  lines.side = rounded(side, reaches, lines.side_apexes);
  lines.zone_from = distance(centre[0], centre[1]) - reaches[1];
  lines.zone_to = distance(centre[last], centre[last + 1]) - reaches[last];
  lines.bulge = std::fmax(largest_distance(lines.centre.curves(), Path::through(centre)),
                          largest_distance(lines.side.curves(), Path::through(side)));
  return lines;
}

}  // namespace blockwright
