#include "fit/fit_people.hpp"
#include "support/each.hpp"

#include <catch2/catch.hpp>

using namespace blockwright;
using namespace blockwright_tests;

// Sides that turn in above the bust line: two straight lines with a joint on it. Plane geometry.

namespace {

struct Side {
  Point waist, joint, underarm;
};

Side side_of(const Pattern& pattern, const char* piece) {
  const Path& path = pattern.piece(piece).edge("side").path;
  return {path.start(), end_of(path.curves().front()), path.end()};
}

bool turns_in(const Pattern& block) {
  return block.piece("front").edge("side").path.curves().size() == 2;
}

/// What a row makes of both sides of each block whose sides turn in.
template <class Check>
void check_sides(const RowAmount& amount, Check&& check) {
  int tried = 0;
  for (const Pattern& block : each_block()) {
    if (!turns_in(block)) continue;
    const Outcome got = outcome(block, {amount});
    if (!got.fitted) continue;
    ++tried;
    for (const char* piece : each({"front", "back"})) {
      check(side_of(block, piece), side_of(got.fitted->pattern, piece));
    }
  }
  CHECK(tried > share_of_blocks(0.1));
}

constexpr double kSame = 1e-6;  // mm

}  // namespace

TEST_CASE("An underarm is lowered along the side's upper part, and the joint stays") {
  check_sides(row(19, 6), [](const Side& was, const Side& is) {
    if (distance(was.joint, was.underarm) < 10.0) return;
    CHECK(is.joint == was.joint);
    CHECK(distance(was.underarm + 6.0 * unit(was.joint - was.underarm), is.underarm) < kSame);
  });
}

TEST_CASE("An underarm lowered past the joint leaves one straight side, shorter by as much") {
  int past = 0;
  for (const Pattern& block : each_block()) {
    if (!turns_in(block)) continue;
    const Side was = side_of(block, "front");
    const double above = distance(was.joint, was.underarm);
    const Outcome got = outcome(block, {row(19, above + 4.0)});
    if (!got.fitted) continue;
    ++past;
    const Side is = side_of(got.fitted->pattern, "front");
    CHECK(is.joint == is.underarm);
    CHECK(distance(is.underarm, was.joint + 4.0 * unit(was.waist - was.joint)) < kSame);
    CHECK_FALSE(find_problem(got.fitted->pattern.piece("front")));
  }
  CHECK(past > 0);
}

TEST_CASE("A fold below the bust moves the joint with all above it") {
  check_sides(row(39, 8), [](const Side& was, const Side& is) {
    const Vec up{0.0, 8.0};
    CHECK(is.waist == was.waist);
    CHECK(distance(is.joint, was.joint + up) < kSame);
    CHECK(distance(is.underarm, was.underarm + up) < kSame);
  });
}

TEST_CASE("A waist taken in at the side turns the whole side about the underarm point") {
  check_sides(row(44, 10, "side_at_waist"), [](const Side& was, const Side& is) {
    CHECK(is.underarm == was.underarm);
    CHECK(is.waist.x < was.waist.x - 4.0);
    CHECK(distance(is.joint, is.underarm) == Approx(distance(was.joint, was.underarm)));
    CHECK(distance(is.waist, is.joint) == Approx(distance(was.waist, was.joint)));
    CHECK(turn_between(is.joint - is.waist, is.underarm - is.joint).radians() ==
          Approx(turn_between(was.joint - was.waist, was.underarm - was.joint).radians()));
  });
}

TEST_CASE("A bust let out at the side is wider by the amount on the bust line as it is sewn") {
  for (const Pattern& block : each_block(5)) {
    for (const int sign : each({1, -1})) {
      CHECK(change(block, row(49, 12, "side_at_bust", sign), "bust_line") ==
            Approx(24.0 * sign).margin(0.05));
    }
  }
}

TEST_CASE("An upper back is shortened by more than its dart has: the neck keeps its width") {
  for (const Pattern& block : each_block(5)) {
    const Piece& was = block.piece("back");
    const Piece is = apply_rows(block, {row(37, 10)}).pattern.piece("back");
    const Vec neck = is.landmark("side_neck_point") - was.landmark("side_neck_point");
    CHECK(std::abs(neck.x) < 0.5);
    CHECK(neck.y < -4.0);
    CHECK(is.landmark("nape").y == Approx(was.landmark("nape").y - 10.0));
    CHECK(is.dart("shoulder").intake() < was.dart("shoulder").intake());
  }
  CHECK(outcome(usual_block(), {row(37, 60)}).refusal.code == "fit.amount");
}
