#include "blockwright/layout/cut_line.hpp"

#include "blockwright/base/error.hpp"
#include "blockwright/geometry/intersections.hpp"
#include "blockwright/geometry/offset.hpp"
#include "blockwright/geometry/outline.hpp"
#include "blockwright/geometry/path_parts.hpp"
#include "positive_union.hpp"

#include <algorithm>
#include <cmath>
#include <optional>

namespace blockwright {
namespace {

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

// Where the end of an allowance, `end_line` from the corner outwards, meets its cut line.
std::optional<PathCrossing> meeting_with(const Side& side, const Path& end_line) {
  const Point corner = end_line.start();
  std::optional<PathCrossing> nearest_hit;
  for (const PathCrossing& hit : intersections(end_line, side.reach)) {
    if (distance(hit.point, corner) <= kMitreLimit * side.width) {
      nearest_hit = hit;
      break;
    }
  }
  return nearest_hit;
}

// The bare neighbour's mirror image in the stitch line, leaving the corner; empty where the image
// would fall inside the piece. `along` points along the stitch line away from the corner, `outward`
// away from the piece. It goes on straight for `reach` mm.
Path mirror_image(const Path& bare_from_corner, Vec along, Vec outward, double reach) {
  const Path image =
      placed(bare_from_corner, Placement::mirror_in(bare_from_corner.start(), along));
  if (dot(start_tangent(image), outward) <= 0.0) return {};
  Path longer = image;
  longer.add(Segment{image.end(), image.end() + reach * end_tangent(image)});
  return longer;
}

// The corner after `side`, whose neighbour is bare: sets where the cut line stops and returns what
// leads from there to the corner.
Path close_before_bare(Side& side, const Path& neighbour) {
  const Vec along = end_tangent(side.edge);
  const Path image = mirror_image(neighbour, -along, right_of(along), kMitreLimit * side.width);
  if (!image.empty()) {
    if (const auto hit = meeting_with(side, image)) {
      side.to = hit->on_b;
      return reversed(part_before(image, hit->on_a));
    }
  }
  return Path::through({side.beside.end(), neighbour.start()});
}

// The same at the corner before `side`: returns what leads from the corner to the cut line.
Path open_after_bare(const Path& neighbour, Side& side) {
  const Vec along = start_tangent(side.edge);
  const Path image =
      mirror_image(reversed(neighbour), along, right_of(along), kMitreLimit * side.width);
  if (!image.empty()) {
    if (const auto hit = meeting_with(side, image)) {
      side.from = hit->on_b;
      return part_before(image, hit->on_a);
    }
  }
  return Path::through({neighbour.end(), side.beside.start()});
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
  joints.reserve(count);
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
  sides.reserve(edges.size());
  for (std::size_t i = 0; i < edges.size(); ++i) sides.push_back(side_of(edges[i], widths[i].mm()));
  Path outline = assembled(sides);
  if (!find_crossing(outline, kFlattening)) return outline;
  return positive_union(outline, kFlattening);
}

}  // namespace blockwright
