#include "blockwright/geometry/path.hpp"
#include "fit/fit_people.hpp"
#include "halves.hpp"

#include <catch2/catch.hpp>

#include <array>

using namespace blockwright;
using namespace blockwright_tests;

// A shoulder point that comes in brings the across point in with it, so that the armhole is cut
// from the new shoulder point without a hook at the old across width. Bounds ours: a sharper curve
// than 15 mm cannot be faced or bound flat.

namespace {

constexpr int kShorter = 9, kLonger = 10;

double tightest_armhole(const Pattern& pattern, const char* piece) {
  return least_radius(pattern.piece(piece).edge("armhole").path);
}

/// How far the shoulder point lies outside the across point, level with the shoulder dart closed on
/// the front, as it lies on the back: where the across widths are measured.
std::array<double, 2> outside_across(const Pattern& pattern) {
  const HalfBlock half = halves_of(pattern).right;
  const Dart& dart = half.front.at(shoulder_dart(half.front));
  const Point tip =
      rotated_about(corner_of(half.front, Corner::ShoulderPoint), dart.apex, dart.angle());
  return {tip.x - closed_across_of(half.front).x,
          corner_of(half.back, Corner::ShoulderPoint).x - across_of(half.back).x};
}

const MovedLength* find_moved(const FittedPattern& fitted, const std::string& name) {
  const auto& moved = fitted.effects.front().moved;
  const auto found = std::ranges::find(moved, name, &MovedLength::name);
  return found == moved.end() ? nullptr : &*found;
}

}  // namespace

TEST_CASE("A shoulder shortened by all of its range leaves the armhole round, on 300 people") {
  int fitted = 0, tried = 0;
  for (const Pattern& block : each_block()) {
    for (const double by : {3.0, 6.0, 10.0, 15.0, 20.0}) {
      const Outcome got = outcome(block, {row(kShorter, by)});
      ++tried;
      if (!got.fitted) continue;
      ++fitted;
      for (const char* piece : {"front", "back"}) {
        CAPTURE(piece, by);
        CHECK(tightest_armhole(got.fitted->pattern, piece) >=
              std::fmin(15.0, tightest_armhole(block, piece)) - 1e-6);
      }
      CHECK_FALSE(warns(*got.fitted, "fit.curve"));
    }
  }
  CHECK(fitted > tried * 99 / 100);
}

TEST_CASE("The across point comes in with the shoulder point as far as it must, and no further") {
  for (const Pattern& block : each_block(5)) {
    const auto was = outside_across(block);
    for (const double by : {6.0, 20.0}) {
      const Outcome got = outcome(block, {row(kShorter, by)});
      if (!got.fitted) continue;
      const auto is = outside_across(got.fitted->pattern);
      const std::array<const MovedLength*, 2> moved{find_moved(*got.fitted, "across_front"),
                                                    find_moved(*got.fitted, "across_back")};
      for (std::size_t i = 0; i < was.size(); ++i) {
        CAPTURE(i, by, was[i], is[i]);
        CHECK(is[i] >= std::fmin(was[i], 7.5) - 1e-6);
        if (!moved[i]) continue;
        CHECK(is[i] == Approx(std::fmin(was[i], 7.5)).margin(1e-6));
        CHECK(moved[i]->change() < 0.0);
        CHECK(moved[i]->change() >= -2.0 * by);
        REQUIRE(moved[i]->predicted);
        CHECK(moved[i]->change() == Approx(*moved[i]->predicted).margin(0.01));
        CHECK_FALSE(moved[i]->sample);
      }
    }
  }
}

TEST_CASE("A longer shoulder leaves across front and across back as they are") {
  for (const Pattern& block : each_block(10)) {
    const Outcome got = outcome(block, {row(kLonger, 10.0)});
    if (!got.fitted) continue;
    CHECK(find_moved(*got.fitted, "across_front") == nullptr);
    CHECK(find_moved(*got.fitted, "across_back") == nullptr);
  }
}

TEST_CASE(
    "A neck narrowed at the sides stays as round as drafted, or 20 mm; drawn parallel 15 mm") {
  for (const Pattern& block : each_block()) {
    const double was = least_radius(block.piece("front").edge("neckline").path);
    for (const RowAmount& narrowed :
         {row(4, 6.0), row(8, 6.0, "", -1), row(8, 10.0, "", -1), row(8, 15.0, "", -1)}) {
      const Outcome got = outcome(block, {narrowed});
      if (!got.fitted) continue;
      CAPTURE(number_of(narrowed.row), narrowed.by, was);
      // Beyond its range a narrow neck is as round as it can be.
      const double round = number_of(narrowed.row) == 4 ? 15.0 : narrowed.by > 10.0 ? 19.0 : 20.0;
      CHECK(least_radius(got.fitted->pattern.piece("front").edge("neckline").path) >=
            std::fmin(round, was) - 1e-6);
    }
  }
}
