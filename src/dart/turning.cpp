#include "blockwright/geometry/intersections.hpp"
#include "moving.hpp"

#include <algorithm>

namespace blockwright {
namespace {

// A point this near to the outline is on it, in mm.
constexpr double kOnOutline = 1e-6;
constexpr double kFlattening = 0.01;

bool is_new_cut(const Dart& dart, Point p) {
  return dart.legs[0] == dart.legs[1] && distance(dart.legs[0], p) < kOnOutline;
}

bool in_mouth(const Dart& dart, Point p) {
  const Vec to = p - dart.apex, first = dart.legs[0] - dart.apex, second = dart.legs[1] - dart.apex;
  return cross(first, second) > 0.0 && cross(first, to) > 0.0 && cross(to, second) > 0.0 &&
         norm(to) < dart.leg();
}

bool on_leg(const Dart& dart, std::size_t leg, Point p) {
  return nearest(Path::through({dart.apex, dart.legs[leg]}), p).distance < kOnOutline;
}

std::vector<PathPlace> crossings_of(const Path& line, const Part& part) {
  std::vector<PathPlace> places = {{0, 0.0}};
  for (const Path& border : part.borders()) {
    for (const PathCrossing& hit : intersections(line, border)) places.push_back(hit.on_a);
  }
  places.push_back({line.curves().size() - 1, 1.0});
  std::sort(places.begin(), places.end(), comes_before);
  return places;
}

// The starts of the stretches between two darts, in order.
std::vector<Anchor> stretches_between(const Opened& open, DartSpot first, DartSpot second) {
  std::vector<Anchor> starts;
  for (std::size_t e = first.edge; e <= second.edge; ++e) {
    const std::size_t from = e == first.edge ? first.dart + 1 : 0;
    const std::size_t to = e == second.edge ? second.dart + 1 : open.edges[e].stretches.size();
    for (std::size_t i = from; i < to; ++i) starts.push_back({e, i, 0.0});
  }
  return starts;
}

// Parts that lie in a mouth only lead across it and are drawn anew.
Path turned_line(const Path& line, const Part& part, const Placement& turning) {
  Path result;
  for (const auto& [path, where] : parted(line, part)) {
    if (where == Part::Where::Mouth) continue;
    append(result, where == Part::Where::Inside ? placed(path, turning) : path);
  }
  return result.empty() ? line : without_straight_joints(std::move(result));
}

void turn_inside(Piece& piece, const Part& part, const Placement& turning) {
  for (Landmark& landmark : piece.landmarks) {
    if (part.holds(landmark.at)) landmark.at = turning(landmark.at);
  }
  for (BalanceLine& line : piece.balance_lines) {
    line.path = turned_line(line.path, part, turning);
  }
}

void turn_outline(Opened& open, DartSpot first, DartSpot second, const Placement& turning) {
  for (const Anchor& at : stretches_between(open, first, second)) {
    OpenEdge& edge = open.edges[at.edge];
    edge.stretches[at.stretch] = placed(edge.stretches[at.stretch], turning);
    if (at.stretch == 0 || DartSpot{at.edge, at.stretch - 1} == first) continue;
    Dart& before = edge.darts[at.stretch - 1];
    before = placed(before, turning);
  }
}

// After a leg has turned: the point keeps its distance from the apex, the peak follows the legs.
void reshape(Dart& dart) {
  dart = held_back(dart, distance(dart.apex, dart.point));
  dart.peak = midpoint(dart.legs[0], dart.legs[1]);
}

void move_between(Opened& open, DartSpot first, DartSpot second, const Placement& moving) {
  turn_inside(open.piece, Part(open, first, second), moving);
  turn_outline(open, first, second, moving);
  open.at(first).legs[1] = moving(open.at(first).legs[1]);
  open.at(second).legs[0] = moving(open.at(second).legs[0]);
}

}  // namespace

Part::Part(const Opened& open, DartSpot first, DartSpot second)
    : first_(open.at(first)),
      second_(open.at(second)),
      ring_(Path::through({first_.apex, first_.legs[1]})) {
  for (const Anchor& at : stretches_between(open, first, second)) {
    const Path& stretch = open.edges[at.edge].stretches[at.stretch];
    if (stretch.empty()) continue;
    stretches_.push_back(stretch);
    append(ring_, stretch, kJointTolerance);
  }
  append_line(ring_, second_.legs[0], kJointTolerance);
  append_line(ring_, second_.apex, kJointTolerance);
  append_line(ring_, first_.apex, kJointTolerance);
}

Part::Where Part::where(Point p) const {
  if (is_new_cut(first_, p) || is_new_cut(second_, p)) return Where::Outside;
  for (const Path& stretch : stretches_) {
    if (nearest(stretch, p).distance < kOnOutline) return Where::Inside;
  }
  // A line drawn along a leg goes where the leg goes.
  const bool on_turning_leg = on_leg(first_, 1, p) || on_leg(second_, 0, p);
  const bool on_staying_leg = on_leg(first_, 0, p) || on_leg(second_, 1, p);
  if (on_turning_leg != on_staying_leg) return on_turning_leg ? Where::Inside : Where::Outside;
  if (in_mouth(first_, p) || in_mouth(second_, p)) return Where::Mouth;
  return contains(ring_, p, kFlattening) ? Where::Inside : Where::Outside;
}

bool Part::is_apex(Point p) const {
  return distance(p, first_.apex) < kOnOutline || distance(p, second_.apex) < kOnOutline;
}

std::vector<Path> Part::borders() const {
  std::vector<Path> borders = {Path::through({first_.legs[0], first_.apex, first_.legs[1]}),
                               Path::through({second_.legs[0], second_.apex, second_.legs[1]})};
  if (distance(first_.apex, second_.apex) > kOnOutline) {
    borders.push_back(Path::through({first_.apex, second_.apex}));
  }
  return borders;
}

std::vector<std::pair<Path, Part::Where>> parted(const Path& line, const Part& part) {
  std::vector<std::pair<Path, Part::Where>> parts;
  const std::vector<PathPlace> places = crossings_of(line, part);
  for (std::size_t i = 0; i + 1 < places.size(); ++i) {
    const Path piece = part_between(line, places[i], places[i + 1]);
    if (piece.empty() || length(piece) < kOnOutline) continue;
    parts.emplace_back(piece, part.where(point_at_length(piece, 0.5 * length(piece))));
  }
  return parts;
}

void shift_between(Opened& open, DartSpot first, DartSpot second, Vec by) {
  move_between(open, first, second, Placement::shift(by));
}

void turn_between(Opened& open, DartSpot first, DartSpot second, Angle turn) {
  move_between(open, first, second, Placement::turn(turn, open.at(first).apex));
  reshape(open.at(first));
  reshape(open.at(second));
}

}  // namespace blockwright
