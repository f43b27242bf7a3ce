// How far the numbers of a filled-in body may lie from the person's.
#include "blockwright/measure/body_spread.hpp"

#include "support/each_person.hpp"
#include "support/hand_tape.hpp"

#include <catch2/catch.hpp>

#include <cmath>

using namespace blockwright;
using enum MeasurementName;

namespace {

Session bust_and_back(const Session& person) {
  Session session = bust_only(person.tape[BustGirth]->median().number());
  session.tape[BackWaistLength] = person.tape[BackWaistLength];
  return session;
}

// Both numbers' errors, multiplied: their mean is the covariance.
struct Pair {
  MeasurementName a, b;
  double sum = 0.0;
};

}  // namespace

// By simulation: true people, taped with error and filled in.
TEST_CASE("Errors of tapes and estimates vary together as the spread says") {
  std::vector<Pair> pairs{{BustGirth, BustGirth},     {BustGirth, WaistGirth},
                          {WaistGirth, WaistGirth},   {UnderbustGirth, WaistGirth},
                          {ScyeDepth, SideLength},    {SideLength, BackWaistLength},
                          {AcrossBack, AcrossFront},  {BackWaistLength, BackWaistLength},
                          {ShoulderSlope, ScyeDepth}, {BustGirth, BackWaistLength}};
  const int count = people(4000);
  HandTape hand(9);
  BodySpread spread;
  for (const Session& person : each_person(count, 8)) {
    const Session session = hand.taken_of(bust_and_back(person));
    const Body body = fill_in(session);
    spread = spread_of(body);
    const auto off = [&](MeasurementName name) {
      return (body[name] - person.tape[name]->median()).number();
    };
    for (Pair& pair : pairs) pair.sum += off(pair.a) * off(pair.b);
  }
  for (const Pair& pair : pairs) {
    INFO(info(pair.a).key << " and " << info(pair.b).key);
    const double scale = spread.sd(pair.a).number() * spread.sd(pair.b).number();
    // Four standard errors of a covariance.
    const double slack = 4.0 * std::sqrt(2.0 / count);
    CHECK(pair.sum / count / scale ==
          Approx(spread.covariance(pair.a, pair.b) / scale).margin(slack));
  }
}

TEST_CASE("What was taped has the error of its tape, less when it was read again") {
  Session session = bust_only(900.0);
  CHECK(spread_of(fill_in(session)).sd(BustGirth) == tape_sd(BustGirth));
  tape(session, BustGirth, {900.0, 900.0});
  // By hand: half the variance stays, half of the other half is left after two readings.
  CHECK(spread_of(fill_in(session)).sd(BustGirth).number() ==
        Approx(std::sqrt(0.75) * tape_sd(BustGirth).number()));
}

// By hand: two readings 40 mm apart have an SD of 40 / 1.128 each.
TEST_CASE("Readings far apart are worth less than their number") {
  Session session = bust_only(900.0);
  tape(session, BustGirth, {880.0, 920.0});
  const double usual = tape_sd(BustGirth).number();
  CHECK(spread_of(fill_in(session)).sd(BustGirth).number() ==
        Approx(std::sqrt(0.5 * usual * usual + std::pow(40.0 / 1.128, 2.0) / 2.0)));
}

TEST_CASE("What the maker is sure of has no spread, and gives none to the estimates") {
  const Session person = survey_people(1, 3).front();
  Session session = bust_only(person.tape[BustGirth]->median().number());
  const double unsure = spread_of(fill_in(session)).sd(WaistGirth).number();
  session.sure.add(BustGirth);
  const Body body = fill_in(session);
  const BodySpread spread = spread_of(body);
  CHECK(spread.sd(BustGirth) == Measure());
  CHECK(spread.covariance(BustGirth, WaistGirth) == 0.0);
  CHECK(spread.sd(WaistGirth).number() == Approx(body.measurements[WaistGirth]->doubt.number()));
  CHECK(unsure > spread.sd(WaistGirth).number());
}
