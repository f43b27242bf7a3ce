// The likeliest slip of a session: what it is, whom it blames, and how often that is right of
// people drawn from the survey's statistics. The rates wanted are ours; of 5 cm they are those
// computed from the rows of the 1988 survey (Gordon et al. 1989, NATICK/TR-89/044), all other tapes
// known.
#include "blockwright/measure/likely_slips.hpp"

#include "blockwright/text/units.hpp"
#include "support/each_person.hpp"
#include "support/planted_slips.hpp"

#include <catch2/catch.hpp>

#include <algorithm>
#include <cmath>
#include <map>

namespace blockwright {
namespace {

using enum MeasurementName;

std::vector<LikelySlip> slips_of(const Session& session, Unit typed_in = Unit::Cm) {
  return likely_slips(session, fill_in(session), typed_in);
}

// The survey's mean woman, taped to 1 mm.
Session mean_woman() {
  Session session = bust_only(907.0);
  const Body body = fill_in(session);
  for (const MeasurementInfo& entry : kMeasurements) {
    if (body.has(entry.name)) tape(session, entry.name, std::round(body[entry.name].number()));
  }
  return session;
}

std::string text_of(const LikelySlip& slip) {
  const Problem problem = worded(problem_of(slip), Unit::Cm);
  return problem.message.plain() + " / " + problem.hint.plain();
}

bool has(const std::string& text, const std::string& part) {
  return text.find(part) != std::string::npos;
}

struct OneSlip {
  std::string_view name;  // of the slip
  MeasurementName of;
  double read, meant;
};

TEST_CASE("each slip of tape and pen is told from the others, with what was meant") {
  const std::vector<OneSlip> slips = {
      {"swapped_digits", WaistGirth, 960, 690}, {"swapped_digits", NeckBaseGirth, 436, 346},
      {"swapped_digits", AcrossBack, 306, 360}, {"half", HipGirth, 485, 970},
      {"half", AcrossBack, 185, 370},           {"half", BustPointWidth, 92, 184},
      {"inches", WaistToHip, 90, 228.6},        {"ten_off", BackWaistLength, 467, 367},
      {"ten_off", UnderbustGirth, 880, 780},    {"loose", ArmscyeGirth, 421, 371},
      {"misread", ScyeDepth, 217, 186},
  };
  for (const OneSlip& slip : each(slips)) {
    Session session = mean_woman();
    tape(session, slip.of, slip.read);
    const auto found = slips_of(session);
    REQUIRE_FALSE(found.empty());
    CHECK(found.front().name == slip.name);
    CHECK(found.front().values.front().name == slip.of);
    if (found.front().exact) {
      CHECK(found.front().values.front().meant.number() == Approx(slip.meant).margin(0.1));
    }
  }
}

TEST_CASE("a slip with a cure says in one line what was read and what was meant") {
  Session session = mean_woman();
  tape(session, NeckBaseGirth, 436.0);
  const auto slips = slips_of(session);
  REQUIRE(slips.size() == 1);
  const Problem problem = worded(problem_of(slips.front()), Unit::Cm);
  CHECK(problem.code == "measure.slip");
  CHECK(problem.severity == Severity::Warning);
  CHECK(problem.where == "neck_base_girth");
  CHECK(has(problem.message.plain(), "43.6 cm: did you mean 34.6 cm (two digits swapped)?"));
  CHECK(has(problem.hint.plain(), "take it again: Round the base of the neck"));
}

// An upper arm of 12 inches as 21, which are 53.34 cm.
TEST_CASE("digits swap as they were written: in the unit of the file") {
  Session session = mean_woman();
  tape(session, UpperArmGirth, 21.0 * 25.4);
  CHECK(slips_of(session, Unit::Inch).front().name == "swapped_digits");
  CHECK(slips_of(session, Unit::Cm).front().name != "swapped_digits");
}

TEST_CASE("readings that agree were not swapped one by one") {
  Session session = mean_woman();
  tape(session, NeckBaseGirth, {436.0, 437.0});
  CHECK(slips_of(session).front().name != "swapped_digits");
}

TEST_CASE("lengths that end at one level are blamed together") {
  struct Level {
    std::string_view name;
    std::vector<MeasurementName> moved;
    double by, last;  // of the last of them, where it moves the other way
    std::string said;
  };
  const std::vector<Level> levels = {
      {"waist_level",
       {BackWaistLength, FrontWaistLength, SideNeckToWaist, SideLength, WaistToHip},
       60,
       -60,
       "the waist was taken too low"},
      {"waist_level",
       {BackWaistLength, FrontWaistLength, SideNeckToWaist, SideLength, WaistToHip},
       -60,
       60,
       "the waist was taken too high"},
      {"nape", {BackWaistLength, ScyeDepth}, 40, 40, "above the nape"},
      {"underarm_level", {ScyeDepth, SideLength}, 30, -30, "armpits was taken too low"},
      {"side_neck", {SideNeckToBustPoint, SideNeckToWaist}, 60, 60, "behind the side neck point"},
      {"shoulder_to_arm", {ShoulderLength, ShoulderSlope}, 35, 7, "out on to the arm"},
  };
  for (const Level& level : each(levels)) {
    Session session = mean_woman();
    for (const MeasurementName name : level.moved) {
      Measure& value = session.tape[name]->values.front();
      value += measure_of(name, name == level.moved.back() ? level.last : level.by);
    }
    const auto slips = slips_of(session);
    REQUIRE(slips.size() == 1);
    CHECK(slips.front().name == level.name);
    CHECK(slips.front().values.size() == level.moved.size());
    CHECK(has(text_of(slips.front()), level.said));
    CHECK(problem_of(slips.front()).measurements.size() == level.moved.size());
  }
}

TEST_CASE("two slips are both found, the greater first, and their neighbours are left in peace") {
  Session session = mean_woman();
  tape(session, NeckBaseGirth, 436.0);
  tape(session, BackWaistLength, 467.0);
  const auto slips = slips_of(session);
  REQUIRE(slips.size() == 2);
  CHECK(slips[0].gain > slips[1].gain);
  CHECK(slips[0].values.front().name == BackWaistLength);
  CHECK(slips[1].values.front().name == NeckBaseGirth);
}

TEST_CASE("a draft tells the first and how many more") {
  Session session = mean_woman();
  tape(session, NeckBaseGirth, 436.0);
  tape(session, BackWaistLength, 467.0);
  const Body body = fill_in(session);
  CHECK(judge(session, body).size() == 2);
  const Problems first = judge(session, body, {.slips = Slips::First});
  REQUIRE(first.size() == 1);
  CHECK(first.front().where == "back_waist_length");
  CHECK(has(first.front().hint.plain(),
            ". Then look at 1 more: `blockwright tape CLIENT --check --all` lists it"));
  CHECK_FALSE(has(first.front().hint.plain(), ".."));
}

TEST_CASE("what the maker is sure of is not named, nor are its neighbours in its place") {
  Session session = mean_woman();
  tape(session, NeckBaseGirth, 436.0);
  session.sure.add(NeckBaseGirth);
  CHECK(slips_of(session).empty());
}

// The survey's women were 18 to 50 years old; older and fuller bodies have such waists (EN 13402-3
// has waists up to the bust in its larger sizes, from memory).
TEST_CASE("a waist as large as the bust is a build; over 0.92 of it at most a note") {
  for (const double bust : each({900.0, 1000.0, 1150.0})) {
    Session session = bust_only(bust);
    for (const double share : each({1.0, 1.03})) {
      tape(session, WaistGirth, std::round(share * bust));
      CHECK(slips_of(session).empty());
    }
    tape(session, WaistGirth, std::round(0.96 * bust));
    for (const LikelySlip& slip : slips_of(session)) {
      CHECK((slip.exact || problem_of(slip).severity == Severity::Note));
    }
  }
}

// 97 of a bust of 98 is an ordinary build, whatever its digits would make.
TEST_CASE("no swap is offered of a waist up to the size of the bust") {
  Session session = bust_only(980.0);
  tape(session, WaistGirth, 970.0);
  for (const LikelySlip& slip : slips_of(session)) CHECK(slip.name != "swapped_digits");
}

// A shoulder taken on to the arm: 16.7 would be 2.7 SD off itself.
TEST_CASE("digits swapped that would be odd themselves are not offered") {
  Session session = mean_woman();
  tape(session, ShoulderLength, 176.0);
  const auto slips = slips_of(session);
  REQUIRE_FALSE(slips.empty());
  CHECK(slips.front().name != "swapped_digits");
  CHECK_FALSE(has(worded(problem_of(slips.front()), Unit::Cm).message.plain(), " mm"));
}

// 23 % of the survey's women have an upper chest larger than the bust, 10 % a hip smaller.
TEST_CASE("upper chest over bust and hip under bust are no slips") {
  Session session = bust_only(920.0);
  tape(session, UpperChestGirth, 940.0);
  tape(session, HipGirth, 905.0);
  CHECK(slips_of(session).empty());
}

TEST_CASE("a slope, in degrees, is blamed like any length") {
  Session session = mean_woman();
  tape(session, ShoulderSlope, 42.0);
  const auto slips = slips_of(session);
  REQUIRE_FALSE(slips.empty());
  CHECK(slips.front().values.front().name == ShoulderSlope);
}

// --- how often ---------------------------------------------------------------------------------

// The few people of a sanitized build scatter.
const double kScatter = kSanitized ? 0.15 : 0.0;

TEST_CASE("of ordinary people at most 1 in 100 is told of each item") {
  std::map<std::string, int> told;
  const int count = people(2000);
  for (const Session& person : each_person(count, 181)) {
    for (const LikelySlip& slip : slips_of(person)) {
      told[slip.values.size() == 1 ? std::string(info(slip.values.front().name).key)
                                   : std::string(slip.name)] += 1;
    }
  }
  for (const auto& [item, times] : told) {
    INFO(item);
    CHECK(100 * times <= std::max(count, 500));
  }
}

SlipRate rate_of_all(const std::vector<Session>& people,
                     const std::function<PlantSlip(MeasurementName)>& plant) {
  SlipRate all;
  for (const MeasurementInfo& entry : kMeasurements) {
    if (people.front().tape[entry.name]) all.add(rate_of(people, plant(entry.name)));
  }
  return all;
}

TEST_CASE("slips of 10 cm are caught in 94 of 100, and blamed on the right one in 80") {
  const auto tried = survey_people(people(300), 182);
  for (const MeasurementInfo& entry : kMeasurements) {
    if (!tried.front().tape[entry.name]) continue;
    INFO(entry.key);
    const SlipRate rate = rate_of(tried, off_by(entry.name, 100.0));
    CHECK(rate.share_right() >= 0.8 - kScatter);
    // These three differ too much among women: their SDs, all others known, are 24, 34 and 41 mm.
    const bool wide = entry.name == WaistGirth || entry.name == HipGirth || entry.name == Stature;
    CHECK(rate.share_caught() >= (wide ? 0.2 : 0.94) - kScatter);
  }
}

TEST_CASE("slips of 5 cm are caught as often as the survey promises") {
  struct Promised {
    MeasurementName name;
    double caught;
  };
  const auto tried = survey_people(people(300), 183);
  // Of 300 people a share of a half comes out within 6 points.
  for (const auto& [name, caught] : std::vector<Promised>{{BustGirth, 0.287},
                                                          {WaistGirth, 0.127},
                                                          {HipGirth, 0.047},
                                                          {BackWaistLength, 0.877},
                                                          {NeckBaseGirth, 0.925},
                                                          {ShoulderLength, 1.000},
                                                          {AcrossBack, 0.528},
                                                          {SideNeckToBustPoint, 0.582},
                                                          {BustPointWidth, 0.779},
                                                          {FrontWaistLength, 0.830},
                                                          {ArmscyeGirth, 0.953},
                                                          {ScyeDepth, 0.993},
                                                          {UpperArmGirth, 0.950},
                                                          {UnderbustGirth, 0.301},
                                                          {UpperChestGirth, 0.466}}) {
    INFO(info(name).key);
    CHECK(rate_of(tried, off_by(name, 50.0)).share_caught() >= caught - 0.06 - kScatter);
  }
}

// Of the survey's own women 90 in 100 (slip_rates); what would be odd itself is not offered.
TEST_CASE("digits swapped and inches for cm are named as such in 89 of 100 caught") {
  const auto tried = survey_people(people(300), 184);
  const SlipRate swaps = rate_of_all(tried, digits_swapped);
  CHECK(swaps.caught > 5 * people(300));
  CHECK(swaps.share_named() >= 0.89 - kScatter);
  const SlipRate inches = rate_of_all(tried, in_inches);
  CHECK(inches.share_caught() >= 0.99);
  CHECK(inches.share_named() >= 0.9 - kScatter);
}

// 3 cm too low is 1.8 SD of what women differ by: it is seldom caught, but then told for what it
// is.
TEST_CASE("a waist taken too low is named as that in 60 of 100 caught") {
  const auto tried = survey_people(people(600), 185);
  for (const double by : each({30.0, 50.0})) {
    const SlipRate rate = rate_of(tried, waist_low(by));
    CHECK(rate.caught >= people(20));
    CHECK(rate.share_named() >= 0.6 - 2.0 * kScatter);
  }
}

}  // namespace
}  // namespace blockwright
