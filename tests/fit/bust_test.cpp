#include "blockwright/check/check.hpp"
#include "fit/fit_people.hpp"
#include "support/each_person.hpp"

#include <catch2/catch.hpp>

#include <algorithm>
#include <cmath>

using namespace blockwright;
using namespace blockwright_tests;

// Rows 27 and 28: what w on the half does to the bust girth (docs/decisions/009). Plane geometry.

namespace {

constexpr double kWidth = 8.0;

RowAmount fuller(int sign) {
  return {CorrectionRow::FullerBust, sign, kWidth, AmountAs::PerHalf, BodySide::Both, ""};
}

// Along the bust line as it is marked: from centre front by the bust point to the side notch, and
// from the centre back to the side notch.
double marked_line(const Pattern& pattern) {
  double sum = 0.0;
  for (const Piece& piece : pattern.pieces) {
    for (const BalanceLine& line : piece.balance_lines) {
      if (line.name == "bust_line") sum += length(line.path);
    }
  }
  return 2.0 * sum;
}

// On the level of the bust point, and as high over the waist on the back.
double level_line(const CheckedBlock& made, const Pattern& pattern) {
  const CheckReport report =
      check_block({pattern, made.body, made.block.ease, made.block.adjustments});
  return row_of(report, MeasurementName::BustGirth)->pattern.length().mm();
}

// mm that a side goes out for each mm that it goes up, above the bust line.
double slant(const Pattern& pattern, const char* piece) {
  const Vec up = end_tangent(pattern.piece(piece).edge("side").path);
  return up.x / up.y;
}

// mm that the back waist darts, as they are stitched, take out of the level line `higher` mm over
// the side notch. They reach above the bust line.
double taken_by_darts(const Pattern& pattern, double higher) {
  const Piece& back = pattern.piece("back");
  const auto notch = std::find_if(back.notches.begin(), back.notches.end(),
                                  [](const Notch& one) { return one.edge == "side"; });
  const double level = point_at_length(back.edge("side").path, notch->along).y + higher;
  double sum = 0.0;
  for (const Dart& dart : back.darts) {
    if (dart.edge != "waist") continue;
    const double whole = dart.point.y - midpoint(dart.legs[0], dart.legs[1]).y;
    sum += dart.intake() * std::fmax(0.0, dart.point.y - level) / whole;
  }
  return sum;
}

}  // namespace

TEST_CASE("A bust fuller by w on the half adds 2 w along the marked bust line") {
  std::vector<double> fuller_by, smaller_by;
  for (const Pattern& block : each_block()) {
    for (const int sign : {1, -1}) {
      const Outcome got = outcome(block, {fuller(sign)});
      if (!got.fitted) continue;
      const double by = (marked_line(got.fitted->pattern) - marked_line(block)) / (sign * kWidth);
      (sign > 0 ? fuller_by : smaller_by).push_back(by);
    }
  }
  REQUIRE(static_cast<int>(fuller_by.size()) > share_of_blocks(0.5));
  REQUIRE(static_cast<int>(smaller_by.size()) > share_of_blocks(0.3));
  // The line slants a little from the bust point to the notch.
  CHECK(median_of(fuller_by) == Approx(2.0).margin(0.15));
  CHECK(median_of(smaller_by) == Approx(2.0).margin(0.15));
}

TEST_CASE("On the level of the bust point it is more: the level meets the side higher up") {
  // The bust point stays, what lies below it drops, and the side with it; so the level through the
  // bust point meets both sides further from the waist by the drop, where they lie further out (or
  // in, where they turn in above the bust line), and where the back waist darts take less.
  int tried = 0;
  for (const Session& session : each_person(people(100), 1988)) {
    const CheckedBlock made = checked_block(session);
    const Pattern& block = made.block.pattern;
    const Outcome got = outcome(block, {fuller(1)});
    if (!got.fitted) continue;
    const Pattern& after = got.fitted->pattern;
    const double drop = sewn(after, "front", "centre_front") - sewn(block, "front", "centre_front");
    const double higher = 2.0 * drop * (slant(block, "front") + slant(block, "back"));
    const double narrower_darts = 2.0 * (taken_by_darts(block, 0.0) - taken_by_darts(block, drop));
    CHECK(level_line(made, after) - level_line(made, block) ==
          Approx(2.0 * kWidth + higher + narrower_darts).margin(0.01));
    ++tried;
  }
  CHECK(tried > people(100) / 2);
}
