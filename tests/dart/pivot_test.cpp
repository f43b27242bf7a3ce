#include "blockwright/base/error.hpp"
#include "blockwright/dart/pivot.hpp"
#include "dart/dart_measures.hpp"
#include "support/blocks.hpp"
#include "support/people.hpp"

#include <catch2/catch.hpp>

#include <algorithm>
#include <iostream>
#include <map>
#include <random>

using namespace blockwright;
using namespace blockwright_tests;

namespace {

Pattern block_of(const Session& session) { return checked_block(session).block.pattern; }

Pattern usual_block() { return block_of(survey_people(1, 7).front()); }

Pattern moved(const Pattern& pattern, const std::string& dart, const std::string& to,
              double part = 1.0) {
  return pivot(pattern, {dart, to, part, std::nullopt, std::nullopt}).pattern;
}

std::string refusal(const Pattern& pattern, const PivotMove& move) {
  try {
    pivot(pattern, move);
  } catch (const InputError& error) {
    return to_text(error.problem());
  }
  return "";
}

double apart(const Piece& a, const Piece& b) {
  double most = 0.0;
  for (const Edge& edge : a.edges) {
    most = std::fmax(most, blockwright_tests::apart(edge.path, b.edge(edge.name).path));
  }
  for (const Landmark& landmark : a.landmarks) {
    most = std::fmax(most, distance(landmark.at, b.landmark(landmark.name)));
  }
  for (std::size_t i = 0; i < a.balance_lines.size(); ++i) {
    most = std::fmax(
        most, blockwright_tests::apart(a.balance_lines[i].path, b.balance_lines[i].path));
  }
  return most;
}

const std::vector<std::string> kFrontPlaces = {"front.shoulder", "front.neck",   "front.armhole",
                                               "front.side",     "front.french", "front.waist",
                                               "front.centre_front"};

}  // namespace

TEST_CASE("A dart moves to every place of the front, and back again, to a millionth of a mm") {
  const Pattern block = usual_block();
  for (const std::string& place : kFrontPlaces) {
    if (place == "front.shoulder") continue;
    INFO(place);
    const Pattern there = moved(block, "front.shoulder", place, 0.5);
    const Piece& piece = there.piece("front");
    const std::string name = place.substr(6);
    CHECK(piece.dart("shoulder").angle().radians() ==
          Approx(0.5 * block.piece("front").dart("shoulder").angle().radians()).epsilon(1e-12));
    const Pattern back = name == "waist"
                             ? pivot(there, {"front.waist", "front.shoulder", 1.0,
                                             piece.dart("shoulder").angle(), std::nullopt})
                                   .pattern
                             : moved(there, place, "front.shoulder");
    CHECK(apart(block.piece("front"), back.piece("front")) < 1e-9);
  }
}

namespace {

// What a random sequence of moves must keep.
struct Kept {
  explicit Kept(const Piece& piece)
      : angles(angles_by_apex(piece)), area(closed_area(piece)) {
    for (const Edge& edge : piece.edges) lengths[edge.name] = sewn_length(piece, edge);
  }
  std::vector<double> angles;
  std::map<std::string, double> lengths;
  double area = 0.0;
};

void check_kept(const Kept& before, const Kept& after) {
  REQUIRE(after.angles.size() == before.angles.size());
  for (std::size_t i = 0; i < before.angles.size(); ++i) {
    REQUIRE(std::abs(after.angles[i] - before.angles[i]) < 1e-9);
  }
  for (const auto& [edge, mm] : before.lengths) {
    INFO(edge);
    REQUIRE(std::abs(after.lengths.at(edge) - mm) < 1e-9);
  }
  REQUIRE(std::abs(after.area - before.area) < 1e-6);
}

void check_legs(const Piece& piece) {
  for (const Dart& dart : piece.darts) {
    REQUIRE(std::abs(distance(dart.apex, dart.legs[0]) - distance(dart.apex, dart.legs[1])) < 1e-9);
    const double ratio = dart.intake() / dart.leg();
    REQUIRE(ratio == Approx(2.0 * std::sin(0.5 * dart.angle().radians())).epsilon(1e-9));
  }
}

// A move that someone might ask for, sound or not.
PivotMove random_move(const Pattern& pattern, std::mt19937& random) {
  const Piece& piece = pattern.pieces[random() % 2];
  const auto& positions = dart_positions();
  const DartPosition* to = nullptr;
  while (to == nullptr || to->piece != piece.name) to = &positions[random() % positions.size()];
  PivotMove move;
  move.dart = piece.name + "." + piece.darts[random() % piece.darts.size()].name;
  move.to = piece.name + "." + std::string(to->name);
  if (random() % 2 == 0) move.to += ":" + std::to_string(0.1 + 0.1 * static_cast<double>(random() % 9));
  move.part = random() % 2 == 0 ? 1.0 : 0.25 * static_cast<double>(1 + random() % 3);
  return move;
}

}  // namespace

// Source of what is kept: plane geometry of rigid turns about one point (../reference/dart_vectors).
TEST_CASE("Twenty random moves on five hundred people keep angles, lengths and area") {
  std::mt19937 random(20);
  int done = 0, refused = 0;
  for (const Session& session : survey_people(500, 21)) {
    Pattern pattern = block_of(session);
    const Kept front(pattern.piece("front")), back(pattern.piece("back"));
    for (int i = 0; i < 20; ++i) {
      const PivotMove move = random_move(pattern, random);
      INFO("move " << i << ": " << move.dart << " to " << move.to << " part " << move.part);
      try {
        pattern = pivot(pattern, move).pattern;
        ++done;
      } catch (const InputError&) {
        ++refused;
        continue;
      }
      for (const Piece& piece : pattern.pieces) {
        REQUIRE_FALSE(find_problem(piece).has_value());
        check_legs(piece);
      }
      check_kept(front, Kept(pattern.piece("front")));
      check_kept(back, Kept(pattern.piece("back")));
    }
  }
  WARN(done << " moves done, " << refused << " refused");
  CHECK(done > 5000);
  CHECK(refused > 100);
}

TEST_CASE("refusal print") {
  const Pattern b = usual_block();
  for (const PivotMove& m : std::vector<PivotMove>{{"front.shoulder", "front.side:1.4", 1, {}, {}},
                            {"front.sholder", "front.side", 1, {}, {}},
                            {"front.shoulder", "front.hem", 1, {}, {}},
                            {"front.shoulder", "front.side", 1.5, {}, {}},
                            {"front.shoulder", "front.waist", 1, {}, {}},
                            {"back.shoulder", "back.waist:0.4", 1, {}, {}},
                            {"back.shoulder", "back.waist", 1, {}, {}},
                            {"back.waist", "back.shoulder", 1, {}, {}},
                            {"front.shoulder", "front.side:1.0", 1, {}, {}},
                            {"front.shoulder", "front.shoulder", 1, {}, {}},
                            {"front.shoulder", "back.shoulder", 1, {}, {}},
                            {"front.shoulder", "front.side:bla", 1, {}, {}}})
    std::cerr << m.dart << " -> " << m.to << ": " << refusal(b, m) << "\n";
}
