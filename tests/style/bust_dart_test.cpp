// A bust dart too wide to sew in one: what of it goes to the side.
#include "blockwright/style/bust_dart.hpp"

#include "blockwright/block/kinds.hpp"
#include "blockwright/check/check.hpp"
#include "blockwright/fit/apply.hpp"
#include "blockwright/measure/correction_table.hpp"
#include "support/blocks.hpp"
#include "support/each_person.hpp"

#include <catch2/catch.hpp>

#include <algorithm>
#include <cmath>
#include <string>
#include <vector>

using namespace blockwright;

namespace {

constexpr double kWidestMouth = 90.0;  // no mouth over 90 mm

/// People of a full bust, whose darts are wide, and of any bust.
std::vector<Pattern> blocks(int of_each) {
  std::vector<Session> sessions = survey_people(people(of_each), 61);
  for (const double bust : {96.0, 104.0, 112.0}) {
    for (Session& session : people_at_bust(10.0 * bust, people(of_each), 62)) {
      sessions.push_back(std::move(session));
    }
  }
  std::vector<Pattern> all;
  for (const Session& session : sessions) {
    const CheckedBlock checked = checked_block(session);
    if (!has_errors(checked.report.problems)) all.push_back(checked.block.pattern);
  }
  return all;
}

Pattern divided(const Pattern& block) {
  return apply_style(block, bust_dart_division({block, block}), kUsualCup).pattern;
}

bool is_wide(const Dart& dart) {
  return dart.angle().degrees() > 25.0 || dart.intake() > kWidestMouth;
}

Point bust_point(const Piece& front) { return front.landmark("bust_point"); }

/// How far the dart's stitching lies off the line from the middle of the mouth to the bust point.
double off_aim(const Dart& dart, Point bust) {
  const Vec along = unit(midpoint(dart.legs[0], dart.legs[1]) - bust);
  return std::abs(cross(along, dart.point - bust));
}

/// A block whose bust dart has that mouth: the rest of it is moved to the waist.
Pattern with_mouth(Pattern block, double mouth) {
  const Dart& dart = block.piece("front").dart("shoulder");
  const Angle kept = Angle::radians(2.0 * std::asin(0.5 * mouth / dart.leg()));
  PivotMove move{"front.shoulder", "front.neck"};
  move.angle = dart.angle() - kept;
  return pivot(block, move).pattern;
}

RowAmount row(CorrectionRow row, int sign, double by, BodySide side = BodySide::Both) {
  return {row, sign, by, AmountAs::Length, side, ""};
}

/// Divided as it is drafted, and as a fitting leaves it.
Pattern divided(const Pattern& block, const Pattern& fitted) {
  const BlockVersions versions{block, fitted};
  return apply_style(fitted, bust_dart_division(versions), kUsualCup, side_places(versions))
      .pattern;
}

double off_each_other(const Dart& a, const Dart& b) {
  return std::max(
      {distance(a.apex, b.apex), distance(a.legs[0], b.legs[0]), distance(a.legs[1], b.legs[1])});
}

/// The widest bust dart of some.
Pattern widest_block() {
  std::vector<Pattern> all = blocks(20);
  return *std::ranges::max_element(
      all, {}, [](const Pattern& block) { return block.piece("front").dart("shoulder").angle(); });
}

}  // namespace

TEST_CASE("A bust dart over 25 degrees or 90 mm becomes two, and no other") {
  int wide = 0, narrow = 0;
  for (const Pattern& block : each(blocks(60))) {
    const Dart& bust = block.piece("front").dart("shoulder");
    const Style division = bust_dart_division({block, block});
    CHECK(division.steps.empty() != is_wide(bust));
    (division.steps.empty() ? narrow : wide) += 1;
  }
  CHECK(wide >= 4);
  CHECK(narrow >= 4);
}

TEST_CASE("The limit of a mouth from both sides") {
  const Pattern block = widest_block();
  REQUIRE(block.piece("front").dart("shoulder").intake() > 95.0);
  const Pattern within = with_mouth(block, 89.9), beyond = with_mouth(block, 90.1);
  REQUIRE(beyond.piece("front").dart("shoulder").angle() < kWideToSew);
  CHECK(bust_dart_division({within, within}).steps.empty());
  CHECK(bust_dart_division({beyond, beyond}).steps.size() == 1);
}

TEST_CASE("All darts can be sewn, point to the bust point, and are the one dart together") {
  for (const Pattern& block : each(blocks(60))) {
    if (bust_dart_division({block, block}).steps.empty()) continue;
    const Pattern two = divided(block);
    const Piece &front = two.piece("front"), &before = block.piece("front");
    Angle whole;
    for (const Dart& dart : front.darts) {
      if (dart.edge == "waist") continue;
      INFO(dart.name);
      whole = whole + dart.angle();
      CHECK(dart.angle().degrees() <= 22.0);
      CHECK(dart.intake() <= (dart.edge == "shoulder" ? 85.0 : kWidestMouth));
      CHECK(distance(dart.apex, bust_point(front)) < 1e-9);
      CHECK(off_aim(dart, bust_point(front)) < 1e-6);
    }
    CHECK((whole - front.dart("shoulder").angle()).degrees() >= 6.0 - 1e-9);
    CHECK(whole.radians() == Approx(before.dart("shoulder").angle().radians()).margin(1e-9));
    for (const char* edge : {"shoulder", "side", "armhole", "neckline", "waist"}) {
      INFO(edge);
      CHECK(sewn_length(front, front.edge(edge)) ==
            Approx(sewn_length(before, before.edge(edge))).margin(1e-6));
    }
    CHECK(check_pattern(two).empty());
  }
}

TEST_CASE("A side dart with a mouth over 90 mm becomes two") {
  int several = 0;
  for (const Session& session : each_at_bust(1360, people(100), 62)) {
    const Pattern block = checked_block(session).block.pattern;
    const Style division = bust_dart_division({block, block});
    if (division.steps.size() < 2) continue;
    several += 1;
    const Pattern one = apply_style(block, {"", {division.steps.front()}}, kUsualCup).pattern;
    const Dart& side = one.piece("front").dart("side");
    CHECK((side.angle().degrees() > 22.0 || side.intake() > kWidestMouth));
    CHECK(divided(block).piece("front").dart("side_2").intake() < kWidestMouth);
  }
  if (people(100) == 100) CHECK(several >= 1);
}

TEST_CASE("What is pinned in the shoulder dart changes there until it is too wide") {
  const Pattern block = widest_block();
  const auto shares = [&](double by) {
    const Pattern fitted =
        apply_rows(block, {{CorrectionRow::FrontShoulderDartWider, 1, by, AmountAs::PerHalf,
                            BodySide::Both, "front_shoulder_dart"}})
            .pattern;
    const Pattern two = apply_style(fitted, bust_dart_division({block, fitted}), kUsualCup).pattern;
    return std::pair{two.piece("front").dart("shoulder").intake(),
                     two.piece("front").dart("side").angle().degrees()};
  };
  const auto [mouth, side] = shares(0.0);
  const auto [mouth_5, side_5] = shares(5.0);
  CHECK(side_5 == Approx(side).margin(1e-9));
  CHECK(mouth_5 == Approx(mouth + 5.0).margin(0.4));  // a chord over a wider angle
  const auto [mouth_20, side_20] = shares(20.0);
  CHECK(side_20 > side + 1.0);
  CHECK(mouth_20 <= kWidestMouth);
}

TEST_CASE("A side dart stays on the paper where a fitting moves underarm or armhole past it") {
  using enum CorrectionRow;
  int tried = 0, stayed = 0;
  for (const Pattern& block : each(blocks(30))) {
    if (bust_dart_division({block, block}).steps.empty()) continue;
    const Dart drafted = divided(block).piece("front").dart("side");
    for (const RowAmount& moved :
         {row(UnderarmLower, 1, 6.0), row(UnderarmLower, 1, 15.0), row(UnderarmHigher, 1, 15.0),
          row(ArmholeLarger, 1, 8.0), row(ArmholeLarger, -1, 4.0)}) {
      const Pattern fitted = apply_rows(block, {moved}).pattern;
      const Pattern two = divided(block, fitted);
      const double off = off_each_other(two.piece("front").dart("side"), drafted);
      CHECK(off < 2.0);  // past a second waist dart a place is found in hundredths of the side
      if (off < 0.01) ++stayed;
      CHECK(check_pattern(two).empty());
      ++tried;
    }
  }
  CHECK(tried >= 20);
  CHECK(stayed >= tried * 9 / 10);
}

TEST_CASE("A side dart goes with the bust line where the shoulder point moves the underarm") {
  const Pattern block = widest_block();
  const Point was = divided(block).piece("front").dart("side").legs[0];
  const Pattern fitted =
      apply_rows(block, {row(CorrectionRow::ShoulderPointLower, 1, 10.0)}).pattern;
  CHECK(distance(divided(block, fitted).piece("front").dart("side").legs[0], was) < 0.01);
  const Pattern higher = apply_rows(block, {row(CorrectionRow::BustPointHigher, 1, 13.0)}).pattern;
  const Dart side = divided(block, higher).piece("front").dart("side");
  CHECK(side.apex.y == Approx(divided(block).piece("front").dart("side").apex.y + 13.0));
  CHECK(side.legs[0].y > was.y + 8.0);
}

TEST_CASE("A dart that a style moves to the side stays there, too, on each side of its own") {
  const Pattern block = widest_block();
  PivotMove some{"front.shoulder", "front.side"};
  some.part = 0.3;
  const Style style{"test", {some}};
  const Pattern drafted = apply_style(block, style, kUsualCup).pattern;
  const Pattern fitted = apply_rows(block, {row(CorrectionRow::UnderarmLower, 1, 10.0)}).pattern;
  const auto places = side_places({block, fitted});
  const Pattern now = apply_style(fitted, style, kUsualCup, places).pattern;
  CHECK(places.at("front") == Approx(50.0).margin(0.01));
  CHECK(off_each_other(now.piece("front").dart("side"), drafted.piece("front").dart("side")) <
        0.01);
  const Pattern left =
      apply_rows(block, {row(CorrectionRow::UnderarmLower, 1, 10.0, BodySide::Left)}).pattern;
  const auto of_sides = side_places({block, left});
  CHECK(of_sides.size() == 1);
  CHECK(of_sides.at("front_left") == Approx(50.0).margin(0.01));
  CHECK(check_pattern(apply_style(left, style, kUsualCup, of_sides).pattern).empty());
}

TEST_CASE("A side dart keeps 25 mm from the underarm", "[kLeastUnderUnderarm]") {
  const Pattern block = widest_block();
  const auto place = [&](double by) {
    const Pattern fitted = apply_rows(block, {row(CorrectionRow::BustPointHigher, 1, by)}).pattern;
    return side_places({block, fitted}).at("front");
  };
  // As drafted 60 mm, less what the bust line goes up along the side.
  const double per_mm = (60.0 - place(10.0)) / 10.0;
  CHECK(place(34.5 / per_mm) == Approx(25.5).margin(0.01));
  CHECK(place(35.5 / per_mm) == Approx(25.0).margin(0.01));
}

TEST_CASE("A front that a fitting has unfolded is divided on both sides") {
  const Pattern block = widest_block();
  const Pattern sides =
      apply_rows(block, {{CorrectionRow{47}, 1, 4.0, AmountAs::PerHalf, BodySide::Left, ""}})
          .pattern;
  const Pattern two = apply_style(sides, bust_dart_division({block, sides}), kUsualCup).pattern;
  for (const char* name : {"front_right", "front_left"}) {
    INFO(name);
    CHECK(two.piece(name).dart("side").angle().degrees() >= 6.0);
    CHECK_FALSE(is_wide(two.piece(name).dart("shoulder")));
  }
  CHECK(check_pattern(two).empty());
}

TEST_CASE("A style that makes one dart of all of a front moves the bust dart") {
  CHECK(moves_bust_dart({"", {OneDart{"front.waist"}}}));
  CHECK(moves_bust_dart({"", {OneDart{"front_left.side:0.3"}}}));
  CHECK_FALSE(moves_bust_dart({"", {OneDart{"back.waist"}}}));
}

TEST_CASE("A dart at the side already, or none in the shoulder, is left alone") {
  const Pattern block = widest_block();
  PivotMove some{"front.shoulder", "front.side"};
  some.part = 0.1;
  const Pattern at_side = pivot(block, some).pattern;
  CHECK(bust_dart_division({block, at_side}).steps.empty());
  const Pattern elsewhere = pivot(block, {"front.shoulder", "front.neck"}).pattern;
  CHECK(bust_dart_division({block, elsewhere}).steps.empty());
}

TEST_CASE("A style that names the shoulder dart moves the bust dart") {
  const auto moves = [](const StyleStep& step) { return moves_bust_dart({"test", {step}}); };
  CHECK(moves(PivotMove{"front.shoulder", "front.waist"}));
  CHECK(moves(PivotMove{"front_left.shoulder", "front_left.waist"}));
  CHECK(moves(PivotMove{"front.waist", "front.shoulder:0.4"}));
  CHECK(moves(PanelSeam{"front.shoulder", "front.waist", "", ""}));
  CHECK(moves(GatherMove{"front.shoulder"}));
  CHECK_FALSE(moves(PivotMove{"back.shoulder", "back.neck"}));
  CHECK_FALSE(moves(PivotMove{"front.side", "front.armhole"}));
  CHECK_FALSE(moves(SplitMove{"front.waist"}));
  CHECK_FALSE(moves_bust_dart({}));
}
