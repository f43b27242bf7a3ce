#include "blockwright/layout/cut_line.hpp"

#include "blockwright/base/error.hpp"
#include "blockwright/geometry/intersections.hpp"
#include "blockwright/geometry/offset.hpp"

#include <polyclipping/clipper.hpp>

#include <algorithm>
#include <cmath>
#include <limits>
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

// A facing beside a steep V reaches up so many times as far as another allowance may. Ours.
constexpr double kFurthestMirrored = 3.0;

// One edge with its own cut line, which goes on straight at both ends so that neighbours can meet
// it. Without allowance the cut line is the edge.
struct Side {
  Path edge;
  double width = 0.0;
  Path beside;         // the offset alone
  Path reach;          // the offset, led on straight at both ends
  PathPlace from, to;  // what of `reach` is used
  bool whole = true;   // neither end was moved

  [[nodiscard]] bool bare() const { return width == 0.0; }
  void starts(PathPlace at) { from = at, whole = false; }
  void stops(PathPlace at) { to = at, whole = false; }
};

Path led_on(const Path& path, double by) {
  Path longer;
  longer.add(Segment{path.start() - by * start_tangent(path), path.start()});
  longer.add(path);
  longer.add(Segment{path.end(), path.end() + by * end_tangent(path)});
  return longer;
}

Side side_of(const CutEdge& cut, double reach) {
  const double width = cut.width.mm();
  Side side{cut.edge, width, cut.edge, {}, {}, {}};
  if (!side.bare()) side.beside = offset(cut.edge, width);
  side.reach = led_on(side.beside, reach);
  side.from = {1, 0.0};
  side.to = {side.reach.curves().size() - 2, 1.0};
  return side;
}

double limit_of(const Side& a, const Side& b) { return kMitreLimit * std::max(a.width, b.width); }

// Two sides at a corner, seen from the one whose allowance ends by a rule: it runs into the corner,
// or out of it where it is the one after.
struct Meeting {
  Side& ruled;
  Side& other;
  bool ruled_first;
  double limit;  // how far off the two may meet

  [[nodiscard]] Point corner() const { return ruled_first ? ruled.edge.end() : ruled.edge.start(); }
  [[nodiscard]] Vec along() const {
    return ruled_first ? end_tangent(ruled.edge) : start_tangent(ruled.edge);
  }
  // From the corner on, beyond the edge.
  [[nodiscard]] Vec beyond() const { return ruled_first ? along() : -along(); }
  void end_ruled(PathPlace at) const { ruled_first ? ruled.stops(at) : ruled.starts(at); }
  void end_other(PathPlace at) const { ruled_first ? other.starts(at) : other.stops(at); }
  // The other's cut line from a place on it, away from the corner.
  [[nodiscard]] Path other_from(PathPlace at) const {
    return ruled_first ? part_after(other.reach, at) : reversed(part_before(other.reach, at));
  }
  // What leads from the ruled allowance to the other, in the order of the outline.
  [[nodiscard]] Path in_order(const Path& from_other) const {
    return ruled_first ? reversed(from_other) : from_other;
  }
};

// Where the other's cut line crosses the ruled stitch line, led on straight; of a bare edge the
// corner. Nothing at an inner corner, or too far off.
std::optional<PathCrossing> crossing_of(const Meeting& at) {
  const Side& other = at.other;
  if (other.bare()) {
    const PathPlace place = at.ruled_first ? other.from : other.to;
    return PathCrossing{{}, place, at.corner()};
  }
  std::optional<LineCrossing> best;
  for (const LineCrossing& hit : intersections(other.reach, at.corner(), at.beyond())) {
    if (hit.along_line <= 0.0 || hit.along_line > at.limit) continue;
    if (!best || hit.along_line < best->along_line) best = hit;
  }
  if (!best) return std::nullopt;
  return PathCrossing{{}, best->place, best->point};
}

// The ruled allowance ends as the mirror image of the other's cut line in its stitch line; nothing
// where the image would fall inside the piece or meets the ruled cut line too far off.
std::optional<Path> turned_end(const Meeting& at) {
  const auto crossing = crossing_of(at);
  if (!crossing) return std::nullopt;
  Path image =
      placed(at.other_from(crossing->on_b), Placement::mirror_in(crossing->point, at.along()));
  if (dot(start_tangent(image), right_of(at.along())) <= 0.0) return std::nullopt;
  image.add(Segment{image.end(), image.end() + at.limit * end_tangent(image)});
  for (const PathCrossing& hit : intersections(image, at.ruled.reach)) {
    if (distance(hit.point, crossing->point) > at.limit) continue;
    at.end_ruled(hit.on_b);
    if (!at.other.bare()) at.end_other(crossing->on_b);
    return at.in_order(part_before(image, hit.on_a));
  }
  return std::nullopt;
}

// The ruled allowance ends square to its edge.
std::optional<Path> square_end(const Meeting& at) {
  const auto crossing = crossing_of(at);
  if (!crossing) return std::nullopt;
  const Point end = crossing->point + at.ruled.width * right_of(at.along());
  const NearestOnPath on = nearest(at.ruled.reach, end);
  if (on.distance > kOffsetTolerance) return std::nullopt;
  at.end_ruled(on.place);
  if (!at.other.bare()) at.end_other(crossing->on_b);
  return at.in_order(Path::through({crossing->point, on.point}));
}

// A mitre, a cut-off inner corner, a bevel, or back through the corner where the two do not meet
// within `limit` of it.
Path mitred(Side& before, Side& after, double limit) {
  const Point corner = before.edge.end();
  std::optional<PathCrossing> best;
  for (const PathCrossing& hit : intersections(before.reach, after.reach)) {
    const bool near = distance(hit.point, corner) <= limit;
    if (near && (!best || distance(hit.point, corner) < distance(best->point, corner))) best = hit;
  }
  if (best) {
    before.stops(best->on_a);
    after.starts(best->on_b);
    return {};
  }
  const bool outer = cross(end_tangent(before.edge), start_tangent(after.edge)) > 0.0;
  if (outer) return Path::through({before.beside.end(), after.beside.start()});
  return Path::through({before.beside.end(), corner, after.beside.start()});
}

Path mitred(Side& before, Side& after) { return mitred(before, after, limit_of(before, after)); }

// What a ruled allowance does where its rule cannot be followed.
Path otherwise(Side& before, Side& after) {
  if (!before.bare() && !after.bare()) return mitred(before, after);
  return Path::through({before.beside.end(), after.beside.start()});
}

bool is_mirrored_end(CornerCut cut) {
  return cut == CornerCut::MirrorsBefore || cut == CornerCut::MirrorsAfter;
}

// How far cut lines are led on to meet one another.
double reach_of(const std::vector<CutEdge>& edges, double widest) {
  const bool mirrors =
      std::ranges::any_of(edges, [](const CutEdge& cut) { return is_mirrored_end(cut.at_end); });
  return (mirrors ? kFurthestMirrored + 1.0 : 2.0) * kMitreLimit * widest;
}

bool is_before(CornerCut cut) {
  return cut == CornerCut::TurnsBefore || cut == CornerCut::MirrorsBefore ||
         cut == CornerCut::SquareBefore;
}

Path join(Side& before, Side& after, CornerCut cut) {
  if (before.bare() && after.bare()) return {};
  if (cut == CornerCut::Mitre) return mitred(before, after);
  if (cut == CornerCut::OnFold) {
    return mitred(before, after, std::numeric_limits<double>::infinity());
  }
  const bool square = cut == CornerCut::SquareBefore || cut == CornerCut::SquareAfter;
  const double limit = (is_mirrored_end(cut) ? kFurthestMirrored : 1.0) * limit_of(before, after);
  const Meeting at =
      is_before(cut) ? Meeting{before, after, true, limit} : Meeting{after, before, false, limit};
  if (at.ruled.bare()) return mitred(before, after);
  const auto end = square ? square_end(at) : turned_end(at);
  return end ? *end : otherwise(before, after);
}

// What is used of a side; an edge whose corners have eaten it up is used whole (the union of the
// overlapping allowances sorts it out).
Path used_part(const Side& side) {
  if (side.whole) return side.beside;
  const Path part = part_between(side.reach, side.from, side.to);
  return part.empty() ? side.beside : part;
}

Path assembled(std::vector<Side>& sides, const std::vector<CutEdge>& edges) {
  const std::size_t count = sides.size();
  std::vector<Path> joints;
  for (std::size_t i = 0; i < count; ++i) {
    joints.push_back(join(sides[i], sides[(i + 1) % count], edges[i].at_end));
  }
  Path outline;
  for (std::size_t i = 0; i < count; ++i) {
    append(outline, used_part(sides[i]));
    append(outline, joints[i]);
  }
  append_line(outline, outline.start());
  return ending_at(without_straight_joints(outline), outline.start());
}

Path joined(const std::vector<CutEdge>& edges) {
  Path outline;
  for (const CutEdge& cut : edges) outline.add(cut.edge);
  return outline;
}

// Of a toile, behind the i-th edge.
CornerCut usual_corner(const std::vector<Length>& widths, std::size_t i) {
  if (widths[(i + 1) % widths.size()] == Length()) return CornerCut::TurnsBefore;
  return widths[i] == Length() ? CornerCut::TurnsAfter : CornerCut::Mitre;
}

}  // namespace

Path cut_line(const std::vector<CutEdge>& edges) {
  require(!edges.empty(), "an outline has edges");
  Length widest;
  for (const CutEdge& cut : edges) {
    require(cut.width >= Length(), "an allowance may not be negative");
    widest = std::max(widest, cut.width);
  }
  if (widest == Length()) return joined(edges);
  const double reach = reach_of(edges, widest.mm());
  std::vector<Side> sides;
  sides.reserve(edges.size());
  for (const CutEdge& cut : edges) sides.push_back(side_of(cut, reach));
  Path outline = assembled(sides, edges);
  if (!find_crossing(outline, kFlattening)) return outline;
  return positive_union(outline);
}

Path cut_line(const std::vector<Path>& edges, const std::vector<Length>& widths) {
  require(edges.size() == widths.size(), "an allowance for each edge");
  std::vector<CutEdge> cut;
  cut.reserve(edges.size());
  for (std::size_t i = 0; i < edges.size(); ++i) {
    cut.push_back({edges[i], widths[i], usual_corner(widths, i)});
  }
  return cut_line(cut);
}

}  // namespace blockwright
