// The front neck's depth is the difference of two long tapes. Where no neck is so deep or shallow,
// one of the two is named as doubted.
#include "blockwright/text/units.hpp"
#include "support/blocks.hpp"
#include "support/each_person.hpp"
#include "support/people.hpp"

#include <catch2/catch.hpp>

#include <cmath>

using namespace blockwright;
using enum MeasurementName;

namespace {

/// An average woman of the 1988 survey (Gordon et al. 1989): her lengths and girths.
Session mean_woman() {
  const Body mean = fill_in(bust_only(907.0));
  Session session = bust_only(907.0);
  for (const MeasurementName name :
       {UpperChestGirth, UnderbustGirth, WaistGirth, NeckBaseGirth, BackWaistLength,
        FrontWaistLength, SideNeckToBustPoint, SideNeckToWaist, AcrossBack, SideLength}) {
    tape(session, name, std::round(mean[name].number()));
  }
  return session;
}

/// The tape of one measurement slipped by that much, in mm.
Session slipped(Session session, MeasurementName name, double by) {
  tape(session, name, session.tape[name]->median().number() + by);
  return session;
}

struct Judged {
  CheckedBlock checked;
  Problems problems;
};

Judged judged(const Session& session) {
  Judged judged{checked_block(session), {}};
  const auto& neck = judged.checked.block.odd_neck;
  if (neck) judged.problems = judge_neck(judged.checked.body, *neck);
  return judged;
}

std::string doubted(const Session& session) {
  const Problems problems = judged(session).problems;
  return problems.empty() ? "nothing" : problems.front().where;
}

double front_neck_depth(const CheckedBlock& checked) {
  const Piece& front = checked.block.pattern.piece("front");
  return front.edge("neckline").path.start().y - front.landmark("front_neck_point").y;
}

/// By how much the pattern departs from tape and ease, in mm.
double moved(const CheckedBlock& checked, MeasurementName name) {
  double by = 0.0;
  for (const Adjustment& a : checked.block.adjustments) by += a.name == name ? a.by.number() : 0.0;
  return by;
}

}  // namespace

TEST_CASE("Two front lengths that leave a usual neck are not doubted, nor is a slip of a cm") {
  CHECK(doubted(mean_woman()) == "nothing");
  CHECK_FALSE(checked_block(mean_woman()).block.odd_neck);
  for (const double by : {-10.0, 10.0}) {
    CHECK(doubted(slipped(mean_woman(), FrontWaistLength, by)) == "nothing");
    CHECK(doubted(slipped(mean_woman(), SideNeckToWaist, by)) == "nothing");
  }
}

TEST_CASE("A front waist length that is 4 cm wrong either way is the one that is doubted") {
  for (const double by : {-40.0, 40.0}) {
    INFO(by);
    CHECK(doubted(slipped(mean_woman(), FrontWaistLength, by)) == "front_waist_length");
  }
}

TEST_CASE("A length over the bust that is 4 cm wrong either way is the one that is doubted") {
  for (const double by : {-40.0, 40.0}) {
    INFO(by);
    CHECK(doubted(slipped(mean_woman(), SideNeckToWaist, by)) == "side_neck_to_waist");
  }
}

TEST_CASE("Both are doubted where they are 25 mm wrong to opposite sides") {
  const Session session =
      slipped(slipped(mean_woman(), FrontWaistLength, 25.0), SideNeckToWaist, -27.0);
  CHECK(doubted(session) == "front_waist_length, side_neck_to_waist");
}

TEST_CASE("A doubted length is told with its estimate, the neck with that, what to take again") {
  const auto [checked, problems] = judged(slipped(mean_woman(), SideNeckToWaist, 50.0));
  REQUIRE(problems.size() == 1);
  const Problem problem = worded(problems.front(), Unit::Cm);
  CHECK(problem.code == "measure.neck_depth");
  CHECK(problem.severity == Severity::Warning);
  CHECK(problem.measurements == std::vector<std::string>{"side_neck_to_waist"});
  CHECK(*problem.limit.most == checked.block.odd_neck->most);
  const std::string text = problem.message.plain(), hint = problem.hint.plain();
  INFO(text);
  CHECK(text.find("runs nearly straight and turns at the front neck point") != std::string::npos);
  CHECK(text.find("side neck to waist was taped 44 cm") != std::string::npos);
  CHECK(text.find("expect 39 cm, give or take 1.2 cm") != std::string::npos);
  CHECK(text.find("times that too long") != std::string::npos);
  CHECK(text.find("With 39 cm instead the front neck would be 8.1 cm") != std::string::npos);
  // Which is the neck that her own tape draws.
  CHECK(front_neck_depth(checked_block(mean_woman())) == Approx(81.0).margin(1.5));
  CHECK(hint.find("take side neck to waist again: " + std::string(info(SideNeckToWaist).how)) !=
        std::string::npos);
  CHECK(hint.find("look at front waist length and neck base girth") != std::string::npos);
  CHECK(worded(problems.front(), Unit::Inch).message.plain().find("17 5/16 in") !=
        std::string::npos);
}

TEST_CASE("What the maker is sure of is not doubted, and comes back exactly") {
  Session session = slipped(mean_woman(), FrontWaistLength, 40.0);
  session.sure.add(FrontWaistLength);
  CHECK(doubted(session) == "side_neck_to_waist");
  CHECK(moved(checked_block(session), FrontWaistLength) == 0.0);
  CHECK(moved(checked_block(session), SideNeckToWaist) > 15.0);
  session.sure.add(SideNeckToWaist);
  CHECK(doubted(session) == "front_waist_length");
}

TEST_CASE("A length that was not taped is not doubted; without either nothing is") {
  Session session = slipped(mean_woman(), FrontWaistLength, 60.0);
  session.tape[SideNeckToWaist].reset();
  tape(session, SideNeckToBustPoint, 250.0);
  const std::string one = doubted(session);
  CHECK((one == "front_waist_length" || one == "nothing"));
  session.tape[FrontWaistLength].reset();
  CHECK(doubted(session) == "nothing");
}

// An odd neck by less than two readings of a length differ is drawn within bounds and not told.
TEST_CASE("A neck is odd by 5 mm before it is noted, and by 15 before it is warned of") {
  int notes = 0, warnings = 0;
  for (double by = 0.0; by <= 60.0; by += 1.0) {
    const auto [checked, problems] = judged(slipped(mean_woman(), SideNeckToWaist, by));
    const auto& neck = checked.block.odd_neck;
    const double odd = neck ? (neck->asked - neck->most).mm() : 0.0;
    INFO(by << " makes it odd by " << odd);
    CHECK(problems.empty() == (odd <= 5.0));
    if (problems.empty()) continue;
    const bool warning = problems.front().severity == Severity::Warning;
    CHECK(warning == (odd > 15.0));
    ++(warning ? warnings : notes);
  }
  CHECK(notes > 5);
  CHECK(warnings > 5);
}

namespace {

/// Of people with one of the two lengths 4 cm wrong and so an odd neck: how many are told so.
struct Found {
  int odd = 0, right = 0, wrong = 0;
};

Found found(MeasurementName slip, double by) {
  Found f;
  for (const Session& person : each_person(people(400), 4)) {
    const std::string where = doubted(slipped(person, slip, by));
    if (where == "nothing") continue;
    ++f.odd;
    f.right += where == info(slip).key ? 1 : 0;
    f.wrong += where.find(info(slip).key) == std::string::npos ? 1 : 0;
  }
  return f;
}

}  // namespace

TEST_CASE("Of people with one front length 4 cm wrong and an odd neck most are told which") {
  for (const MeasurementName slip : {FrontWaistLength, SideNeckToWaist}) {
    for (const double by : {-40.0, 40.0}) {
      const Found f = found(slip, by);
      INFO(info(slip).key << ' ' << by << ": " << f.odd << " odd, " << f.right << " right, "
                          << f.wrong << " wrong");
      CHECK(f.odd > people(400) / 3);
      CHECK(f.right > 0.8 * f.odd);
      CHECK(f.wrong < 0.1 * f.odd);
    }
  }
}
