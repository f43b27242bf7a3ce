// A small change of the tape makes a small change of the pieces: no jumps.
#include "support/blocks.hpp"
#include "support/each_person.hpp"
#include "support/people.hpp"

#include <catch2/catch.hpp>

#include <cmath>

using namespace blockwright;

namespace {

constexpr double kNudge = 0.1;        // mm
constexpr double kSlopeNudge = 0.04;  // degrees: 0.1 mm at the end of a shoulder of 145 mm
constexpr double kMost = 2.0;         // mm

/// Points every quarter of each stroke of an edge.
std::vector<Point> sampled(const Path& path) {
  std::vector<Point> points;
  for (const Curve& curve : path.curves()) {
    for (const double t : {0.0, 0.25, 0.5, 0.75, 1.0}) points.push_back(point_at(curve, t));
  }
  return points;
}

double farthest(const Path& a, const Path& b) {
  double most = 0.0;
  for (const Point& p : sampled(a)) most = std::fmax(most, nearest(b, p).distance);
  for (const Point& p : sampled(b)) most = std::fmax(most, nearest(a, p).distance);
  return most;
}

double moved(const Pattern& before, const Pattern& after) {
  double most = 0.0;
  for (const Piece& piece : before.pieces) {
    const Piece& other = after.piece(piece.name);
    for (const Edge& edge : piece.edges) {
      most = std::fmax(most, farthest(edge.path, other.edge(edge.name).path));
    }
    for (const Landmark& landmark : piece.landmarks) {
      most = std::fmax(most, distance(landmark.at, other.landmark(landmark.name)));
    }
  }
  return most;
}

}  // namespace

TEST_CASE("Moving any measurement by 0.1 mm moves no point of the outline by more than 2 mm") {
  // Edges are compared as drawn lines: where a back waist dart of 35 mm becomes two, its legs move
  // along the waist edge, which itself hardly moves.
  int compared = 0;
  double worst = 0.0;
  for (const Session& session : each_person(250, 5)) {
    const Pattern before = checked_block(session).block.pattern;
    for (const MeasurementInfo& entry : measurement_catalogue()) {
      if (!session.tape[entry.name]) continue;
      Session nudged = session;
      const double by_tape = entry.kind == MeasurementKind::Angle ? kSlopeNudge : kNudge;
      tape(nudged, entry.name, session.tape[entry.name]->median().number() + by_tape);
      const double by = moved(before, checked_block(nudged).block.pattern);
      INFO(entry.key << " moved the outline by " << by << " mm");
      CHECK(by <= kMost);
      worst = std::fmax(worst, by);
      ++compared;
    }
  }
  CHECK(compared > 4000);
  CHECK(worst > 0.0);
}
