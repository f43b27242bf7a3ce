#include "smooth_seam.hpp"

#include "blockwright/geometry/solve.hpp"

#include <algorithm>
#include <array>
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
constexpr double kOwnBend = 10.0;
constexpr double kMostShareToBend = 0.7;
// What a level loses where the lines are rounded beside an apex, in mm; half of it is given there
// first. Ours: half a millimetre is less than a stitch line is wide.
constexpr double kRoundedOff = 0.8;
// No line of a seam turns sharper than about this radius, in mm, even where a level must lose more.
constexpr double kSharpest = 20.5;
// The side panel's line turns no sharper than about this radius beside the apex, in mm, while the
// centre panel's turns less.
constexpr double kFairRadius = 32.0;
constexpr double kFairBackRadius = 25.0;
// A bend outside the blade takes this share of the way to either side. Ours.
constexpr double kSweep = 0.48;
// Where it is let down, the seam turns over this share of the amount to either side of the waist.
constexpr double kLetDown = 0.9;
// A bend takes at least this share of the way between it and the turn beside the apex.
constexpr double kLeastOfRoom = 0.88;
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
  double given = 0.0;    // the angle for whose rounding the side panel is given something first
  bool in_one = false;   // one bend from the one straight part to the other
};

bool has_one_apex(const SeamCourse& course) {
  return distance(course.first.apex, course.second.apex) < 1e-6;
}

// Towards the waist, along the seam's lower dart.
Vec down(const SeamCourse& course) {
  return unit(midpoint(course.first.legs[0], course.first.legs[1]) - course.first.apex);
}

// A point of the centre panel's line next to a leg of a dart, on the side panel, as far from that
// panel's leg on its own level.
struct Legs {
  Point apex, of_centre, of_side;
};
Point level_on_side(const SeamCourse& course, const Legs& legs, Point p) {
  const Vec level = left_of(down(course));
  const auto on_leg = [&](Point end) {
    return lines_meet(legs.apex, end - legs.apex, p, level).value_or(legs.apex);
  };
  return p + (on_leg(legs.of_side) - on_leg(legs.of_centre));
}

// The same behind the second apex; where the side panel's levels have turned with its dart, by
// turning the point as well.
Point behind_on_side(const SeamCourse& course, Point p) {
  const Dart& dart = course.second;
  if (course.upright) return level_on_side(course, {dart.apex, dart.legs[1], dart.legs[0]}, p);
  return rotated_about(p, dart.apex, -dart.angle());
}

Point before_on_side(const SeamCourse& course, Point p) {
  const Dart& dart = course.first;
  return level_on_side(course, {dart.apex, dart.legs[0], dart.legs[1]}, p);
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

// How far a way leads towards the waist.
double towards_waist(const SeamCourse& course, Vec way) { return dot(way, down(course)); }

// How far below the seam's first passing the apexes of the darts that are taken up lie.
double to_own_bend(const SeamCourse& course, const Passing& passing) {
  double most = 0.0;
  for (const TakenUp& other : course.others) {
    most = std::fmax(most, towards_waist(course, other.apex - passing.at));
  }
  return most;
}

double angle_taken_up(const SeamCourse& course) {
  double sum = 0.0;
  for (const TakenUp& other : course.others) {
    sum += norm(other.by) / towards_waist(course, other.mouth - other.apex);
  }
  return sum;
}

double bend_towards(const SeamCourse& course, const Passing& passing, Point end, bool waist) {
  const double way = distance(passing.at, end);
  const double own = waist ? to_own_bend(course, passing) : 0.0;
  if (own > kOwnBend) return std::fmin(own, kMostShareToBend * way);
  return std::fmin(kToBend, kShareToBend * way);
}

// Nearly an arc of a circle between two tangents.
CubicCurve arc_between(Point from, Vec in, Point to, Vec out) {
  const double half = 0.5 * std::abs(turn_between(in, out).radians());
  if (half < 1e-9) return as_cubic(Segment{from, to});
  return corner_curve(from, in, to, out, 4.0 / 3.0 * std::tan(0.5 * half) / std::tan(half));
}

// What the line comes from and goes to.
struct Neighbours {
  Point before, behind;
};

// One wide bend whose middle passes outside the apex.
void sweep(Passing& here, const Neighbours& next) {
  const double aside = distance(here.apex, here.at);
  const Vec square = unit(here.at - here.apex);
  const auto bend = [&](double off) {
    here.at = here.apex + off * square;
    here.in = unit(here.at - next.before);
    here.out = unit(next.behind - here.at);
    here.to_bend_in = distance(next.before, here.at);
    here.to_bend_out = distance(here.at, next.behind);
    here.rounded = kSweep * std::fmin(here.to_bend_in, here.to_bend_out);
    const Path line({arc_between(here.at - here.rounded * here.in, here.in,
                                 here.at + here.rounded * here.out, here.out)});
    return dot(nearest(line, here.apex).point - here.apex, square) - aside;
  };
  here.in_one = true;
  bend(solve_between(bend, {-2.0 * aside, aside}, 1e-6));
}

// Where there is more room for a bend, more of it is made.
Vec passing_direction(const Passing& here, const Neighbours& next) {
  const auto& [before, behind] = next;
  const Vec in = here.at - before;
  const double share = here.to_bend_in / (here.to_bend_in + here.to_bend_out);
  return rotated(unit(in), share * turn_between(in, behind - here.at));
}

std::vector<Passing> passings(const SeamCourse& course) {
  std::vector<Passing> all = places(course);
  for (std::size_t i = 0; i < all.size(); ++i) {
    Passing& here = all[i];
    const bool starts = i == 0, ends = i + 1 == all.size();
    const Point before = starts ? course.first.legs[0] : all[i - 1].at;
    const Point behind = ends ? course.second.legs[1] : all[i + 1].at;
    if (ends && course.round_second) {
      sweep(here, {before, behind});
      continue;
    }
    here.given = here.angle;
    if (starts && to_own_bend(course, here) <= kOwnBend) {
      here.angle += angle_taken_up(course);
      here.given += 0.5 * angle_taken_up(course);
    }
    here.rounded =
        std::fmax(4.0 * kRoundedOff / here.angle, kSharpest * std::tan(0.25 * here.angle));
    const double radius = has_one_apex(course) ? kFairRadius : kFairBackRadius;
    const double on_side = std::clamp(2.0 * here.rounded / radius, 0.5 * here.angle, here.angle);
    const double on_centre = here.angle - on_side;
    here.to_bend_in = bend_towards(course, here, before, starts);
    here.to_bend_out = bend_towards(course, here, behind, false);
    const Vec along = passing_direction(here, {before, behind});
    here.in = rotated(along, Angle::radians(-0.5 * on_centre));
    here.out = rotated(along, Angle::radians(0.5 * on_centre));
    here.rounded = std::fmin(here.rounded, 0.4 * std::fmin(here.to_bend_in, here.to_bend_out));
  }
  return all;
}

// By how much a place of the side panel's line moves where other darts are taken up: by all at the
// waist, by nothing at the level of their apexes.
Vec taken_up(const SeamCourse& course, Point p, bool on_beyond) {
  Vec by;
  for (const TakenUp& other : course.others) {
    const double share =
        towards_waist(course, p - other.apex) / towards_waist(course, other.mouth - other.apex);
    by = by + (on_beyond ? share : std::fmax(share, 0.0)) * other.by;
  }
  return by;
}

// A straight part of the side panel's line next to an apex.
struct Leg {
  Point bend, end;
};

enum class Way { In, Out };

Leg side_leg(const SeamCourse& course, const Passing& here, Way way, bool outermost) {
  const bool in = way == Way::In;
  const Point bend =
      in ? here.at - here.to_bend_in * here.in : here.at + here.to_bend_out * here.out;
  if (!outermost) return {bend, here.at};
  if (!in) return {behind_on_side(course, bend), behind_on_side(course, here.at)};
  Leg leg{before_on_side(course, bend), before_on_side(course, here.at)};
  const bool own = to_own_bend(course, here) > kOwnBend;
  leg.bend = leg.bend + taken_up(course, leg.bend, !own);
  leg.end = leg.end + taken_up(course, leg.end, !own);
  return leg;
}

// Where the side panel's straight parts meet beside an apex, a little nearer to the centre: what is
// rounded off there is given at first.
Point side_corner(const std::array<Leg, 2>& legs, double given) {
  const auto& [in, out] = legs;
  const Vec before = unit(in.end - in.bend), behind = unit(out.bend - out.end);
  const Vec square = right_of(half_way(before, behind));
  if (std::abs(turn_between(before, behind).radians()) < kStraight)
    return midpoint(in.end, out.end);
  return lines_meet(in.bend, before, out.bend, behind).value_or(in.end) - given * square;
}

struct Lines {
  std::vector<Turning> centre, side;
};

// How far to either side a bend is rounded. Beside its apex the side panel's line is shorter.
double bend_reach(const Passing& here, double to_bend) {
  const double room = to_bend - here.rounded;
  return std::fmax(kLeastOfRoom * room, room - here.angle * distance(here.at, here.apex));
}

// The first bend of the side panel's line. Where darts that are taken up bend it as well, it lies a
// little nearer to the centre: what is rounded off there is given first.
Point bent_once_more(const SeamCourse& course, const Passing& here, const Leg& in, double reach) {
  if (to_own_bend(course, here) <= kOwnBend) return in.bend;
  return in.bend - 0.125 * reach * angle_taken_up(course) * right_of(unit(in.end - in.bend));
}

// Below the waist the side panel's line goes straight down, or as nearly so as it may turn.
void let_down(const SeamCourse& course, std::vector<Turning>& side) {
  const Point waist = side[0].at;
  const Vec leg = unit(waist - side[1].at);
  if (course.let_down <= 0.0) {
    side[0].at = waist + course.let_down * leg;
    return;
  }
  const double reach = kLetDown * course.let_down;
  const double most = 2.0 * std::atan(reach / kSharpest);
  const double lean = std::clamp(turn_between(leg, down(course)).radians(), -most, most);
  side[0].reach = reach;
  side.insert(side.begin(), {waist + course.let_down * rotated(leg, Angle::radians(lean))});
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

// What is opposite each other on both lines is rounded alike.
void leave_room(Lines& lines) {
  leave_room(lines.centre);
  leave_room(lines.side);
  for (std::size_t i = 0; i < lines.side.size(); ++i) {
    double &centre = lines.centre[i].reach, &side = lines.side[i].reach;
    centre = side = std::fmin(centre, side);
  }
}

Lines turnings(const SeamCourse& course) {
  const std::vector<Passing> all = passings(course);
  const Dart &first = course.first, &second = course.second;
  const Point waist = first.legs[1] + taken_up(course, first.legs[1], false);
  Lines lines{{{first.legs[0]}}, {{waist}}};
  for (std::size_t i = 0; i < all.size(); ++i) {
    const Passing& here = all[i];
    const Leg in = side_leg(course, here, Way::In, i == 0);
    const Leg out = side_leg(course, here, Way::Out, i + 1 == all.size());
    const double before = bend_reach(here, here.to_bend_in);
    const double behind = bend_reach(here, here.to_bend_out);
    if (here.in_one) {
      lines.centre.push_back({here.at, here.rounded});
      lines.side.push_back({side_corner({in, out}, 0.0), here.rounded});
      continue;
    }
    lines.centre.push_back({here.at - here.to_bend_in * here.in, before});
    lines.centre.push_back({here.at, here.rounded});
    lines.centre.push_back({here.at + here.to_bend_out * here.out, behind});
    lines.side.push_back({i == 0 ? bent_once_more(course, here, in, before) : in.bend, before});
    lines.side.push_back({side_corner({in, out}, 0.125 * here.rounded * here.given), here.rounded});
    lines.side.push_back({out.bend, behind});
  }
  lines.centre.push_back({second.legs[1]});
  lines.side.push_back({second.legs[0]});
  leave_room(lines);
  let_down(course, lines.side);
  return lines;
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
