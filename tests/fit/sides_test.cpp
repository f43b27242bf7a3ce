#include "blockwright/check/check.hpp"
#include "fit/fit_people.hpp"
#include "support/each.hpp"

#include <catch2/catch.hpp>

using namespace blockwright;
using namespace blockwright_tests;

namespace {

FittedPattern one_sided(const Pattern& block, int row, double by, BodySide side, int sign = 1) {
  return apply_rows(block, {{numbered(row), sign, by, AmountAs::Length, side, ""}});
}

std::string first_error(const Pattern& pattern) {
  for (const Problem& problem : check_pattern(pattern)) {
    if (problem.severity == Severity::Error) return problem.where + ": " + problem.message.plain();
  }
  return "";
}

}  // namespace

// Plane thinking, no source: a shirt laid open, its right side up. Seen from before her, her left
// front has the centre at its left; seen from behind, her right back has.

TEST_CASE("Pieces of one side are true when they are cut with the cloth's right side up") {
  const FittedPattern shoulder = one_sided(usual_block(), 46, 8, BodySide::Left);
  CHECK(shoulder.pattern.piece("front_left").landmark("underarm_point").x > 0.0);
  CHECK(shoulder.pattern.piece("front_right").landmark("underarm_point").x < 0.0);
  CHECK(shoulder.pattern.piece("back_right").landmark("underarm_point").x > 0.0);
  CHECK(shoulder.pattern.piece("back_left").landmark("underarm_point").x < 0.0);
}

TEST_CASE("The amount lands on the side that was asked for") {
  for (const BodySide side : each({BodySide::Left, BodySide::Right})) {
    const std::string here = side == BodySide::Left ? "_left" : "_right";
    const std::string there = side == BodySide::Left ? "_right" : "_left";
    const Pattern pattern = one_sided(usual_block(), 46, 8, side).pattern;
    for (const std::string piece : each({"front", "back"})) {
      const double was = sewn(usual_block(), piece, "side");
      CHECK(sewn(pattern, piece + here, "side") == Approx(was - 8.0).margin(1e-6));
      CHECK(sewn(pattern, piece + there, "side") == Approx(was).margin(1e-9));
    }
    const Pattern bust = one_sided(usual_block(), 47, 6, side).pattern;
    CHECK(std::abs(bust.piece("front" + here).landmark("underarm_point").x) >
          std::abs(bust.piece("front" + there).landmark("underarm_point").x) + 3.0);
  }
}

TEST_CASE("Seams and notches of pieces of one side meet, for 20 people") {
  const std::size_t count = kSanitized ? 4 : 20;
  for (std::size_t i = 0; i < count; ++i) {
    for (const FittingRow& row : fitting_catalogue()) {
      for (const BodySide side : {BodySide::Left, BodySide::Right}) {
        for (const int sign : {1, -1}) {
          RowAmount asked = usual(row, sign);
          asked.side = side;
          const Outcome got = outcome(blocks()[i], {asked});
          if (!got.fitted) continue;
          INFO("person " << i << ", row " << row.number() << ", " << sign);
          CHECK(first_error(got.fitted->pattern) == "");
        }
      }
    }
  }
}

TEST_CASE("A seam whose sides run against each other says so") {
  const Pattern pattern = one_sided(usual_block(), 47, 6, BodySide::Left).pattern;
  for (const Seam& seam : pattern.seams) {
    INFO(seam.name);
    const auto mirrored = [](const EdgeOf& e) { return e.piece == "front_right"; };
    CHECK(seam.b_runs_back == (mirrored(seam.a.front()) != mirrored(seam.b.front())));
  }
}

TEST_CASE("Sides that still meet at the centre are not said to differ there") {
  CHECK_FALSE(warns(one_sided(usual_block(), 46, 8, BodySide::Left), "fit.seam"));
  CHECK_FALSE(warns(one_sided(usual_block(), 47, 6, BodySide::Right), "fit.seam"));
  CHECK(warns(one_sided(usual_block(), 41, 8, BodySide::Left), "fit.seam"));
}
