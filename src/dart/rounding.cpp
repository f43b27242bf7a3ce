#include "rounding.hpp"

#include "blockwright/geometry/path_parts.hpp"

#include <algorithm>
#include <cmath>

namespace blockwright {
namespace {

// From memory of handbooks: flatten the corner over 4 to 6 cm, not deeper than 3 to 4 mm.
constexpr double kMostReach = 40.0;
constexpr double kMostDepth = 3.5;
// Reach at most this share of the way to the next corner or end.
constexpr double kShareOfLeg = 0.45;
// Handles reach this share of the way to the corner: rounder and deeper, or closer to the corner.
constexpr double kRound = 2.0 / 3.0;
constexpr double kClose = 0.92;
constexpr Angle kSmooth = Angle::degrees(0.01);

struct Corner {
  Point before, at, after;

  [[nodiscard]] Vec in() const { return unit(at - before); }
  [[nodiscard]] Vec out() const { return unit(after - at); }
  [[nodiscard]] Angle turn() const { return turn_between(in(), out()); }
};

// How both lines pass one apex.
struct Passing {
  double reach = 0.0;
  Point through;  // where both lines meet
  Vec along;      // their common direction there
  double depth = 0.0;
};

double depth_of(double reach, double turn, double fullness) {
  return reach * std::sin(0.5 * turn) / 4.0 * (1.0 + 3.0 * (1.0 - fullness));
}

Passing passing_of(const Corner& sharp, double room) {
  const double turn = std::abs(sharp.turn().radians());
  Passing passing;
  passing.reach = std::fmin(kMostReach, kShareOfLeg * room);
  const double at_least = depth_of(passing.reach, turn, kClose);
  if (at_least > kMostDepth) passing.reach *= kMostDepth / at_least;
  passing.depth = std::fmin(kMostDepth, depth_of(passing.reach, turn, kRound));
  passing.along = unit(sharp.in() + sharp.out());
  passing.through = sharp.at + passing.depth * unit(sharp.out() - sharp.in());
  return passing;
}

// A fair stroke between a leg and the point that both lines pass.
CubicCurve stroke(Point from, Vec leaving, Point to, Vec arriving) {
  const double third = distance(from, to) / 3.0;
  return {from, from + third * leaving, to - third * arriving, to};
}

void pass(Path& line, const Corner& corner, const Passing& passing,
          std::vector<double>& apex_places) {
  const Point from = corner.at - passing.reach * corner.in();
  const Point to = corner.at + passing.reach * corner.out();
  append_line(line, from);
  line.add(stroke(line.end(), corner.in(), passing.through, passing.along));
  apex_places.push_back(length(line));
  line.add(stroke(line.end(), passing.along, to, corner.out()));
}

Corner corner_at(const std::vector<Point>& points, std::size_t i) {
  return {points[i - 1], points[i], points[i + 1]};
}

// Adds the corner to both lines; returns how far it reaches.
double pass_both(SeamLines& lines, const Corner& centre, const Corner& side) {
  const double c = std::abs(centre.turn().radians()), s = std::abs(side.turn().radians());
  if (std::fmax(c, s) < kSmooth.radians()) {
    append_line(lines.centre, centre.at);
    append_line(lines.side, side.at);
    lines.centre_apexes.push_back(length(lines.centre));
    lines.side_apexes.push_back(length(lines.side));
    return 0.0;
  }
  const double room = std::min({distance(centre.at, centre.before), distance(centre.at, centre.after),
                                distance(side.at, side.before), distance(side.at, side.after)});
  const Passing passing = passing_of(c > s ? centre : side, room);
  pass(lines.centre, centre, passing, lines.centre_apexes);
  pass(lines.side, side, passing, lines.side_apexes);
  lines.deepest = std::fmax(lines.deepest, passing.depth);
  return passing.reach;
}

}  // namespace

SeamLines rounded_seam(const std::vector<Point>& centre, const std::vector<Point>& side) {
  SeamLines lines;
  lines.centre = Path({Segment{centre[0], between(centre[0], centre[1], 1e-3)}});
  lines.side = Path({Segment{side[0], between(side[0], side[1], 1e-3)}});
  const std::size_t last = centre.size() - 2;
  for (std::size_t i = 1; i <= last; ++i) {
    const double reach = pass_both(lines, corner_at(centre, i), corner_at(side, i));
    if (i == 1) lines.zone_from = distance(centre[0], centre[1]) - reach;
    if (i == last) lines.zone_to = distance(centre[last], centre[last + 1]) - reach;
  }
  append_line(lines.centre, centre.back());
  append_line(lines.side, side.back());
  lines.centre = without_straight_joints(lines.centre);
  lines.side = without_straight_joints(lines.side);
  return lines;
}

}  // namespace blockwright
