#include "facing_lines.hpp"

#include "blockwright/geometry/fair_path.hpp"
#include "blockwright/geometry/intersections.hpp"
#include "blockwright/geometry/offset.hpp"

#include <algorithm>
#include <array>
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
// Between neckline and armhole the outer edge of a facing in one piece is an arch. It begins so far
// under the shoulder and where the parallels of both meet, and is so wide, all of the facing's
// width; it takes at most so much of a parallel, and of what is left of it. Ours.
constexpr double kArchUnderShoulder = 1.5;
constexpr double kArchUnderMeeting = 1.0;
constexpr double kArchSpan = 1.3;
constexpr double kShareOfParallel = 0.6;
// Where its feet run together less than so much of its span above them it is rounded under that
// corner, else it is half round: there both are equally high. Computed for equal feet.
constexpr double kPointedArch = 1.2;
// Steps along a line in search of a place, in mm.
constexpr double kArchStep = 2.0;
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

// Two lines that turn a corner, cut off or led on to the point where they meet.
bool meet_at_corner(Path& arriving, Path& leaving, double reach) {
  const Path longer = led_on(arriving, reach), earlier = reversed(led_on(reversed(leaving), reach));
  const auto at = meeting(longer, earlier, midpoint(arriving.end(), leaving.start()));
  if (!at) return false;
  arriving = ending_at(part_before(longer, at->on_a), at->point);
  leaving = starting_at(part_after(earlier, at->on_b), at->point);
  return true;
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
  if (end.how == LineEnd::OnFold || end.how == LineEnd::AtHem) {
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

// What the run is on the facing, before its ends are made.
Path rolled(const TracedEdge& traced, const FacingRun& run, double roll) {
  const Path line = line_of(traced, run.range);
  if (run.kind != FacingRun::Kind::Shoulder) return offset(line, -roll);
  return sub_path(line, {roll, length(line) - roll});
}

bool join_rolled(Path& before, Path& after, const FacingRun& from, const FacingRun& to,
                 double roll) {
  if (to.kind == FacingRun::Kind::Shoulder) {
    before = ending_at(std::move(before), after.start());
  } else if (from.kind == FacingRun::Kind::Shoulder) {
    after = starting_at(std::move(after), before.end());
  } else {
    return meet_at_corner(before, after, kLedOn * roll);
  }
  return true;
}

std::optional<std::vector<Path>> rolled_runs(const TracedEdge& traced,
                                             const std::vector<FacingRun>& runs,
                                             const FacingShape& shape) {
  std::vector<Path> lines;
  lines.reserve(runs.size());
  for (const FacingRun& run : runs) lines.push_back(rolled(traced, run, shape.roll));
  for (std::size_t i = 1; i < runs.size(); ++i) {
    if (!join_rolled(lines[i - 1], lines[i], runs[i - 1], runs[i], shape.roll)) return std::nullopt;
  }
  const Path last = line_of(traced, runs.back().range);
  const auto at_end = edge_end(lines.back(), {last, traced.after, shape.after}, shape.roll);
  if (!at_end) return std::nullopt;
  lines.back() = *at_end;
  const Path first = reversed(line_of(traced, runs.front().range));
  const auto at_start =
      edge_end(reversed(lines.front()), {first, traced.before, shape.before}, shape.roll);
  if (!at_start) return std::nullopt;
  lines.front() = reversed(*at_start);
  for (Path& line : lines) line = without_specks(std::move(line));
  return lines;
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

// How far along the line it is first so far from the shoulder, at most kShareOfParallel of it.
double clear_of_shoulder(const Path& line, const Path& shoulder, double off) {
  const double most = kShareOfParallel * length(line);
  double along = 0.0;
  while (along < most && nearest(shoulder, point_at_length(line, along)).distance < off) {
    along += kArchStep;
  }
  return std::min(along, most);
}

// Where an arch begins and ends, along two lines that come from the shoulder.
struct ArchFeet {
  double armhole = 0.0, neckline = 0.0;
};

// So far on, or as far as leaves enough of the line.
double further(const Path& line, double from, double by) {
  return from + std::min(by, kShareOfParallel * (length(line) - from));
}

// Below where the lines meet, and so far down that it is wide enough.
ArchFeet arch_feet(const Path& armhole, const Path& neckline, const Path& shoulder, double width) {
  const double under = kArchUnderShoulder * width, under_meeting = kArchUnderMeeting * width;
  ArchFeet feet{clear_of_shoulder(armhole, shoulder, under),
                clear_of_shoulder(neckline, shoulder, under)};
  for (const PathCrossing& hit : intersections(armhole, neckline)) {
    feet.armhole = std::max(
        feet.armhole, further(armhole, length(part_before(armhole, hit.on_a)), under_meeting));
    feet.neckline = std::max(
        feet.neckline, further(neckline, length(part_before(neckline, hit.on_b)), under_meeting));
  }
  const auto span = [&] {
    return distance(point_at_length(armhole, feet.armhole),
                    point_at_length(neckline, feet.neckline));
  };
  const double most = kArchSpan * width;
  const ArchFeet from = feet;
  for (double on = 0.0; on < most && span() < most; on += kArchStep) {
    feet = {further(armhole, from.armhole, on), further(neckline, from.neckline, on)};
  }
  return feet;
}

// Two lines that run towards each other, from the side up and down to the centre.
struct ArchSides {
  Path rising, falling;
};

// Between their ends.
Path arch_between(const ArchSides& sides) {
  const auto& [rising, falling] = sides;
  const Point from = rising.end(), to = falling.start();
  const Vec along = unit(to - from), leaving = end_tangent(rising);
  const Vec up = dot(leaving, left_of(along)) > 0.0 ? left_of(along) : right_of(along);
  const double span = distance(from, to);
  const auto peak = lines_meet(from, leaving, to, start_tangent(falling));
  const double height = peak ? dot(*peak - from, up) : 0.0;
  if (height > 0.0 && height < kPointedArch * span) {
    return Path({corner_curve(from, leaving, to, start_tangent(falling), kCircle)});
  }
  const std::array<Through, 3> round = {Through{from, leaving},
                                        Through{midpoint(from, to) + 0.5 * span * up, along},
                                        Through{to, start_tangent(falling)}};
  return fair_path(round);
}

// The parallel of the armhole and that of the neckline, each on its way from the shoulder.
Path arched(const Path& armhole, const Path& neckline, const Path& shoulder, double width) {
  const ArchFeet feet = arch_feet(armhole, neckline, shoulder, width);
  ArchSides sides{reversed(sub_path(armhole, {feet.armhole, length(armhole)})),
                  sub_path(neckline, {feet.neckline, length(neckline)})};
  const Path arch = arch_between(sides);
  append(sides.rising, arch);
  append(sides.rising, sides.falling);
  return sides.rising;
}

// What runs as far inside the edges as the facing is wide.
std::optional<Path> inner_parallel(const TracedEdge& traced, const std::vector<FacingRun>& runs,
                                   const FacingShape& shape) {
  Path whole;
  const FacingRun* before = nullptr;
  for (const FacingRun& run : runs) {
    if (run.kind != FacingRun::Kind::Shoulder) {
      const bool front = run.kind == FacingRun::Kind::OnFront;
      Path line = without_loops(
          offset(line_of(traced, run.range), -(front ? shape.front_width : shape.width)));
      if (whole.empty()) {
        whole = std::move(line);
      } else if (before->kind == FacingRun::Kind::Shoulder) {
        whole = arched(reversed(whole), line, line_of(traced, before->range), shape.width);
      } else {
        if (!meet_at_corner(whole, line, kLedOn * shape.width)) return std::nullopt;
        append(whole, line);
      }
    }
    before = &run;
  }
  return with_rounded_corners(whole, kRounding * shape.width);
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
std::optional<Path> end_at_centre(const Path& parallel, const Path& bound, double width,
                                  std::optional<double> asked) {
  const double half = 0.5 * kRounding * width;
  double depth = kDeepestAtCentre * width;
  Path whole = led_on(parallel, kLedOn * width);
  if (const auto led = led_to(parallel, width, bound)) {
    const Vec down = tangent_at_length(bound, led->along);
    depth = std::min(depth, led->along - half * dot(end_tangent(led->whole), down));
    whole = led->whole;
  }
  depth = asked.value_or(depth);
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
std::optional<Path> outer_end(const Path& parallel, const Path& bound, LineEnd how,
                              const FacingShape& shape) {
  const double width = shape.width;
  if (length(bound) <= width) return std::nullopt;
  if (how == LineEnd::AtHem) {
    const Path longer = led_on(parallel, kLedOn * width);
    const auto at = meeting(longer, bound, point_at_length(bound, width));
    if (!at) return std::nullopt;
    return ending_at(part_before(longer, at->on_a), at->point);
  }
  if (how != LineEnd::AtSeam) return end_at_centre(parallel, bound, width, shape.depth);
  const auto led = led_to(parallel, width, bound);
  if (!led) return std::nullopt;
  return end_at_seam(parallel, *led, bound, width);
}

}  // namespace

std::optional<FacingLines> facing_lines(const TracedEdge& traced,
                                        const std::vector<FacingRun>& runs,
                                        const FacingShape& shape) {
  const auto lines = rolled_runs(traced, runs, shape);
  const auto parallel = inner_parallel(traced, runs, shape);
  if (!lines || !parallel) return std::nullopt;
  auto outer = outer_end(*parallel, traced.after, shape.after, shape);
  if (outer) outer = outer_end(reversed(*outer), traced.before, shape.before, shape);
  if (!outer) return std::nullopt;
  return FacingLines{*lines, without_specks(reversed(*outer))};
}

}  // namespace blockwright
