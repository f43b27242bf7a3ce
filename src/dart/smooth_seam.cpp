#include "smooth_seam.hpp"

#include "blockwright/geometry/solve.hpp"

#include <algorithm>
#include <cmath>
#include <cstddef>

namespace blockwright {
namespace {

// The middles of the bends before and behind an apex are this far from it, in mm: together they
// make a bend of 80 to 100 mm. From memory of handbooks.
constexpr double kToBend = 45.0;
// ... and at most this share of the way to the seam's end.
constexpr double kShareToBend = 0.45;
// A dart that the seam takes up bends it at its own apex, where that is further than this from the
// seam's, in mm.
constexpr double kOwnBend = 15.0;
constexpr double kMostShareToBend = 0.7;
// At the apex a level gains at most this, and loses as much where the lines are rounded, in mm.
// Ours: half a millimetre is less than a stitch line is wide.
constexpr double kGivenAside = 0.4;
constexpr double kRoundedOff = 2.0 * kGivenAside + 0.1;
// The side panel's line turns no sharper than about this radius beside the apex, in mm, while the
// centre panel's turns less.
constexpr double kFairRadius = 32.0;
// A bend outside the blade takes this share of the way to either side. Ours.
constexpr double kSweep = 0.48;
constexpr double kStraight = 0.02;  // radians: no corner to speak of

// A corner of a line, and how far to either side it is rounded, in mm.
struct Turning {
  Point at;
  double reach = 0.0;
};

// An apex, and where and how the centre panel's line passes it.
struct Passing {
  Point apex;
  double angle = 0.0;  // of the darts that end here, in radians
  Point at;
  Vec in, out;  // directions before and behind the turn beside the apex
  double to_bend_in = 0.0, to_bend_out = 0.0;
  double rounded = 0.0;  // reach of the turn beside the apex
  bool in_one = false;   // one bend from the one straight part to the other
};

bool has_one_apex(const SeamCourse& course) {
  return distance(course.first.apex, course.second.apex) < 1e-6;
}

// Where what is drawn on the centre panel before the first apex, or behind the second, lies on the
// side panel.
Placement opened_by(const SeamCourse& course, bool first) {
  return first ? Placement::turn(course.first.angle(), course.first.apex)
               : Placement::turn(-course.second.angle(), course.second.apex);
}

Vec half_way(Vec a, Vec b) { return unit(unit(a) + unit(b)); }

// The points beside the apexes, square to the seam through them.
std::vector<Passing> places(const SeamCourse& course) {
  const Dart &first = course.first, &second = course.second;
  const Vec up = half_way(first.apex - first.legs[0], first.apex - first.legs[1]);
  const Vec on = half_way(second.legs[0] - second.apex, second.legs[1] - second.apex);
  const double a = first.angle().radians(), b = second.angle().radians();
  if (has_one_apex(course)) {
    const Vec square = right_of(half_way(up, on));
    return {{first.apex, a + b, first.apex + course.aside_first * square, {}, {}}};
  }
  const Vec between = second.apex - first.apex;
  const Vec at_first = right_of(half_way(up, between)), at_second = right_of(half_way(between, on));
  return {{first.apex, a, first.apex + course.aside_first * at_first, {}, {}},
          {second.apex, b, second.apex + course.aside_second * at_second, {}, {}}};
}

// How far beyond its own apex a dart that is taken up lies from the seam's.
double to_own_bend(const SeamCourse& course, const Passing& passing, Vec to_waist) {
  double most = 0.0;
  for (const TakenUp& other : course.others) {
    most = std::fmax(most, dot(other.apex - passing.at, to_waist));
  }
  return most;
}

double bend_towards(const SeamCourse& course, const Passing& passing, Point end, bool waist) {
  const double way = distance(passing.at, end);
  const double own = waist ? to_own_bend(course, passing, unit(end - passing.at)) : 0.0;
  if (own > kOwnBend) return std::fmin(own, kMostShareToBend * way);
  return std::fmin(kToBend, kShareToBend * way);
}

// Nearly an arc of a circle between two tangents.
CubicCurve arc_between(Point from, Vec in, Point to, Vec out) {
  const double half = 0.5 * std::abs(turn_between(in, out).radians());
  if (half < 1e-9) return as_cubic(Segment{from, to});
  return corner_curve(from, in, to, out, 4.0 / 3.0 * std::tan(0.5 * half) / std::tan(half));
}

// One wide bend whose middle passes outside the apex.
void sweep(Passing& here, Point before, Point behind) {
  const double aside = distance(here.apex, here.at);
  const Vec square = unit(here.at - here.apex);
  const auto bend = [&](double off) {
    here.at = here.apex + off * square;
    here.in = unit(here.at - before);
    here.out = unit(behind - here.at);
    here.to_bend_in = distance(before, here.at);
    here.to_bend_out = distance(here.at, behind);
    here.rounded = kSweep * std::fmin(here.to_bend_in, here.to_bend_out);
    const Path line({arc_between(here.at - here.rounded * here.in, here.in,
                                 here.at + here.rounded * here.out, here.out)});
    return dot(nearest(line, here.apex).point - here.apex, square) - aside;
  };
  here.in_one = true;
  bend(solve_between(bend, {-2.0 * aside, aside}, 1e-6));
}

std::vector<Passing> passings(const SeamCourse& course) {
  std::vector<Passing> all = places(course);
  for (std::size_t i = 0; i < all.size(); ++i) {
    Passing& here = all[i];
    const bool starts = i == 0, ends = i + 1 == all.size();
    const Point before = starts ? course.first.legs[0] : all[i - 1].at;
    const Point behind = ends ? course.second.legs[1] : all[i + 1].at;
    const double on_centre = std::clamp(
        here.angle - 2.0 * kRoundedOff * 4.0 / here.angle / kFairRadius, 0.0, 0.5 * here.angle);
    if (i == 1 && course.aside_first != course.aside_second) {
      sweep(here, before, behind);
      continue;
    }
    const Vec along = half_way(here.at - before, behind - here.at);
    here.in = rotated(along, Angle::radians(-0.5 * on_centre));
    here.out = rotated(along, Angle::radians(0.5 * on_centre));
    here.to_bend_in = bend_towards(course, here, before, starts);
    here.to_bend_out = bend_towards(course, here, behind, false);
    here.rounded = std::fmin(4.0 * kRoundedOff / here.angle,
                             0.4 * std::fmin(here.to_bend_in, here.to_bend_out));
  }
  return all;
}

// By how much a place of the side panel's line moves where other darts are taken up: by all at the
// waist, by nothing at the level of their apexes.
Vec taken_up(const SeamCourse& course, Point p, bool on_beyond) {
  Vec by;
  for (const TakenUp& other : course.others) {
    const Vec down = other.mouth - other.apex;
    const double share = dot(p - other.apex, down) / dot(down, down);
    by = by + (on_beyond ? share : std::fmax(share, 0.0)) * other.by;
  }
  return by;
}

// A straight part of the side panel's line next to an apex.
struct Leg {
  Point bend, end;
};

Leg side_leg(const SeamCourse& course, const Passing& here, bool in, bool outermost) {
  const Point bend =
      in ? here.at - here.to_bend_in * here.in : here.at + here.to_bend_out * here.out;
  if (!outermost) return {bend, here.at};
  const Placement open = opened_by(course, in);
  Leg leg{open(bend), open(here.at)};
  if (!in) return leg;
  const bool own = to_own_bend(course, here, unit(leg.bend - leg.end)) > kOwnBend;
  leg.bend = leg.bend + taken_up(course, leg.bend, !own);
  leg.end = leg.end + taken_up(course, leg.end, !own);
  return leg;
}

// Where the side panel's straight parts meet beside an apex, a little nearer to the centre: what is
// rounded off there is given at first.
Point side_corner(const Leg& in, const Leg& out, double given) {
  const Vec before = unit(in.end - in.bend), behind = unit(out.bend - out.end);
  const Vec square = right_of(half_way(before, behind));
  if (std::abs(turn_between(before, behind).radians()) < kStraight)
    return midpoint(in.end, out.end);
  return lines_meet(in.bend, before, out.bend, behind).value_or(in.end) - given * square;
}

struct Lines {
  std::vector<Turning> centre, side;
};

Lines turnings(const SeamCourse& course) {
  const std::vector<Passing> all = passings(course);
  const Dart &first = course.first, &second = course.second;
  const Vec at_waist = taken_up(course, first.legs[1], false) + course.let_down;
  Lines lines{{{first.legs[0]}}, {{first.legs[1] + at_waist}}};
  for (std::size_t i = 0; i < all.size(); ++i) {
    const Passing& here = all[i];
    const Leg in = side_leg(course, here, true, i == 0);
    const Leg out = side_leg(course, here, false, i + 1 == all.size());
    const double before = here.to_bend_in - here.rounded, behind = here.to_bend_out - here.rounded;
    if (here.in_one) {
      lines.centre.push_back({here.at, here.rounded});
      lines.side.push_back({side_corner(in, out, 0.0), here.rounded});
      continue;
    }
    lines.centre.push_back({here.at - here.to_bend_in * here.in, before});
    lines.centre.push_back({here.at, here.rounded});
    lines.centre.push_back({here.at + here.to_bend_out * here.out, behind});
    lines.side.push_back({in.bend, before});
    lines.side.push_back({side_corner(in, out, kGivenAside), here.rounded});
    lines.side.push_back({out.bend, behind});
  }
  lines.centre.push_back({second.legs[1]});
  lines.side.push_back({second.legs[0]});
  return lines;
}

// Corners next to each other share the way between them in proportion.
void leave_room(std::vector<Turning>& line) {
  std::vector<double> room(line.size(), 1.0);
  for (std::size_t i = 0; i + 1 < line.size(); ++i) {
    const double way = 0.999 * distance(line[i].at, line[i + 1].at);
    const double wanted = line[i].reach + line[i + 1].reach;
    const double share = wanted > way ? way / wanted : 1.0;
    room[i] = std::fmin(room[i], share);
    room[i + 1] = std::fmin(room[i + 1], share);
  }
  for (std::size_t i = 0; i < line.size(); ++i) line[i].reach *= room[i];
}

Path rounded(std::vector<Turning> line) {
  leave_room(line);
  Path path;
  Point end = line.front().at;
  for (std::size_t i = 1; i + 1 < line.size(); ++i) {
    const Vec in = unit(line[i].at - line[i - 1].at), out = unit(line[i + 1].at - line[i].at);
    const Point from = line[i].at - line[i].reach * in, to = line[i].at + line[i].reach * out;
    path.add(Segment{end, from});
    path.add(arc_between(from, in, to, out));
    end = to;
  }
  path.add(Segment{end, line.back().at});
  return without_specks(path);
}

}  // namespace

SeamLines smooth_seam(const SeamCourse& course) {
  const Lines lines = turnings(course);
  SeamLines seam;
  seam.centre = rounded(lines.centre);
  seam.side = rounded(lines.side);
  const auto pass = [&](Point apex) {
    seam.centre_apexes.push_back(nearest(seam.centre, apex).along);
    seam.side_apexes.push_back(nearest(seam.side, apex).along);
  };
  pass(course.first.apex);
  if (!has_one_apex(course)) pass(course.second.apex);
  seam.zone_from = std::fmin(seam.centre_apexes.front(), seam.side_apexes.front());
  seam.zone_to = std::fmin(length(seam.centre) - seam.centre_apexes.back(),
                           length(seam.side) - seam.side_apexes.back());
  for (const Passing& here : passings(course)) {
    seam.bulge = std::fmax(seam.bulge, nearest(seam.centre, here.apex).distance);
  }
  return seam;
}

}  // namespace blockwright
