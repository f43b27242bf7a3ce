#include "facing_lines.hpp"

#include "blockwright/geometry/intersections.hpp"
#include "blockwright/geometry/offset.hpp"

#include <algorithm>
#include <cmath>

namespace blockwright {
namespace {

// Beside an opening the roll runs out to nothing over so much of the edge, in mm. Ours.
constexpr double kRollRunsOut = 40.0;
// A sharper turn is a corner of the outer edge, and rounded.
constexpr Angle kCorner = Angle::degrees(8.0);
// How much of the edge beside a corner its rounding takes, of the facing's width. Ours.
constexpr double kRounding = 0.5;
// Fullness of a handle that rounds a right angle to a circle (corner_curve()).
constexpr double kCircle = 0.5523;
// Under a V the outer edge lies no deeper than this at the centre, of the facing's width. Ours.
constexpr double kDeepestAtCentre = 1.4;
// How far an edge is led on to the fold that it meets at a V, of the roll.
constexpr double kSteepest = 20.0;
// How far a line is led on to meet what it ends at, of the facing's width.
constexpr double kLedOn = 3.0;
// A line that ends within this of where it should is moved there, in mm.
constexpr double kCloseEnough = 0.3;

Path led_on(Path path, double by) {
  const Point end = path.end();
  path.add(Segment{end, end + by * end_tangent(path)});
  return path;
}

// Where the line's end meets the bound, or its straight way on: the meeting nearest to `near`.
std::optional<PathCrossing> meeting(const Path& longer, const Path& bound, Point near) {
  std::optional<PathCrossing> best;
  for (const PathCrossing& hit : intersections(longer, bound)) {
    if (!best || distance(hit.point, near) < distance(best->point, near)) best = hit;
  }
  return best;
}

// --- edge ---------------------------------------------------------------------------------------

// What the garment's edge ends at: a seam or centre, from there away.
struct GarmentEnd {
  Path line;  // the edge, towards that end
  Path bound;
  LineEnd how = LineEnd::AtSeam;
};

// The facing's edge beside its end.
std::optional<Path> edge_end(Path edge, const GarmentEnd& end, double roll) {
  if (end.how == LineEnd::AtSeam)
    return ending_at(std::move(edge), point_at_length(end.bound, roll));
  if (end.how == LineEnd::OnFold) {
    const Path longer = led_on(edge, kSteepest * roll);
    const auto at = meeting(longer, led_on(end.bound, kLedOn * roll), edge.end());
    if (!at) return std::nullopt;
    return ending_at(part_before(longer, at->on_a), at->point);
  }
  const double whole = length(edge);
  const double from = std::max(whole - kRollRunsOut, 0.5 * whole);
  const Vec leaving = tangent_at_length(edge, from);
  Path run_out = sub_path(edge, {0.0, from});
  run_out.add(fair_curve(run_out.end(), leaving, end.line.end(), end_tangent(end.line)));
  return run_out;
}

// --- outer edge ---------------------------------------------------------------------------------

// The first crossing of two strokes that is not their joint.
std::optional<PathCrossing> loop_at(const Path& path, std::size_t i, std::size_t j) {
  const Path a({path.curves()[i]}), b({path.curves()[j]});
  for (const PathCrossing& hit : intersections(a, b)) {
    const bool joint = j == i + 1 && distance(hit.point, a.end()) < 1e-6;
    if (!joint) return hit;
  }
  return std::nullopt;
}

// What the parallel loops back over, where the edge bends sharply, is cut off.
Path without_loops(Path path) {
  for (std::size_t i = 0; i < path.curves().size(); ++i) {
    for (std::size_t j = path.curves().size() - 1; j > i; --j) {
      const auto loop = loop_at(path, i, j);
      if (!loop) continue;
      Path cut = part_before(path, {i, loop->on_a.t});
      append(cut, part_after(path, {j, loop->on_b.t}));
      path = without_specks(std::move(cut));
      break;
    }
  }
  return path;
}

// The line between its corners.
std::vector<Path> between_corners(const Path& path) {
  std::vector<Path> runs(1);
  for (const Curve& curve : path.curves()) {
    if (!runs.back().empty()) {
      const Angle turn = turn_between(end_tangent(runs.back()), tangent_at(curve, 0.0));
      if (std::abs(turn.radians()) > kCorner.radians()) runs.emplace_back();
    }
    runs.back().add(curve);
  }
  return runs;
}

Path with_rounded_corners(const Path& path, double by) {
  const std::vector<Path> runs = between_corners(path);
  Path rounded = runs.front();
  for (std::size_t i = 1; i < runs.size(); ++i) {
    const double before = length(rounded), after = length(runs[i]);
    const double taken = std::min({by, 0.45 * before, 0.45 * after});
    rounded = sub_path(rounded, {0.0, before - taken});
    const Path rest = sub_path(runs[i], {taken, after});
    rounded.add(corner_curve(rounded.end(), end_tangent(rounded), rest.start(), start_tangent(rest),
                             kCircle));
    append(rounded, rest);
  }
  return rounded;
}

// Square to the bound at a place of it, arriving from where `from` lies.
Vec square_to(const Path& bound, double along, Point from) {
  const Vec square = left_of(tangent_at_length(bound, along));
  return dot(point_at_length(bound, along) - from, square) > 0.0 ? square : -square;
}

// A line that is led on until it meets what it ends at.
struct LedOn {
  Path whole;          // as far as the meeting
  double along = 0.0;  // of the bound, where they meet
};

std::optional<LedOn> led_to(const Path& parallel, double width, const Path& bound) {
  const Path longer = led_on(parallel, kLedOn * width), longer_bound = led_on(bound, width);
  const auto at = meeting(longer, longer_bound, point_at_length(bound, width));
  if (!at) return std::nullopt;
  return LedOn{part_before(longer, at->on_a), length(part_before(longer_bound, at->on_b))};
}

// At a seam: `width` along it, and square to it, so that front and back run on into each other.
Path end_at_seam(const Path& parallel, const LedOn& led, const Path& bound, double width) {
  const Point end = point_at_length(bound, width);
  if (std::abs(led.along - width) < kCloseEnough) return ending_at(led.whole, end);
  const double size = std::min(length(led.whole), length(parallel));
  Path line = sub_path(led.whole, {0.0, size - std::min(width, 0.5 * size)});
  line.add(fair_curve(line.end(), end_tangent(line), end, square_to(bound, width, line.end())));
  return line;
}

// At a centre: square to it, no deeper than a V needs. The parallel of a steep V may never meet it.
std::optional<Path> end_at_centre(const Path& parallel, const Path& bound, double width) {
  const double half = 0.5 * kRounding * width;
  double depth = kDeepestAtCentre * width;
  Path whole = led_on(parallel, kLedOn * width);
  if (const auto led = led_to(parallel, width, bound)) {
    const Vec down = tangent_at_length(bound, led->along);
    depth = std::min(depth, led->along - half * dot(end_tangent(led->whole), down));
    whole = led->whole;
  }
  if (depth <= 0.0 || depth >= length(bound)) return std::nullopt;
  const Point end = point_at_length(bound, depth);
  const auto hits = intersections(whole, end, left_of(tangent_at_length(bound, depth)));
  if (hits.empty()) return std::nullopt;
  const double corner = length(part_before(whole, hits.back().place));
  const double reach = std::max(distance(hits.back().point, end), half);
  Path line = sub_path(whole, {0.0, corner - std::min(reach, 0.6 * corner)});
  line.add(fair_curve(line.end(), end_tangent(line), end, square_to(bound, depth, line.end())));
  return line;
}

// Nothing where the line does not meet what it ends at, or that is too short.
std::optional<Path> outer_end(const Path& parallel, const Path& bound, LineEnd how, double width) {
  if (length(bound) <= width) return std::nullopt;
  if (how != LineEnd::AtSeam) return end_at_centre(parallel, bound, width);
  const auto led = led_to(parallel, width, bound);
  if (!led) return std::nullopt;
  return end_at_seam(parallel, *led, bound, width);
}

}  // namespace

std::optional<FacingLines> facing_lines(const TracedEdge& traced, const FacingShape& shape) {
  auto edge = edge_end(offset(traced.line, -shape.roll), {traced.line, traced.after, shape.after},
                       shape.roll);
  if (edge) {
    edge =
        edge_end(reversed(*edge), {reversed(traced.line), traced.before, shape.before}, shape.roll);
  }
  const Path parallel = with_rounded_corners(without_loops(offset(traced.line, -shape.width)),
                                             kRounding * shape.width);
  auto outer = outer_end(parallel, traced.after, shape.after, shape.width);
  if (outer) outer = outer_end(reversed(*outer), traced.before, shape.before, shape.width);
  if (!edge || !outer) return std::nullopt;
  return FacingLines{without_specks(reversed(*edge)), without_specks(reversed(*outer))};
}

}  // namespace blockwright
