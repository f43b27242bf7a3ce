#include "blockwright/geometry/intersections.hpp"
#include "moving.hpp"

#include <cmath>

namespace blockwright {
namespace {

constexpr double kLegSnap = 1e-9;  // mm

// The point that a turning placement leaves in place.
Point fixed_point(const Placement& turning, Angle by) {
  const double cotangent = 1.0 / std::tan(0.5 * by.radians());
  const Vec t = turning(Point{}) - Point{};
  return {0.5 * (t.x - cotangent * t.y), 0.5 * (t.y + cotangent * t.x)};
}

Vec axis_of(const Dart& dart) {
  return unit(unit(dart.legs[0] - dart.apex) + unit(dart.legs[1] - dart.apex));
}

// One dart of a group, in the frame in which all of the group is closed and what comes before it
// stays.
struct Planned {
  Point apex;
  Angle angle;
  PathPlace cut;
  double along = 0.0;
};

// Opens the darts one after another: `opened[i]` carries what lies behind dart i to its place.
std::vector<Placement> openings(const std::vector<Planned>& group) {
  std::vector<Placement> opened;
  Placement before;
  for (const Planned& dart : group) {
    before = Placement::turn(dart.angle, dart.apex).then(before);
    opened.push_back(before);
  }
  return opened;
}

std::vector<Planned> apexes_side_by_side(const Dart& one, const std::vector<DartShare>& shares,
                                         double spacing) {
  // Cloth between parallel darts tapers towards the edge by half of both their mouths.
  const Vec aside = left_of(axis_of(one));
  std::vector<Planned> group;
  double off = 0.0;
  for (std::size_t i = 0; i < shares.size(); ++i) {
    const Angle angle = shares[i].angle;
    if (i > 0) off += spacing + 0.5 * one.leg() * (shares[i - 1].angle + angle).radians();
    group.push_back({one.apex + off * aside, angle, {}, 0.0});
  }
  const Vec shift = one.apex - fixed_point(openings(group).back(), one.angle());
  for (Planned& dart : group) dart.apex = dart.apex + shift;
  return group;
}

// Cuts that are parallel to the one dart's axis once the darts are open.
bool find_cuts(const Path& edge, const Dart& one, std::vector<Planned>& group) {
  Angle opened;
  double last = 0.0;
  for (Planned& dart : group) {
    const Vec along = rotated(axis_of(one), -(opened + 0.5 * dart.angle));
    const auto hits = intersections(edge, dart.apex, along);
    const auto* cut =
        first_where(hits, [](const LineCrossing& hit) { return hit.along_line > 0.0; });
    if (cut == nullptr) return false;
    dart.cut = cut->place;
    dart.along = length(part_before(edge, dart.cut));
    if (dart.along <= last) return false;
    last = dart.along;
    opened = opened + dart.angle;
  }
  return last < length(edge);
}

Dart opened_dart(const Planned& plan, const Dart& one, const Placement& before,
                 const Placement& behind, Point cut) {
  Dart dart = one;
  dart.apex = before(plan.apex);
  dart.legs = {before(cut), behind(cut)};
  dart.peak = midpoint(dart.legs[0], dart.legs[1]);
  return held_back(dart, distance(one.apex, one.point));
}

// Marks keep their distance along the closed edge.
void renew_anchors(Opened& open, DartSpot one, const std::vector<Planned>& group) {
  const double before = length(open.edges[one.edge].stretches[one.dart]);
  const auto renew = [&](Anchor& anchor) {
    if (anchor.edge != one.edge || anchor.stretch < one.dart) return;
    if (anchor.stretch > one.dart + 1) {
      anchor.stretch += group.size() - 1;
      return;
    }
    const double along = anchor.along + (anchor.stretch == one.dart ? 0.0 : before);
    anchor.stretch = one.dart;
    anchor.along = along;
    for (std::size_t i = 0; i < group.size() && along > group[i].along; ++i) {
      anchor.stretch = one.dart + i + 1;
      anchor.along = along - group[i].along;
    }
  };
  change_anchors(open, renew);
}

}  // namespace

bool part_parallel(Opened& open, DartSpot one, const std::vector<DartShare>& shares,
                   double spacing) {
  OpenEdge& edge = open.edges[one.edge];
  const Dart dart = open.at(one);
  Path closed = edge.stretches[one.dart];
  append(closed, placed(edge.stretches[one.dart + 1], Placement::turn(-dart.angle(), dart.apex)),
         kLegSnap);
  std::vector<Planned> group = apexes_side_by_side(dart, shares, spacing);
  if (!find_cuts(closed, dart, group)) return false;
  renew_anchors(open, one, group);

  const std::vector<Placement> behind = openings(group);
  std::vector<Path> stretches = {part_before(closed, group.front().cut)};
  std::vector<Dart> darts;
  for (std::size_t i = 0; i < group.size(); ++i) {
    const Placement before = i == 0 ? Placement() : behind[i - 1];
    const Path strip = i + 1 < group.size() ? part_between(closed, group[i].cut, group[i + 1].cut)
                                            : part_after(closed, group[i].cut);
    darts.push_back(opened_dart(group[i], dart, before, behind[i], point_at(closed, group[i].cut)));
    darts.back().name = shares[i].name;
    stretches.push_back(placed(strip, behind[i]));
  }
  const auto here = static_cast<std::ptrdiff_t>(one.dart);
  edge.stretches.erase(edge.stretches.begin() + here, edge.stretches.begin() + here + 2);
  edge.stretches.insert(edge.stretches.begin() + here, stretches.begin(), stretches.end());
  edge.darts.erase(edge.darts.begin() + here);
  edge.darts.insert(edge.darts.begin() + here, darts.begin(), darts.end());
  return true;
}

void join_neighbours(Opened& open, DartSpot first, bool into_second) {
  const DartSpot second{first.edge, first.dart + 1};
  const Dart a = open.at(first), b = open.at(second);
  const Angle both = a.angle() + b.angle();
  const Placement total =
      Placement::turn(a.angle(), a.apex).then(Placement::turn(b.angle(), b.apex));
  Path& strip = open.edges[first.edge].stretches[second.dart];
  strip = placed(strip, into_second ? Placement::turn(-a.angle(), a.apex)
                                    : Placement::turn(b.angle(), b.apex));
  Dart one = into_second ? b : a;
  const double held = distance(one.apex, one.point);
  one.apex = fixed_point(total, both);
  const Point strip_end = strip.empty() ? (into_second ? a.legs[0] : b.legs[1])
                                        : (into_second ? strip.end() : strip.start());
  one.legs = into_second ? std::array{strip_end, b.legs[1]} : std::array{a.legs[0], strip_end};
  one.peak = midpoint(one.legs[0], one.legs[1]);
  open.at(into_second ? second : first) = held_back(one, held);
  Dart& gone = open.at(into_second ? first : second);
  gone.legs = into_second ? std::array{a.legs[0], a.legs[0]} : std::array{b.legs[1], b.legs[1]};
  join(open, into_second ? first : second);
}

}  // namespace blockwright
