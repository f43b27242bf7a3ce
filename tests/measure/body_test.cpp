#include "blockwright/measure/body.hpp"

#include "small_moves.hpp"
#include "support/each_person.hpp"
#include "support/people.hpp"

#include <catch2/catch.hpp>

#include <cmath>
#include <random>
#include <vector>

namespace blockwright {
namespace {

using enum MeasurementName;

// What the survey or a rule holds; those that the draft derives stay empty unless taped.
bool is_surveyed(MeasurementName name) { return info(name).fill_in.by != FillIn::By::Draft; }

struct Taped {
  MeasurementName name;
  double value;
};

Session session_with(const std::vector<Taped>& values) {
  Session session;
  for (const Taped& taped : values) tape(session, taped.name, taped.value);
  return session;
}

TEST_CASE("taped values stay as they are and are marked so, with the spread of their readings") {
  Session session = bust_only(925.0);
  tape(session, WaistGirth, {740.0, 752.0, 741.0});
  tape(session, FrontShoulderSlant, 410.0);
  const Body body = fill_in(session);
  CHECK(body.taped(BustGirth));
  CHECK(body[BustGirth] == Length::mm(925));
  CHECK(body.measurements[BustGirth]->doubt == Length());
  CHECK(body[WaistGirth] == Length::mm(741));
  CHECK(body.measurements[WaistGirth]->doubt == Length::mm(12));
  CHECK(body.taped(FrontShoulderSlant));
}

TEST_CASE("everything but slants and front bust width is estimated, with an SD") {
  const Body body = fill_in(bust_only(925.0));
  for (const MeasurementInfo& entry : measurement_catalogue()) {
    INFO(entry.key);
    CHECK(body.has(entry.name) == is_surveyed(entry.name));
    if (!body.has(entry.name) || entry.name == BustGirth) continue;
    CHECK_FALSE(body.taped(entry.name));
    CHECK(body.measurements[entry.name]->doubt.number() > 0.0);
  }
}

TEST_CASE("both slants taped and no slope: the slope is still estimated") {
  const Body body = fill_in(
      session_with({{BustGirth, 907}, {FrontShoulderSlant, 410}, {BackShoulderSlant, 420}}));
  CHECK(body.has(ShoulderSlope));
  CHECK_FALSE(body.taped(ShoulderSlope));
}

// Means of the 2,208 women of the 1988 survey (Gordon et al. 1989, NATICK/TR-89/044), mm; slope and
// the three lengths below it derived there from heights.
const std::vector<Taped> kSurveyMeans = {
    {BustGirth, 907.1},       {UpperChestGirth, 887.0},  {UnderbustGirth, 769.7},
    {WaistGirth, 725.5},      {HipGirth, 966.9},         {NeckBaseGirth, 346.2},
    {ArmscyeGirth, 371.3},    {UpperArmGirth, 291.6},    {ShoulderLength, 144.7},
    {BackWaistLength, 367.3}, {FrontWaistLength, 311.7}, {SideNeckToBustPoint, 268.0},
    {BustPointWidth, 184.8},  {AcrossBack, 376.2},       {ScyeDepth, 185.7},
    {Stature, 1629.4},        {ShoulderSlope, 25.74},    {SideLength, 177.1},
    {SideNeckToWaist, 389.9}, {WaistToHip, 218.2},
};

TEST_CASE("the mean bust leads to the mean of everything") {
  const Body body = fill_in(bust_only(907.08));
  for (const Taped& mean : kSurveyMeans) {
    INFO(info(mean.name).key);
    CHECK(body[mean.name].number() == Approx(mean.value).margin(0.15));
  }
  CHECK(body[AcrossFront].number() == Approx(376.2 - 25.0).margin(0.15));
}

// The tape from side neck to waist spans the hollow under the bust: 4 mm more than the straight
// line that the survey's heights give (our rule, see survey.cpp).
constexpr double kHollowCm = 0.4;

// Single regressions computed from the rows of the same survey, in cm (degrees for the slope):
// the expected value is constant + sum of coefficient x predictor, and its residual SD.
struct Line {
  MeasurementName of;
  double constant;
  std::vector<Taped> coefficients;
  double residual_sd;
};

const std::vector<Line> kLines = {
    {NeckBaseGirth, 20.676, {{BustGirth, 0.1537}}, 1.31},
    {WaistGirth, -5.126, {{BustGirth, 0.8564}}, 3.18},
    {HipGirth, 35.887, {{BustGirth, 0.6703}}, 4.25},
    {SideNeckToBustPoint, 6.543, {{BustGirth, 0.2233}}, 1.72},
    {BustPointWidth, 6.13, {{BustGirth, 0.1362}}, 1.37},
    {ArmscyeGirth, 11.861, {{BustGirth, 0.2786}}, 1.48},
    {SideNeckToWaist, 26.425 + kHollowCm, {{BustGirth, 0.134}}, 2.29},
    {SideLength, 19.779, {{BustGirth, -0.0228}}, 2.14},
    {WaistToHip, 17.285, {{BustGirth, 0.05}}, 2.41},
    {Stature, 142.742, {{BustGirth, 0.2226}}, 6.2},
    {NeckBaseGirth,
     18.568,
     {{BustGirth, 0.0549}, {WaistGirth, 0.1098}, {BackWaistLength, 0.0845}},
     1.25},
    {FrontWaistLength,
     3.308,
     {{BustGirth, 0.0698}, {WaistGirth, -0.058}, {BackWaistLength, 0.7008}},
     1.5},
    {AcrossBack,
     15.115,
     {{BustGirth, 0.1352}, {WaistGirth, 0.0626}, {BackWaistLength, 0.1549}},
     2.01},
    {SideNeckToWaist,
     5.38 + kHollowCm,
     {{BustGirth, 0.1597}, {WaistGirth, -0.0731}, {BackWaistLength, 0.6539}},
     1.58},
    {SideLength,
     -0.969,
     {{BustGirth, -0.002}, {WaistGirth, -0.0669}, {BackWaistLength, 0.6455}},
     1.39},
    {ShoulderLength, 4.849, {{BustGirth, 0.0134}, {WaistGirth, -0.0162}, {Stature, 0.0588}}, 1.02},
    {ScyeDepth, 0.443, {{BustGirth, 0.0235}, {WaistGirth, 0.0537}, {Stature, 0.0743}}, 1.24},
};

// One predictor 1 SD up, the next 1 SD down and so on: each coefficient has its say.
std::vector<Taped> predictors_of(const Line& line) {
  constexpr double kAwayCm = 5.0;
  const Body mean = fill_in(bust_only(907.08));
  std::vector<Taped> predictors;
  double sign = 1.0;
  for (const Taped& coefficient : line.coefficients) {
    const double value = coefficient.name == BustGirth ? 907.08 : mean[coefficient.name].number();
    predictors.push_back({coefficient.name, value + sign * 10.0 * kAwayCm});
    sign = -sign;
  }
  return predictors;
}

TEST_CASE("estimates agree with the regressions computed from the survey's rows") {
  for (const Line& line : kLines) {
    INFO(info(line.of).key << " on " << line.coefficients.size());
    const std::vector<Taped> predictors = predictors_of(line);
    double expected = line.constant;
    for (std::size_t i = 0; i < predictors.size(); ++i) {
      expected += line.coefficients[i].value * predictors[i].value / 10.0;
    }
    const Body body = fill_in(session_with(predictors));
    CHECK(body[line.of].number() / 10.0 == Approx(expected).margin(0.03));
    CHECK(body.measurements[line.of]->doubt.number() / 10.0 ==
          Approx(line.residual_sd).margin(0.011));
  }
}

// The slope is linearised at the means here and taken row by row there: 35.635 - 0.109 bust (cm),
// residual SD 3.79 degrees.
TEST_CASE("the slope's regression is near that of the rows, though linearised") {
  const Body body = fill_in(bust_only(1000.0));
  CHECK(body[ShoulderSlope].number() == Approx(35.635 - 0.109 * 100.0).margin(0.1));
  CHECK(body.measurements[ShoulderSlope]->doubt.number() == Approx(3.79).margin(0.05));
}

// All 15 survey items at once; coefficients of the neck on the other 14, computed from the rows,
// cm.
TEST_CASE("with many items taped the neck's estimate is that of the full regression") {
  const std::vector<Taped> coefficients = {
      {BustGirth, -0.04393},          {WaistGirth, 0.04421},      {HipGirth, 0.00547},
      {BackWaistLength, 0.16973},     {ShoulderLength, -0.03053}, {AcrossBack, 0.08812},
      {SideNeckToBustPoint, 0.01075}, {BustPointWidth, 0.08418},  {FrontWaistLength, -0.16852},
      {ArmscyeGirth, 0.19973},        {ScyeDepth, 0.00493},       {UpperArmGirth, 0.02365},
      {UnderbustGirth, -0.00868},     {UpperChestGirth, 0.09059},
  };
  for (const Session& person : each_person(20, 5)) {
    Session session;
    double expected = 13.6018;
    for (const Taped& coefficient : coefficients) {
      const double value = person.tape[coefficient.name]->median().number();
      tape(session, coefficient.name, value);
      expected += coefficient.value * value / 10.0;
    }
    const Body body = fill_in(session);
    CHECK(body[NeckBaseGirth].number() / 10.0 == Approx(expected).margin(0.02));
    CHECK(body.measurements[NeckBaseGirth]->doubt.number() / 10.0 == Approx(1.134).margin(0.01));
  }
}

// ASTM D5585-95: across chest 25 mm less than across back (from memory, unverified).
TEST_CASE("across front follows across back less 25 mm, and doubts it by 15 mm more") {
  const Body back_taped = fill_in(session_with({{BustGirth, 920}, {AcrossBack, 390}}));
  CHECK(back_taped[AcrossFront].number() == Approx(365.0).margin(0.01));
  CHECK(back_taped.measurements[AcrossFront]->doubt.number() == Approx(15.0).margin(0.01));
  const Body none_taped = fill_in(bust_only(920));
  const double back_doubt = none_taped.measurements[AcrossBack]->doubt.number();
  CHECK(none_taped[AcrossFront].number() ==
        Approx(none_taped[AcrossBack].number() - 25.0).margin(0.01));
  CHECK(none_taped.measurements[AcrossFront]->doubt.number() ==
        Approx(std::hypot(back_doubt, 15.0)).margin(0.01));
}

TEST_CASE("a taped across front is evidence for the back, weighed by the two variances") {
  const Body before = fill_in(bust_only(920));
  const double prior = before.measurements[AcrossBack]->doubt.number();
  const double weight = prior * prior / (prior * prior + 15.0 * 15.0);
  const Body after =
      fill_in(session_with({{BustGirth, 920}, {AcrossFront, before[AcrossBack].number() + 5.0}}));
  CHECK(after[AcrossBack].number() ==
        Approx(before[AcrossBack].number() + 30.0 * weight).margin(0.01));
  CHECK(after.measurements[AcrossBack]->doubt.number() < prior);
}

TEST_CASE("the more is taped, the smaller the doubt about the rest") {
  const Session person = survey_people(1, 3).front();
  Session session;
  std::vector<double> doubts(kMeasurementCount, 1e9);
  for (const MeasurementInfo& entry : each(measurement_catalogue())) {
    if (!is_surveyed(entry.name)) continue;
    session.tape[entry.name] = person.tape[entry.name];
    const Body body = fill_in(session);
    for (std::size_t i = 0; i < kMeasurementCount; ++i) {
      const auto name = static_cast<MeasurementName>(i);
      if (!body.has(name) || body.taped(name)) continue;
      CHECK(body.measurements[name]->doubt.number() <= doubts[i] + 1e-9);
      doubts[i] = body.measurements[name]->doubt.number();
    }
  }
}

TEST_CASE("a larger bust leads to larger girths, without jumps") {
  for (const MeasurementName name : {UpperChestGirth, UnderbustGirth, WaistGirth, HipGirth,
                                     NeckBaseGirth, ArmscyeGirth, UpperArmGirth}) {
    INFO(info(name).key);
    double last = fill_in(bust_only(600.0))[name].number();
    for (double bust = 601.0; bust <= 1600.0; bust += 1.0) {
      const double next = fill_in(bust_only(bust))[name].number();
      CHECK(next >= last);
      CHECK(next - last < 1.0 + 1e-6);
      last = next;
    }
  }
}

bool is_sane(const Body& body) {
  for (const MeasurementInfo& entry : measurement_catalogue()) {
    if (!is_surveyed(entry.name)) continue;
    const Measure value = body[entry.name];
    if (!(value >= entry.least && value <= entry.most)) return false;
    if (!std::isfinite(body.measurements[entry.name]->doubt.number())) return false;
  }
  return true;
}

// Lengths that a draft subtracts from each other must keep their order whatever the estimates say.
bool is_in_order(const Body& body) {
  const auto apart = [&](MeasurementName smaller, MeasurementName larger) {
    return (body.taped(smaller) && body.taped(larger)) || body[smaller] < body[larger];
  };
  return apart(SideNeckToBustPoint, SideNeckToWaist) && apart(FrontWaistLength, SideNeckToWaist) &&
         apart(ScyeDepth, BackWaistLength) && apart(SideLength, BackWaistLength) &&
         apart(BustPointWidth, AcrossBack) && apart(UpperArmGirth, ArmscyeGirth) &&
         apart(UnderbustGirth, UpperChestGirth);
}

// Any subset of a person's tape, each value kept with this chance.
Session part_of(const Session& person, double chance, std::mt19937_64& engine) {
  Session session = bust_only(person.tape[BustGirth]->median().number());
  for (const MeasurementInfo& entry : measurement_catalogue()) {
    const bool kept = static_cast<double>(engine() >> 11U) * 0x1p-53 < chance;
    if (kept && person.tape[entry.name]) session.tape[entry.name] = person.tape[entry.name];
  }
  return session;
}

TEST_CASE("2,000 people with any subset taped give values within the limits, in order") {
  std::mt19937_64 engine(11);
  const auto people = survey_people(2000, 11);
  for (std::size_t i = 0; i < people.size(); ++i) {
    const double chance = static_cast<double>(i % 20) / 20.0;
    const Body body = fill_in(part_of(people[i], chance, engine));
    INFO(i);
    CHECK(is_sane(body));
    CHECK(is_in_order(body));
  }
}

TEST_CASE("contradictory tapes, anywhere in the limits, give values within them") {
  std::mt19937_64 engine(12);
  const auto uniform = [&] { return static_cast<double>(engine() >> 11U) * 0x1p-53; };
  for (int i = 0; i < 2000; ++i) {
    Session session;
    const double chance = uniform();
    for (const MeasurementInfo& entry : measurement_catalogue()) {
      if (entry.name != BustGirth && uniform() > chance) continue;
      tape(session, entry.name, (entry.least + uniform() * (entry.most - entry.least)).number());
    }
    const Body body = fill_in(session);
    INFO(i);
    CHECK(is_sane(body));
  }
}

TEST_CASE("a tenth of a millimetre on the tape moves no estimate by more than half of one") {
  std::mt19937_64 engine(13);
  for (const Session& person : each_person(200, 13)) {
    check_small_moves(part_of(person, 0.5, engine));
  }
}

}  // namespace
}  // namespace blockwright
