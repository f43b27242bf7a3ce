// Hand-picked bodies at the edge of what the tape meets, and sets with most of the tape missing.
#include "blockwright/base/error.hpp"
#include "support/blocks.hpp"
#include "support/each_person.hpp"
#include "support/people.hpp"

#include <catch2/catch.hpp>

#include <cmath>
#include <limits>
#include <random>
#include <utility>

using namespace blockwright;
using enum MeasurementName;

namespace {

void must_draft(const Session& session) {
  const CheckedBlock checked = checked_block(session);
  CHECK(errors_of(checked.report) == "");
}

}  // namespace

TEST_CASE("A waist larger than the bust drafts and comes back") {
  for (const double waist : {900.0, 950.0, 998.0, 999.5, 1000.0, 1040.0, 1100.0}) {
    INFO("waist " << waist << " mm");
    Session session = bust_only(1000.0);
    tape(session, WaistGirth, waist);
    const CheckedBlock checked = checked_block(session);
    CHECK(errors_of(checked.report) == "");
    CHECK(row_of(checked.report, WaistGirth)->residual().number() == Approx(0.0).margin(0.1));
  }
}

TEST_CASE("A waist up to 120 mm larger than any bust drafts") {
  for (double bust = 800.0; bust <= 1400.0; bust += 100.0) {
    for (double more = 0.0; more <= 120.0; more += 20.0) {
      INFO("bust " << bust << " mm, waist " << bust + more << " mm");
      Session session = bust_only(bust);
      tape(session, WaistGirth, bust + more);
      const std::string errors = errors_of(checked_block(session).report);
      CHECK((errors.empty() || errors.find("check.armhole") != std::string::npos));
    }
  }
}

TEST_CASE("Shoulders from square to steep draft") {
  for (double slope = 10.0; slope <= 40.0; slope += 1.0) {
    INFO("slope " << slope << " degrees");
    Session session = bust_only(920.0);
    tape(session, ShoulderSlope, slope);
    must_draft(session);
  }
}

TEST_CASE("Very long and very short bodices draft") {
  for (const double back : {300.0, 330.0, 370.0, 420.0, 460.0}) {
    INFO("back waist length " << back << " mm");
    Session session = bust_only(900.0);
    tape(session, BackWaistLength, back);
    must_draft(session);
  }
}

TEST_CASE("Flat and very full busts draft") {
  for (const double underbust : {700.0, 760.0, 820.0, 880.0, 930.0}) {
    INFO("underbust " << underbust << " mm");
    Session session = bust_only(980.0);
    tape(session, UnderbustGirth, underbust);
    tape(session, UpperChestGirth, 0.5 * (980.0 + underbust) + 20.0);
    must_draft(session);
  }
}

TEST_CASE("Any part of a session drafts: random subsets") {
  const int count = people(1000);
  std::mt19937_64 random(7);
  int drafted = 0;
  for (const Session& whole : each_person(count, 424242)) {
    Session part = bust_only(whole.tape[BustGirth]->median().number());
    for (const MeasurementInfo& entry : measurement_catalogue()) {
      if (whole.tape[entry.name] && random() % 2 == 0) {
        part.tape[entry.name] = whole.tape[entry.name];
      }
    }
    if (errors_of(checked_block(part).report).empty()) ++drafted;
  }
  CHECK(drafted >= count - count / 200);
}

TEST_CASE("Slants close the shoulders where they are taped") {
  Session session = bust_only(920.0);
  tape(session, FrontShoulderSlant, 385.0);
  tape(session, BackShoulderSlant, 390.0);
  const CheckedBlock checked = checked_block(session);
  CHECK(errors_of(checked.report) == "");
  CHECK(row_of(checked.report, FrontShoulderSlant)->residual().number() == Approx(0.0).margin(0.1));
  CHECK(row_of(checked.report, BackShoulderSlant)->residual().number() == Approx(0.0).margin(0.1));
  CHECK(row_of(checked.report, ShoulderSlope) == nullptr);
}

TEST_CASE("What no client file can ask for is refused by name") {
  const auto refused = [](const Session& session, const Ease& ease) {
    try {
      draft_block(fill_in(session), ease);
    } catch (const InputError& error) {
      CHECK(error.problem().code == "draft.range");
      CHECK_FALSE(error.problem().hint.empty());
      CHECK(error.problem().measurements == std::vector{error.problem().where});
      CHECK(error.problem().limit.most.has_value());
      return error.problem().where;
    }
    return std::string();
  };
  constexpr double infinity = std::numeric_limits<double>::infinity();
  for (const double wild : {1e300, -1e300, 1e16, 0.0, infinity}) {
    INFO(wild);
    Session session = bust_only(920.0);
    tape(session, AcrossBack, wild);
    CHECK(refused(session, Ease::of_toile()) == "across_back");
  }
  for (const double wild : {200.1, -200.1, 1e300, std::nan("")}) {
    INFO(wild);
    Ease ease = Ease::of_toile();
    ease.set(WaistGirth, Length::mm(wild));
    CHECK(refused(bust_only(920.0), ease) == "waist_girth");
  }
}

// Within the limits of client files, with eases that nobody gives.
TEST_CASE(
    "A blade nearer the shoulder than half its dart's mouth is drafted, for checks to refuse") {
  Session session = bust_only(600.0);
  for (const auto& [name, value] : {std::pair{UpperChestGirth, 600.0},
                                    {UnderbustGirth, 500.0},
                                    {WaistGirth, 1456.2},
                                    {HipGirth, 600.0},
                                    {ArmscyeGirth, 243.6},
                                    {ShoulderSlope, 10.0},
                                    {FrontShoulderSlant, 270.0},
                                    {BackShoulderSlant, 260.0},
                                    {BackWaistLength, 240.0},
                                    {FrontWaistLength, 540.0},
                                    {SideNeckToBustPoint, 160.0},
                                    {SideNeckToWaist, 700.0},
                                    {BustPointWidth, 90.0},
                                    {AcrossBack, 620.0},
                                    {AcrossFront, 191.55153734645609}}) {
    tape(session, name, value);
  }
  Ease ease = Ease::of_toile();
  ease.set(ShoulderLength, Length::mm(200.0));
  ease.set(BackShoulderSlant, Length::mm(-200.0));
  ease.set(SideNeckToBustPoint, Length::mm(-199.99389639124132));
  ease.set(AcrossBack, Length::mm(189.1));
  CHECK(errors_of(checked_block(session, ease).report) != "");
}
