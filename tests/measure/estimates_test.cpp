// Estimates: how honest their spread is, and that they make a body.
#include "support/each_person.hpp"
#include "support/estimate_scores.hpp"
#include "support/people.hpp"
#include "survey.hpp"

#include <catch2/catch.hpp>

#include <utility>

namespace blockwright {
namespace {

using enum MeasurementName;

constexpr int kPeople = 3000;

// People drawn from the survey's covariances: what holds of them is the arithmetic. The survey's
// own rows: tests/population.
TEST_CASE("of the spread that an estimate claims 68 and 95 in 100 people are within") {
  const std::vector<std::pair<const char*, Evidence>> evidence{
      {"the bust alone", bust_alone},
      {"bust, waist and back waist length", bust_waist_and_back},
      {"all but that one", all_but_that_one}};
  const auto drawn = survey_people(people(kPeople), 21);
  for (const auto& [what, part] : evidence) {
    const auto scores = score_estimates(drawn, part);
    CHECK(scores.size() >= 18);
    for (const EstimateScore& score : scores) {
      INFO(info(score.name).key << " from " << what);
      CHECK(score.mean == Approx(0.0).margin(people(kPeople) == kPeople ? 0.06 : 0.2));
      CHECK(score.within_68 == Approx(0.683).margin(people(kPeople) == kPeople ? 0.03 : 0.09));
      CHECK(score.within_95 == Approx(0.950).margin(people(kPeople) == kPeople ? 0.03 : 0.05));
    }
  }
}

// --- any part of the tape --------------------------------------------------------------------

// Some tapes of a person, every tenth of them off by up to a tenth.
Session some_tapes(const Session& person, Random& random) {
  Session part;
  part.tape[BustGirth] = person.tape[BustGirth];
  const int tenths = random.whole(0, 10);
  for (const MeasurementInfo& entry : measurement_catalogue()) {
    const auto& readings = person.tape[entry.name];
    if (entry.name == BustGirth || !readings || random.whole(1, 10) > tenths) continue;
    const double off = random.whole(1, 10) == 1 ? random.between(0.9, 1.1) : 1.0;
    const double value = off * readings->median().number();
    tape(part, entry.name, std::clamp(value, entry.least.number(), entry.most.number()));
  }
  return part;
}

void check_orders(const Body& body) {
  for (const Ordering& order : orderings()) {
    if (!body.has(order.smaller) || !body.has(order.larger)) continue;
    if (body.taped(order.smaller) && body.taped(order.larger)) continue;
    INFO(info(order.smaller).key << " and " << info(order.larger).key);
    CHECK((order.times * body[order.smaller] + order.gap).number() <=
          body[order.larger].number() + 1e-9);
  }
}

// Arms reach forward, and go through the armhole (ours; the draft's bounds, and the survey's
// shares).
void check_widths(const Body& body) {
  const double front = body[AcrossFront].number(), back = body[AcrossBack].number(),
               chest = body[UpperChestGirth].number(), arm = body[UpperArmGirth].number();
  if (!body.taped(AcrossFront) || !body.taped(AcrossBack)) CHECK(front <= back + 10.0 + 1e-9);
  if (!body.taped(AcrossFront)) CHECK(front >= back - 60.0 - 1e-9);
  const bool by_shoulders = back < 2.0 * body[ShoulderLength].number() + 10.0 + 1e-9;
  const bool free = !body.taped(AcrossFront) && !body.taped(AcrossBack) && !by_shoulders;
  if (free) CHECK(chest - front - back >= 2.0 * 0.12 * arm - 1e-9);
  if (!body.taped(ArmscyeGirth) || !body.taped(UpperArmGirth)) {
    CHECK(body[ArmscyeGirth].number() >= arm + 18.0 - 1e-9);
  }
}

TEST_CASE("any part of a tape, slips and all, gives estimates that a body allows") {
  for (int bust = 600; bust <= 1500; bust += 50) {
    INFO("bust " << bust);
    const auto drawn = people_at_bust(bust, people(200), 6);
    for (RandomCase& random : each_random(people(200), 31)) {
      const Session& person = drawn[static_cast<std::size_t>(random.number)];
      const Body body = fill_in(some_tapes(person, random));
      check_orders(body);
      check_widths(body);
    }
  }
}

TEST_CASE("a small bust leaves its arms room") {
  const Body body = fill_in(bust_only(640.0));
  const Measure room = body[UpperChestGirth] - body[AcrossFront] - body[AcrossBack];
  CHECK(room.number() == Approx(2.0 * 0.12 * body[UpperArmGirth].number()));
}

}  // namespace
}  // namespace blockwright
