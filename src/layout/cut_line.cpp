#include "blockwright/layout/cut_line.hpp"

#include "blockwright/base/error.hpp"
#include "blockwright/geometry/intersections.hpp"
#include "blockwright/geometry/offset.hpp"

#include <polyclipping/clipper.hpp>

#include <algorithm>
#include <cmath>
#include <optional>

namespace blockwright {
namespace {

// The library counts in whole numbers: a tenth of a micrometre each.
constexpr double kUnitsPerMm = 1e4;

ClipperLib::Path to_units(const std::vector<Point>& points) {
  ClipperLib::Path path;
  path.reserve(points.size());
  for (const Point p : points) {
    path.emplace_back(std::llround(p.x * kUnitsPerMm), std::llround(p.y * kUnitsPerMm));
  }
  return path;
}

Path to_path(const ClipperLib::Path& ring) {
  std::vector<Point> points;
  points.reserve(ring.size() + 1);
  for (const ClipperLib::IntPoint& p : ring) {
    points.push_back(
        {static_cast<double>(p.X) / kUnitsPerMm, static_cast<double>(p.Y) / kUnitsPerMm});
  }
  points.push_back(points.front());
  return Path::through(points);
}

// The outer boundary of everything that a closed path winds round anticlockwise: loops that run
// clockwise are dropped. The path is flattened; of several boundaries the largest is taken.
Path positive_union(const Path& closed) {
  ClipperLib::Clipper clipper;
  clipper.StrictlySimple(true);
  clipper.AddPath(to_units(flattened(closed, kFlattening)), ClipperLib::ptSubject, true);
  ClipperLib::Paths rings;
  clipper.Execute(ClipperLib::ctUnion, rings, ClipperLib::pftPositive, ClipperLib::pftPositive);
  require(!rings.empty(), "an outline that encloses nothing");
  return to_path(*std::ranges::max_element(rings, {}, ClipperLib::Area));
}

// One edge with its own cut line, which goes on straight at both ends so that neighbours can meet
// it. Without allowance the cut line is the edge.
struct Side {
  Path edge;
  double width = 0.0;
  Path beside;         // the offset alone
  Path reach;          // the offset, led on straight at both ends
  PathPlace from, to;  // what of `reach` is used

  [[nodiscard]] bool bare() const { return width == 0.0; }
};

PathPlace last_place(const Path& path) { return {path.curves().size() - 1, 1.0}; }

Path led_on(const Path& path, double by) {
  Path longer;
  longer.add(Segment{path.start() - by * start_tangent(path), path.start()});
  longer.add(path);
  longer.add(Segment{path.end(), path.end() + by * end_tangent(path)});
  return longer;
}

Side side_of(const Path& edge, double width) {
  Side side{edge, width, edge, edge, {0, 0.0}, last_place(edge)};
  if (side.bare()) return side;
  side.beside = offset(edge, width);
  side.reach = led_on(side.beside, 2.0 * kMitreLimit * width);
  side.from = {1, 0.0};
  side.to = {side.reach.curves().size() - 2, 1.0};
  return side;
}

// How an allowance ends at a corner with a bare edge: what leads from the corner to its cut line,
// and where it meets it.
struct AllowanceEnd {
  Path from_corner;
  PathPlace on_cut_line;
};

// The bare neighbour's mirror image in the stitch line, which runs `along`, led on straight;
// nothing where the image would fall inside the piece or meets the cut line too far from the
// corner.
std::optional<AllowanceEnd> end_at_bare(const Side& side, const Path& bare_from_corner, Vec along) {
  const Point corner = bare_from_corner.start();
  const double limit = kMitreLimit * side.width;
  Path image = placed(bare_from_corner, Placement::mirror_in(corner, along));
  if (dot(start_tangent(image), right_of(along)) <= 0.0) return std::nullopt;
  image.add(Segment{image.end(), image.end() + limit * end_tangent(image)});
  for (const PathCrossing& hit : intersections(image, side.reach)) {
    if (distance(hit.point, corner) > limit) continue;
    return AllowanceEnd{part_before(image, hit.on_a), hit.on_b};
  }
  return std::nullopt;
}

// The corner after `side`, whose neighbour is bare: sets where the cut line stops and returns what
// leads from there to the corner.
Path close_before_bare(Side& side, const Path& neighbour) {
  const auto end = end_at_bare(side, neighbour, end_tangent(side.edge));
  if (!end) return Path::through({side.beside.end(), neighbour.start()});
  side.to = end->on_cut_line;
  return reversed(end->from_corner);
}

// The same at the corner before `side`: returns what leads from the corner to the cut line.
Path open_after_bare(const Path& neighbour, Side& side) {
  const auto end = end_at_bare(side, reversed(neighbour), start_tangent(side.edge));
  if (!end) return Path::through({neighbour.end(), side.beside.start()});
  side.from = end->on_cut_line;
  return end->from_corner;
}

// The corner between two allowances: a mitre, a cut-off inner corner, a bevel, or back through the
// corner where the two do not meet.
Path join_allowances(Side& before, Side& after) {
  const Point corner = before.edge.end();
  const double limit = kMitreLimit * std::max(before.width, after.width);
  std::optional<PathCrossing> best;
  for (const PathCrossing& hit : intersections(before.reach, after.reach)) {
    const bool near = distance(hit.point, corner) <= limit;
    if (near && (!best || distance(hit.point, corner) < distance(best->point, corner))) best = hit;
  }
  if (best) {
    before.to = best->on_a;
    after.from = best->on_b;
    return {};
  }
  const bool outer = cross(end_tangent(before.edge), start_tangent(after.edge)) > 0.0;
  if (outer) return Path::through({before.beside.end(), after.beside.start()});
  return Path::through({before.beside.end(), corner, after.beside.start()});
}

Path join(Side& before, Side& after) {
  if (before.bare() && after.bare()) return {};
  if (after.bare()) return close_before_bare(before, after.edge);
  if (before.bare()) return open_after_bare(before.edge, after);
  return join_allowances(before, after);
}

// What is used of a side; an edge whose corners have eaten it up is used whole (the union of the
// overlapping allowances sorts it out).
Path used_part(const Side& side) {
  const Path part = part_between(side.reach, side.from, side.to);
  return part.empty() ? side.beside : part;
}

Path assembled(std::vector<Side>& sides) {
  const std::size_t count = sides.size();
  std::vector<Path> joints;
  for (std::size_t i = 0; i < count; ++i) joints.push_back(join(sides[i], sides[(i + 1) % count]));
  Path outline;
  for (std::size_t i = 0; i < count; ++i) {
    append(outline, used_part(sides[i]));
    append(outline, joints[i]);
  }
  append_line(outline, outline.start());
  return ending_at(without_straight_joints(outline), outline.start());
}

Path joined(const std::vector<Path>& edges) {
  Path outline;
  for (const Path& edge : edges) outline.add(edge);
  return outline;
}

}  // namespace

Path cut_line(const std::vector<Path>& edges, const std::vector<Length>& widths) {
  require(edges.size() == widths.size() && !edges.empty(), "an allowance for each edge");
  require(std::all_of(widths.begin(), widths.end(), [](Length w) { return w >= Length(); }),
          "an allowance may not be negative");
  if (std::all_of(widths.begin(), widths.end(), [](Length w) { return w == Length(); })) {
    return joined(edges);
  }
  std::vector<Side> sides;
  for (std::size_t i = 0; i < edges.size(); ++i) sides.push_back(side_of(edges[i], widths[i].mm()));
  Path outline = assembled(sides);
  if (!find_crossing(outline, kFlattening)) return outline;
  return positive_union(outline);
}

}  // namespace blockwright
