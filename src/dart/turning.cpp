#include "blockwright/geometry/path_parts.hpp"
#include "moving.hpp"
#include "part.hpp"

namespace blockwright {
namespace {

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

void shift_between(Opened& open, DartSpot first, DartSpot second, Vec by) {
  move_between(open, first, second, Placement::shift(by));
}

void turn_between(Opened& open, DartSpot first, DartSpot second, Angle turn) {
  move_between(open, first, second, Placement::turn(turn, open.at(first).apex));
  reshape(open.at(first));
  reshape(open.at(second));
}

}  // namespace blockwright
