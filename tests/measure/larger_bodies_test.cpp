// Bodies beyond the survey's 74 to 117 cm of bust: docs/decisions/013-larger-and-smaller-bodies.md.
#include "blockwright/measure/body.hpp"
#include "small_moves.hpp"
#include "support/each_person.hpp"
#include "support/people.hpp"

#include <catch2/catch.hpp>

#include <cmath>
#include <vector>

namespace blockwright {
namespace {

using enum MeasurementName;

bool is_filled_in(MeasurementName name) { return info(name).fill_in.by != FillIn::By::Draft; }

double estimate(MeasurementName name, double bust_mm) {
  return fill_in(bust_only(bust_mm))[name].number();
}

double doubt(MeasurementName name, double bust_mm) {
  return fill_in(bust_only(bust_mm)).measurements[name]->doubt.number();
}

std::vector<double> every_cm() {
  std::vector<double> busts;
  for (double bust = 700.0; bust <= 1500.0; bust += 10.0) busts.push_back(bust);
  return busts;
}

// What no living body breaks. The orders are the survey's, on all of its 2,208 women (Gordon et al.
// 1989); the shares of the bust are its 0.1th to 99.9th percentiles, widened (ours).
void check_shape(const Body& body) {
  const auto share = [&](MeasurementName name) { return body[name] / body[BustGirth]; };
  CHECK(share(UnderbustGirth) > 0.72);
  CHECK(share(UnderbustGirth) < 0.95);
  CHECK(body[WaistGirth] < body[BustGirth] + Length::mm(60));
  CHECK(share(WaistGirth) > 0.60);
  CHECK(body[UnderbustGirth] < body[UpperChestGirth]);
  CHECK(body[UpperChestGirth] < body[BustGirth] + Length::mm(70));
  CHECK(body[UpperArmGirth] + Length::mm(30) < body[ArmscyeGirth]);
  CHECK(body[SideNeckToBustPoint] + Length::mm(60) < body[SideNeckToWaist]);
  CHECK(body[FrontWaistLength] + Length::mm(20) < body[SideNeckToWaist]);
  CHECK(body[ScyeDepth] + Length::mm(100) < body[BackWaistLength]);
  CHECK(2.0 * body[ShoulderLength] < body[AcrossBack]);
  CHECK(body[BustPointWidth] + Length::mm(110) < body[AcrossBack]);
  CHECK(body[AcrossFront] < body[AcrossBack]);
}

TEST_CASE("from the bust alone every centimetre from 70 to 150 gives a body that can be") {
  for (const double bust : each(every_cm(), "bust, mm")) {
    const Body body = fill_in(bust_only(bust));
    check_shape(body);
    for (const MeasurementInfo& entry : measurement_catalogue()) {
      INFO(entry.key);
      if (is_filled_in(entry.name)) CHECK(entry.allows(body[entry.name]));
    }
  }
}

TEST_CASE("from the bust alone nothing jumps, and nothing but the slope and the side falls") {
  for (const MeasurementInfo& entry : each(measurement_catalogue())) {
    if (!is_filled_in(entry.name)) continue;
    for (double bust = 700.0; bust < 1500.0; bust += 10.0) {
      INFO("bust " << bust);
      const double change = estimate(entry.name, bust + 10.0) - estimate(entry.name, bust);
      CHECK(std::abs(change) < 10.0 + 1e-9);
      if (entry.name != ShoulderSlope && entry.name != SideLength) CHECK(change > -1e-9);
    }
  }
}

TEST_CASE("bones do not grow with a bust beyond the survey, and what lies over them slowly") {
  const auto grows = [](MeasurementName name, double from, double to) {
    return (estimate(name, to) - estimate(name, from)) / (to - from);
  };
  for (const MeasurementName name : {ShoulderLength, ShoulderSlope, SideLength, Stature}) {
    INFO(info(name).key);
    CHECK(estimate(name, 1500.0) == Approx(estimate(name, 1170.0)));
    CHECK(estimate(name, 700.0) == Approx(estimate(name, 740.0)));
  }
  for (const MeasurementName name : {AcrossBack, AcrossFront, BustPointWidth, SideNeckToBustPoint,
                                     BackWaistLength, FrontWaistLength, ScyeDepth}) {
    INFO(info(name).key);
    CHECK(grows(name, 1200.0, 1500.0) > 0.0);
    CHECK(grows(name, 1200.0, 1500.0) < 0.8 * grows(name, 900.0, 1100.0));
  }
}

// EN 13402-3, women, from memory: waists 94, 100, 106, 112 and hips 117, 122, 127, 132 at busts
// 110, 116, 122, 128.
TEST_CASE("beyond the survey waist and hip grow as EN 13402-3 has them") {
  CHECK(estimate(WaistGirth, 1280.0) - estimate(WaistGirth, 1220.0) == Approx(60.0).margin(1.0));
  CHECK(estimate(HipGirth, 1280.0) - estimate(HipGirth, 1220.0) == Approx(50.0).margin(1.0));
}

// ASTM D5585-11e1, seen on its publisher's page: upper chest 99.7 and 111.4, underbust 86.4 and
// 100.6 cm at busts of 102.6 and 116.8 (sizes 14 and 20).
TEST_CASE("beyond the survey chest and underbust grow as ASTM D5585-11e1 has them") {
  const double by = 1168.0 - 1026.0;
  CHECK(estimate(UpperChestGirth, 1200.0 + by) - estimate(UpperChestGirth, 1200.0) ==
        Approx(117.0).margin(1.0));
  CHECK(estimate(UnderbustGirth, 1200.0 + by) - estimate(UnderbustGirth, 1200.0) ==
        Approx(142.0).margin(1.0));
}

TEST_CASE("estimates beyond the survey are marked, what was taped and estimates within are not") {
  for (const double bust : each({700.0, 739.0, 1171.0, 1500.0})) {
    const Body body = fill_in(bust_only(bust));
    CHECK_FALSE(body.measurements[BustGirth]->extrapolated);
    CHECK(body.measurements[WaistGirth]->extrapolated);
    CHECK(body.measurements[AcrossFront]->extrapolated);
  }
  for (const double bust : each({740.0, 900.0, 1170.0})) {
    CHECK_FALSE(fill_in(bust_only(bust)).measurements[WaistGirth]->extrapolated);
  }
}

TEST_CASE("the farther beyond the survey, the larger the doubt") {
  for (const MeasurementName name : {WaistGirth, AcrossBack, ShoulderLength}) {
    INFO(info(name).key);
    CHECK(doubt(name, 800.0) == Approx(doubt(name, 1170.0)));
    CHECK(doubt(name, 1470.0) == Approx(1.5 * doubt(name, 1170.0)));
    CHECK(doubt(name, 1300.0) > doubt(name, 1200.0));
    CHECK(doubt(name, 700.0) > doubt(name, 730.0));
  }
}

// The tape of the estimated body at one bust, with another bust girth.
Session tape_of(double body_bust, double bust) {
  const Body body = fill_in(bust_only(body_bust));
  Session session = bust_only(bust);
  for (const MeasurementInfo& entry : measurement_catalogue()) {
    if (entry.name == BustGirth || !body.has(entry.name)) continue;
    tape(session, entry.name, body[entry.name].number());
  }
  return session;
}

TEST_CASE("a large body is not questioned, and a bust girth that is not hers is") {
  const Session large = tape_of(1400.0, 1400.0);
  CHECK(judge(large, fill_in(large)).empty());
  for (const double slip : each({1200.0, 1600.0})) {
    const Session session = tape_of(1400.0, slip);
    const Problems problems = judge(session, fill_in(session));
    REQUIRE_FALSE(problems.empty());
    CHECK(problems.front().code == "measure.retake");
    CHECK(problems.front().where == "bust_girth");
  }
  const Session typed = tape_of(1050.0, 1500.0);  // 150 for 105
  CHECK(judge(typed, fill_in(typed)).front().where == "bust_girth");
}

TEST_CASE("a waist far larger or smaller than the bust leaves estimated girths their share of it") {
  for (const double bust : each({700.0, 1000.0, 1300.0, 1500.0})) {
    for (const double waist : each({0.5, 0.7, 1.0, 1.2, 1.5})) {
      Session session = bust_only(bust);
      tape(session, WaistGirth, waist * bust);
      const Body body = fill_in(session);
      CHECK(body[UnderbustGirth] >= 0.72 * body[BustGirth]);
      CHECK(body[UnderbustGirth] <= 0.95 * body[BustGirth]);
      CHECK(body[UpperChestGirth] >= 0.82 * body[BustGirth]);
      CHECK(body[UpperChestGirth] <= 1.15 * body[BustGirth]);
      CHECK(body[ArmscyeGirth] <= 0.52 * body[BustGirth]);
    }
  }
}

int questioned(int bust) {
  int count = 0;
  for (const Session& person : each_at_bust(bust, 400, 3)) {
    count += judge(person, fill_in(person)).empty() ? 0 : 1;
  }
  return count;
}

TEST_CASE("people beyond the survey are hardly questioned more often than those within") {
  const int within = questioned(900);
  CHECK(within > 0);
  for (const int bust : each({700, 1200, 1300, 1400, 1500})) {
    CHECK(questioned(bust) <= within + 8);
  }
}

TEST_CASE("a tenth of a millimetre moves no estimate beyond the survey by more than half of one") {
  for (const double bust : each({700.0, 739.95, 1169.95, 1300.0, 1500.0})) {
    const auto people = people_at_bust(bust, 40, 17);
    for (RandomCase& random : each_random(40, 17)) {
      Session session = people[static_cast<std::size_t>(random.number)];
      tape(session, BustGirth, bust);
      for (const MeasurementInfo& entry : measurement_catalogue()) {
        if (entry.name != BustGirth && random.whole(0, 1) == 1) session.tape[entry.name].reset();
      }
      check_small_moves(session);
    }
  }
}

}  // namespace
}  // namespace blockwright
