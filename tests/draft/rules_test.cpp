// Single rules of the draft on one plain body, checked by hand arithmetic.
#include "blockwright/block/waist_edge.hpp"
#include "stages.hpp"
#include "support/blocks.hpp"
#include "support/each_person.hpp"
#include "support/people.hpp"

#include <catch2/catch.hpp>

#include <algorithm>
#include <cmath>

using namespace blockwright;
using enum MeasurementName;

namespace {

/// An average woman of the 1988 survey, full set.
Session average() {
  Session session = bust_only(907.0);
  tape(session, UpperChestGirth, 887.0);
  tape(session, UnderbustGirth, 770.0);
  tape(session, WaistGirth, 725.0);
  tape(session, NeckBaseGirth, 346.0);
  tape(session, ArmscyeGirth, 371.0);
  tape(session, ShoulderLength, 145.0);
  tape(session, ShoulderSlope, 25.5);
  tape(session, BackWaistLength, 367.0);
  tape(session, FrontWaistLength, 312.0);
  tape(session, SideNeckToBustPoint, 268.0);
  tape(session, SideNeckToWaist, 390.0);
  tape(session, BustPointWidth, 185.0);
  tape(session, AcrossBack, 376.0);
  tape(session, AcrossFront, 351.0);
  tape(session, SideLength, 177.0);
  tape(session, ScyeDepth, 186.0);
  return session;
}

}  // namespace

TEST_CASE("The bust point lies at half the bust point width, over the waist by tape") {
  const CheckedBlock checked = checked_block(average());
  const Point bust = checked.block.pattern.piece("front").landmark("bust_point");
  CHECK(bust.x == Approx(92.5));
  // 390 + 23 less 268 + 23 is 122 under the bust; the waist dips 5 (that it dips is common
  // practice, no source; by how much is ours). Her cup is 0.4 mm under the survey's mean.
  CHECK(bust.y == Approx(117.0).margin(0.05));
}

TEST_CASE("A bust point taped 20 mm over the waist comes to 40, and what that adds is told") {
  // The 40 mm are ours: room for a dart.
  Session session = average();
  tape(session, SideNeckToWaist, 268.0 + 20.0);
  tape(session, FrontWaistLength, 312.0 - 102.0);  // as much shorter, so that the neck stays
  const CheckedBlock checked = checked_block(session);
  double added = 0.0;
  for (const Adjustment& one : checked.block.adjustments) {
    if (one.name == SideNeckToWaist) added += one.by.number();
  }
  CHECK(added == Approx(20.0).margin(0.05));
  const MeasureBack* row = row_of(checked.report, SideNeckToWaist);
  REQUIRE(row != nullptr);
  const Measure off = row->residual() - row->adjustment;
  CHECK(std::abs(off.number()) < 0.1);
  const Piece& front = checked.block.pattern.piece("front");
  CHECK(front.dart("waist").leg() == Approx(40.0).margin(0.1));
}

TEST_CASE("The nape and the front neck point lie on their tapes") {
  const Pattern pattern = checked_block(average()).block.pattern;
  CHECK(pattern.piece("back").landmark("nape").y == Approx(373.0));
  CHECK(pattern.piece("front").landmark("front_neck_point").y == Approx(325.0).margin(0.1));
}

TEST_CASE("The back neck rises 0.40 of its width above the nape") {
  // Ours, the mean of simulated torsos.
  for (const Session& session : each_person(20, 11)) {
    const Pattern pattern = checked_block(session).block.pattern;
    const Piece& back = pattern.piece("back");
    const Vec neck = back.landmark("side_neck_point") - back.landmark("nape");
    CHECK(neck.x > 0.0);
    CHECK(neck.y == Approx(0.40 * neck.x).margin(1e-6));
  }
}

TEST_CASE("The front has more of the bust than the back: 10 mm and 0.3 of a cup over 12 cm each",
          "[kLeastFrontShare][kMostFrontShare]") {
  // Ours, from trials on simulated torsos; within 3 to 35 mm.
  const auto front_more = [](double cup) {
    Targets targets;
    targets.bust = 478.5;
    targets.cup = cup;
    return front_share_of_bust(targets) - 0.5 * targets.bust;
  };
  CHECK(front_more(137.0) == Approx(10.0 + 0.3 * 17.0));
  CHECK(front_more(110.0) == Approx(10.0 - 0.3 * 10.0));
  CHECK(front_more(97.0) == Approx(3.1));
  CHECK(front_more(96.0) == Approx(3.0));
  CHECK(front_more(203.0) == Approx(34.9));
  CHECK(front_more(204.0) == Approx(35.0));
}

TEST_CASE("The drafted front has that share on its bust line where the armhole has room for it") {
  for (const double cup : {131.0, 137.0, 143.0}) {
    INFO(cup);
    Session session = average();
    tape(session, UnderbustGirth, 907.0 - cup);
    const CheckReport report = checked_block(session).report;
    const double more =
        0.5 * (length_of(report, "front.bust_line") - length_of(report, "back.bust_line"));
    CHECK(more == Approx(10.0 + 0.3 * (cup - 120.0)).margin(0.05));
  }
}

TEST_CASE("The back shoulder dart takes 8 mm about a blade point half way along the across back") {
  // The blade point half way: common practice, no source. The 8 mm are ours.
  const Pattern pattern = checked_block(average()).block.pattern;
  const Piece& back = pattern.piece("back");
  const Dart& dart = back.dart("shoulder");
  CHECK(dart.intake() == Approx(8.0).margin(1e-6));
  CHECK(dart.apex.x == Approx(0.5 * back.landmark("across_back_point").x));
}

TEST_CASE("Front shoulder and waist dart turn about one bust point") {
  const Pattern pattern = checked_block(average()).block.pattern;
  const Piece& front = pattern.piece("front");
  CHECK(front.dart("shoulder").apex == front.dart("waist").apex);
}

namespace {

/// What the stitched waist darts of a back take out of its bust line, which is given back there.
double given_back_on_bust_line(const Piece& back) {
  double taken = 0.0;
  for (const Dart& dart : back.darts) {
    if (dart.edge != "waist") continue;
    taken += taken_at_level(dart, back.balance_lines.front().path.start().y);
  }
  return taken;
}

}  // namespace

TEST_CASE("Back waist darts end 25 to 35 mm under the underarm, or 30 mm over a low bust line") {
  // 2 to 4 cm under the armhole: common practice, no source; the numbers are ours. Wide darts that
  // reach so high would be given back over 15 mm on the bust line: they end lower, ours too.
  int lower = 0, as_high = 0;
  for (const Session& session : each_person(200, 77)) {
    const Pattern pattern = checked_block(session).block.pattern;
    const Piece& back = pattern.piece("back");
    const double line = back.balance_lines.front().path.start().y;
    REQUIRE(back.balance_lines.front().name == "bust_line");
    const double underarm = back.landmark("underarm_point").y;
    const double given_back = given_back_on_bust_line(back);
    CHECK(given_back <= 17.0);
    for (const Dart& dart : back.darts) {
      if (dart.edge != "waist") continue;
      const double high = std::fmin(underarm - 25.0, line + 30.0);
      CHECK(dart.point.y <= high + 0.5);
      const bool ends_lower = dart.point.y < high - 10.5;
      if (ends_lower) CHECK(given_back >= 8.0);
      ++(ends_lower ? lower : as_high);
    }
  }
  CHECK(lower > 0);
  CHECK(as_high > 5 * lower);
}

TEST_CASE("Where only the bust is taped the bust dart is the usual one, wider for a larger bust") {
  // About 19 degrees at bust 90: ours, from the best dart on simulated torsos. The survey's
  // measurements ask for a little less or more.
  const auto dart = [](double bust) {
    return checked_block(bust_only(bust))
        .block.pattern.piece("front")
        .dart("shoulder")
        .angle()
        .degrees();
  };
  CHECK(dart(900.0) == Approx(19.0).margin(2.5));
  CHECK(dart(1000.0) - dart(900.0) > 1.0);
  CHECK(dart(1100.0) - dart(1000.0) > 1.0);
}

TEST_CASE("A back dart over 35 mm is two") {
  // That a wide back dart becomes two is common practice, no source; the number is ours.
  int ones = 0, twos = 0;
  for (const Session& session : each_person(300, 78)) {
    const Pattern pattern = checked_block(session).block.pattern;
    const Piece& back = pattern.piece("back");
    if (back.darts.size() == 2) {
      ++ones;
      // A second one of less than 0.5 mm is not drawn.
      CHECK(back.darts[1].intake() <= 35.5);
    } else {
      ++twos;
      // As one dart it would be over 35; the edge between two is a little straighter.
      CHECK(back.darts[1].intake() + back.darts[2].intake() > 33.0);
    }
  }
  CHECK(ones > 0);
  CHECK(twos > 0);
}

TEST_CASE("A fuller cup draws a larger front and a larger bust dart") {
  Session flat = average();
  Session full = average();
  tape(flat, UnderbustGirth, 830.0);
  tape(flat, UpperChestGirth, 920.0);
  tape(full, UnderbustGirth, 720.0);
  tape(full, UpperChestGirth, 850.0);
  const CheckedBlock a = checked_block(flat);
  const CheckedBlock b = checked_block(full);
  const auto angle = [](const CheckedBlock& c) {
    return c.block.pattern.piece("front").dart("shoulder").angle().degrees();
  };
  // That a fuller cup asks for a wider dart is common practice, no source; 5 degrees are ours.
  CHECK(angle(b) > angle(a) + 5.0);
}

TEST_CASE(
    "Ease is an input: more bust ease comes back on the bust line and nowhere else at the bust") {
  Ease ease = Ease::of_toile();
  ease.set(BustGirth, Length::mm(80.0));
  const CheckedBlock checked = checked_block(average(), ease);
  CHECK(errors_of(checked.report).empty());
  CHECK(row_of(checked.report, BustGirth)->pattern.number() == Approx(987.0).margin(0.01));
  CHECK(row_of(checked.report, WaistGirth)->pattern.number() == Approx(750.0).margin(0.1));
}

TEST_CASE("The same body drafts to the same numbers, twice in one process") {
  const Pattern a = checked_block(average()).block.pattern;
  const Pattern b = checked_block(average()).block.pattern;
  for (const Piece& piece : each(a.pieces)) {
    for (const Edge& edge : piece.edges) {
      CHECK(edge.path == b.piece(piece.name).edge(edge.name).path);
    }
  }
}

namespace {

/// How many of a hundred people get back what they are sure of; the others are told by how much
/// not.
int given_back_exactly(MeasurementName name) {
  int exact = 0;
  for (Session session : each_person(100, 79)) {
    session.sure.add(name);
    const CheckedBlock checked = checked_block(session);
    const MeasureBack* row = row_of(checked.report, name);
    REQUIRE(row != nullptr);
    const double off = row->residual().number();
    if (std::abs(off) <= 0.1) ++exact;
    CHECK(row->adjustment.number() == Approx(off).margin(0.1));
  }
  return exact;
}

}  // namespace

TEST_CASE("What is sure comes back within a tenth of a millimetre, if the others can give way") {
  CHECK(given_back_exactly(MeasurementName::AcrossBack) == 100);
  CHECK(given_back_exactly(MeasurementName::AcrossFront) == 100);
  CHECK(given_back_exactly(MeasurementName::UpperChestGirth) >= 90);
}

TEST_CASE(
    "Across back that moved for the shoulder point lies as far inside it as the armhole under it "
    "needs, or 30 mm, and only then") {
  // 7.5 mm, and 0.25 less for each mm of the back's part of the armhole over 42, down to 7.5 mm
  // outside. The numbers are ours.
  int moved_for_it = 0, moved_for_others = 0;
  for (const Session& session : each_person(300, 81)) {
    const CheckedBlock checked = checked_block(session);
    const Piece& back = checked.block.pattern.piece("back");
    const double across = back.landmark("across_back_point").x;
    const double inside = back.landmark("shoulder_point").x - across;
    const double width = back.landmark("underarm_point").x - across;
    const double least = 7.5 - std::clamp(0.25 * (width - 42.0), 0.0, 15.0);
    const bool at_bound = std::abs(inside - least) < 1e-3 || std::abs(inside - 30.0) < 1e-3;
    for (const Adjustment& a : checked.block.adjustments) {
      if (a.name != MeasurementName::AcrossBack) continue;
      if (a.why.plain().find("contradict each other") != std::string::npos) continue;  // the tape
      const bool says_so = a.why.plain().find("shoulder point") != std::string::npos;
      INFO(a.why.plain() << "; inside " << inside << ", least " << least);
      // An armhole too narrow for the arm is the true cause, also where it ends at the bound.
      const bool for_arm = a.why.plain().find("such an arm needs") != std::string::npos;
      CHECK(says_so == (at_bound && !for_arm));
      ++(says_so ? moved_for_it : moved_for_others);
    }
  }
  CHECK(moved_for_it > 10);
  CHECK(moved_for_others > 100);
}

TEST_CASE("A side seam slants by 6 degrees at most, as long as darts can take the rest",
          "[kMostSideSlant]") {
  // Ours: more slant widens and lowers the underarm. On a waist that dips, 0.3 degrees more are
  // drawn.
  int at_bound = 0;
  for (const Session& session : each(people_at_bust(1250.0, people(40), 5))) {
    const Pattern pattern = checked_block(session).block.pattern;
    double widest = 0.0;
    for (const Piece& piece : pattern.pieces) {
      for (const Dart& dart : piece.darts) {
        if (dart.edge == "waist") widest = std::fmax(widest, dart.angle().degrees());
      }
    }
    if (widest > 24.0) continue;
    const Vec up = unit(tangent_at_length(pattern.piece("back").edge("side").path, 0.0));
    const double slant = Angle::radians(std::asin(std::abs(up.x))).degrees();
    CHECK(slant <= 6.35);
    at_bound += slant > 5.99 ? 1 : 0;
  }
  CHECK(at_bound > people(10));
}
