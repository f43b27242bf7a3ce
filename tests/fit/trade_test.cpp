#include "blockwright/check/check.hpp"
#include "fit/fit_people.hpp"
#include "support/each_person.hpp"

#include <catch2/catch.hpp>

#include <algorithm>
#include <map>
#include <numeric>
#include <set>

using namespace blockwright;
using namespace blockwright_tests;

// What a fitter expects of single rows. Common practice, no source.

namespace {

double waist_of(const Pattern& pattern) {
  return sewn(pattern, "front", "waist") + sewn(pattern, "back", "waist");
}

// The lower armhole: below the across point.
CubicCurve lower_armhole(const Pattern& pattern, const std::string& piece) {
  return std::get<CubicCurve>(pattern.piece(piece).edge("armhole").path.curves().front());
}

double hollow(const CubicCurve& curve) {
  double most = 0.0;
  for (int i = 1; i < 20; ++i) {
    const Point p = point_at(curve, i / 20.0);
    most = std::fmax(most, std::abs(cross(unit(curve.p3 - curve.p0), p - curve.p0)));
  }
  return most;
}

std::vector<double> back_darts(const Pattern& pattern) {
  std::vector<double> intakes;
  for (const Dart& dart : pattern.piece("back").darts) {
    if (dart.edge == "waist") intakes.push_back(dart.intake());
  }
  return intakes;
}

std::map<MeasurementName, double> measured(const CheckedBlock& made, const Pattern& pattern) {
  const CheckReport report =
      check_block({pattern, made.body, made.block.ease, made.block.adjustments});
  std::map<MeasurementName, double> all;
  for (const MeasureBack& m : report.measure_back) all[m.name] = m.pattern.number();
  return all;
}

// From the centre waist to the shoulder point, the shoulder dart closed as it is stitched: so the
// slants are drafted.
double slant(const Pattern& pattern, const std::string& name) {
  const Piece& piece = pattern.piece(name);
  const Point tip = piece.dart("shoulder").closed_as_stitched(piece.landmark("shoulder_point"));
  return distance(tip, piece.landmark("centre_waist"));
}

}  // namespace

TEST_CASE("The side is let out alike from underarm to waist, at the bust to nothing at the waist") {
  for (const Pattern& block : each_block(10)) {
    for (const int sign : each({1, -1})) {
      const Pattern whole = apply_rows(block, {row(49, 12, "side", sign)}).pattern;
      const Pattern bust = apply_rows(block, {row(49, 12, "side_at_bust", sign)}).pattern;
      CHECK(waist_of(whole) - waist_of(block) == Approx(12.0 * sign).margin(0.5));
      CHECK(waist_of(bust) == Approx(waist_of(block)).margin(1.5));  // its curve stays square
      for (const char* piece : each({"front", "back"})) {
        const auto out = [&](const char* point) {
          return (whole.piece(piece).landmark(point) - block.piece(piece).landmark(point)).x;
        };
        CHECK(out("underarm_point") == Approx(6.0 * sign).margin(1e-6));
        CHECK(out("side_waist_point") == Approx(6.0 * sign).margin(1e-6));
        CHECK(bust.piece(piece).landmark("side_waist_point") ==
              block.piece(piece).landmark("side_waist_point"));
      }
    }
  }
}

TEST_CASE("A front that is too wide makes the side seam swing backwards") {
  CHECK(fitting_row(numbered(42)).seen.find("backwards") != std::string_view::npos);
  CHECK(fitting_row(numbered(43)).seen.find("forwards") != std::string_view::npos);
}

TEST_CASE("A shoulder taken in or a back armhole filled leaves the lower armhole its hollow") {
  for (const Pattern& block : each_block(10)) {
    for (const double by : {13.0, 20.0}) {
      const Outcome got = outcome(block, {row(9, by)});
      if (!got.fitted) continue;
      for (const char* piece : {"front", "back"}) {
        CAPTURE(piece, by);
        const double ratio =
            hollow(lower_armhole(got.fitted->pattern, piece)) / hollow(lower_armhole(block, piece));
        CHECK(ratio > 0.6);
      }
    }
    const Outcome filled = outcome(block, {row(22, 8)});
    if (!filled.fitted) continue;
    CHECK(hollow(lower_armhole(filled.fitted->pattern, "back")) >
          0.4 * hollow(lower_armhole(block, "back")));
  }
}

TEST_CASE("A back waist dart takes 40 mm, each of several 35, and the front what is over") {
  // Of several, together at least what one takes: a second dart is narrow at first.
  int full = 0;
  for (const Pattern& block : each_block()) {
    const Outcome got = outcome(block, {row(44, 50, "waist")});
    if (!got.fitted) continue;
    const std::vector<double> was = back_darts(block), is = back_darts(got.fitted->pattern);
    const double all = std::accumulate(is.begin(), is.end(), 0.0);
    const double widest = *std::max_element(is.begin(), is.end());
    CAPTURE(was, is);
    REQUIRE(is.size() == was.size());
    const double most = is.size() == 1 ? 40.0 : 35.0;
    CHECK((widest <= most + 0.01 || all <= 40.01 || is == was));
    if (std::abs(widest - most) < 0.01) ++full;
  }
  CHECK(full > share_of_blocks(0.03));
}

TEST_CASE(
    "The dart below the nape takes half to all of the amount, about a point 60 to 70 mm down") {
  for (const Pattern& block : each_block()) {
    for (const double by : each({5.0, 8.0, 20.0})) {
      const Outcome got = outcome(block, {row(36, by)});
      if (!got.fitted) continue;
      const Piece& back = got.fitted->pattern.piece("back");
      const Dart& dart = back.dart("neck");
      CHECK(dart.intake() >= 0.5 * by - 0.05);
      CHECK(dart.intake() <= by + 0.05);
      const double below = back.landmark("nape").y - dart.apex.y;
      CHECK(below >= 60.0 - 1e-6);
      CHECK(below <= 70.0 + 1e-6);
    }
  }
}

TEST_CASE("A dart opened below the nape leaves the sewn neckline as long as it was") {
  std::vector<double> off;
  for (const Pattern& block : each_block(5)) {
    const Outcome got = outcome(block, {row(36, 8)});
    if (!got.fitted) continue;
    off.push_back(
        std::abs(sewn(got.fitted->pattern, "back", "neckline") - sewn(block, "back", "neckline")));
  }
  REQUIRE(off.size() > 10);
  // A few necklines are so straight that they cannot be drawn flatter.
  CHECK(median_of(off) < 1e-6);
}

TEST_CASE("What a row calls into doubt is what its move changes on the pieces") {
  std::map<int, std::vector<double>> found;
  for (const Session& session : each_person(40, 1988)) {
    const CheckedBlock made = checked_block(session);
    const auto before = measured(made, made.block.pattern);
    for (const FittingRow& one : fitting_catalogue()) {
      if (!one.doubts || one.stage == kOneSideStage) continue;
      const Outcome got = outcome(made.block.pattern, {usual(one, 1)});
      if (!got.fitted) continue;
      const auto after = measured(made, got.fitted->pattern);
      if (before.count(one.doubts->name) == 0) continue;
      found[one.number()].push_back((after.at(one.doubts->name) - before.at(one.doubts->name)) /
                                    one.amount.usual.mm());
    }
  }
  for (const auto& [number, changes] : found) {
    INFO("row " << number << ": " << info(fitting_row(numbered(number)).doubts->name).key);
    const double said = fitting_row(numbered(number)).doubts->per_mm;
    if (number == 27 || number == 28) continue;
    CHECK(median_of(changes) == Approx(said).margin(0.1 * std::abs(said)));
  }
}

TEST_CASE("Shoulder slope is in degrees: 1 mm at the tip of a shoulder of 124 mm is 0.46") {
  CHECK(fitting_row(numbered(12)).doubts->per_mm == Approx(0.46).margin(0.005));
  CHECK(fitting_row(numbered(11)).doubts->per_mm == Approx(-0.46).margin(0.005));
  // So 4 degrees are between 8 and 10 mm on a usual shoulder.
  CHECK_FALSE(warns(apply_rows(usual_block(), {row(12, 7.0)}), "fit.limit"));
  CHECK(warns(apply_rows(usual_block(), {row(12, 11.0)}), "fit.limit"));
}

TEST_CASE("A row is named in the direction in which it is done") {
  std::set<std::string_view> names;
  for (const FittingRow& one : each(fitting_catalogue())) {
    CHECK_FALSE(one.reverse_name.empty());
    CHECK(one.reverse_name != one.name);
    CHECK(row_name(one.row, 1) == one.name);
    CHECK(names.insert(row_name(one.row, -1)).second);
  }
  CHECK(row_name(numbered(49), -1) == "bust taken in at the side");
  // Rows that undo each other have each other's names.
  for (const auto& [a, b] : {std::pair{1, 2},
                             {3, 4},
                             {9, 10},
                             {11, 12},
                             {19, 20},
                             {27, 28},
                             {33, 34},
                             {35, 37},
                             {42, 43}}) {
    INFO(a);
    CHECK(row_name(numbered(a), -1) == row_name(numbered(b), 1));
    CHECK(row_name(numbered(b), -1) == row_name(numbered(a), 1));
  }
}

TEST_CASE("Limits name measurements in words") {
  const FittedPattern fitted = apply_rows(usual_block(), {row(27, 15)});
  for (const Problem& problem : each(fitted.remarks)) {
    if (problem.code != "fit.limit") continue;
    CHECK(problem.message.plain().find('_') == std::string::npos);
    CHECK(problem.hint.plain().find('_') == std::string::npos);
  }
  CHECK(warns(fitted, "fit.limit"));
}

TEST_CASE("A shoulder point brought forward takes from the front slant what it gives to the back") {
  // No single measurement would have made it unnecessary, so that none is called into doubt.
  CHECK_FALSE(fitting_row(numbered(13)).doubts);
  std::vector<double> front, back;
  for (const Pattern& block : each_block(5)) {
    const Outcome got = outcome(block, {row(13, 1)});
    if (!got.fitted) continue;
    front.push_back(slant(got.fitted->pattern, "front") - slant(block, "front"));
    back.push_back(slant(got.fitted->pattern, "back") - slant(block, "back"));
  }
  // Fronts slope more than backs, so that their shoulder points come in a little too.
  CHECK(median_of(front) == Approx(-1.1).margin(0.1));
  CHECK(median_of(back) == Approx(1.0).margin(0.1));
}
