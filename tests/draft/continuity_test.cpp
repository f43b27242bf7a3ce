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

/// How far the outline moves at most, and how many measurements were nudged to see it.
struct Nudged {
  int compared = 0;
  double worst = 0.0;
};

/// Nudges every taped value of a session. Edges are compared as drawn lines: where a back waist
/// dart of 35 mm becomes two, its legs move along the waist edge, which itself hardly moves.
void nudge_each(const Session& session, Nudged& nudged) {
  const Pattern before = checked_block(session).block.pattern;
  for (const MeasurementInfo& entry : measurement_catalogue()) {
    if (!session.tape[entry.name]) continue;
    Session other = session;
    const double by_tape = entry.kind == MeasurementKind::Angle ? kSlopeNudge : kNudge;
    tape(other, entry.name, session.tape[entry.name]->median().number() + by_tape);
    const double by = moved(before, checked_block(other).block.pattern);
    INFO(entry.key << " moved the outline by " << by << " mm");
    CHECK(by <= kMost);
    nudged.worst = std::fmax(nudged.worst, by);
    ++nudged.compared;
  }
}

}  // namespace

TEST_CASE("Moving any measurement by 0.1 mm moves no point of the outline by more than 2 mm") {
  Nudged nudged;
  const int count = people(250);
  for (const Session& session : each_person(count, 5)) nudge_each(session, nudged);
  CHECK(nudged.compared > 16 * count);
  CHECK(nudged.worst > 0.0);
}

TEST_CASE("The same holds for the smallest and the largest people") {
  Nudged nudged;
  for (const int bust : {720, 1080, 1160, 1240, 1320, 1400}) {
    for (const Session& session : each_at_bust(bust, 6, 16)) nudge_each(session, nudged);
  }
  CHECK(nudged.compared > 500);
  CHECK(nudged.worst > 0.0);
}

TEST_CASE("The same holds for the bust alone, also where the survey ends at 740 and 1170 mm") {
  Nudged nudged;
  for (double bust = 700.0; bust <= 1500.0; bust += 12.5) nudge_each(bust_only(bust), nudged);
  for (const double bust : {739.95, 1169.95}) nudge_each(bust_only(bust), nudged);
  CHECK(nudged.worst > 0.0);
}
