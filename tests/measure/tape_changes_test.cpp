// What changed since the session before, by more than tapes differ.
#include "blockwright/measure/tape_changes.hpp"

#include "blockwright/text/units.hpp"
#include "support/each.hpp"
#include "support/people.hpp"

#include <catch2/catch.hpp>

namespace blockwright {
namespace {

using enum MeasurementName;

Session session_on(const std::string& date) {
  Session session = survey_people(1, 186).front();
  session.date = date;
  return session;
}

void change(Session& session, MeasurementName name, double by) {
  session.tape[name]->values.front() += measure_of(name, by);
}

// ISO 20685 allows scan and hand 9 mm on large girths, 4 to 5 mm on lengths.
TEST_CASE("less than tapes differ is no change: 10 mm of girths, 5 mm of lengths, 2 degrees") {
  const Session earlier = session_on("2026-01-10");
  Session now = session_on("2026-07-12");
  change(now, WaistGirth, 10.0);
  change(now, BackWaistLength, -5.0);
  change(now, ShoulderSlope, 2.0);
  CHECK(changes_since(earlier, now).empty());
  CHECK(judge_changes(earlier, now).empty());
  change(now, WaistGirth, 1.0);
  change(now, BackWaistLength, -1.0);
  change(now, ShoulderSlope, 0.5);
  CHECK(changes_since(earlier, now).size() == 3);
}

TEST_CASE("changes are told in one line, with how much and since when") {
  const Session earlier = session_on("2026-01-10");
  Session now = session_on("2026-07-12");
  change(now, WaistGirth, 30.0);
  change(now, HipGirth, -20.0);
  now.tape[Stature].reset();
  const Problems problems = worded(judge_changes(earlier, now), Unit::Cm);
  REQUIRE(problems.size() == 1);
  CHECK(problems.front().code == "measure.changed");
  CHECK(problems.front().severity == Severity::Note);
  CHECK(problems.front().where == "since 2026-01-10");
  CHECK(problems.front().message.plain().find("waist girth 3 cm more, hip girth 2 cm less") == 0);
  CHECK(problems.front().measurements == std::vector<std::string>{"waist_girth", "hip_girth"});
}

// 3 cm of the waist's level: from one session nobody can tell it from a long-waisted woman.
TEST_CASE("a waist tied lower than last time is told for what it is") {
  const Session earlier = session_on("2026-01-10");
  for (const double by : each({30.0, -30.0, 20.0})) {
    Session now = session_on("2026-07-12");
    change(now, BackWaistLength, by);
    change(now, FrontWaistLength, by + 4.0);
    change(now, SideNeckToWaist, by);
    change(now, SideLength, by - 3.0);
    change(now, WaistToHip, -by);
    const Problems problems = judge_changes(earlier, now);
    REQUIRE(problems.size() == 1);
    CHECK(problems.front().severity == Severity::Warning);
    const std::string said = problems.front().message.plain();
    CHECK(said.find(by > 0.0 ? "the waist was taken too low" : "the waist was taken too high") !=
          std::string::npos);
  }
  Session now = session_on("2026-07-12");
  change(now, BackWaistLength, 30.0);  // the others stayed
  CHECK(judge_changes(earlier, now).front().severity == Severity::Note);
}

// Both slants end on the elastic of the waist; waist to hip may be taken from where it was.
TEST_CASE("a waist tied lower is told with the slants, and where waist to hip stayed") {
  for (const bool slants : each({true, false})) {
    for (const bool to_hip : {true, false}) {
      Session earlier = session_on("2026-01-10");
      if (slants) {
        earlier.tape[FrontShoulderSlant] = Readings{{Length::mm(420)}};
        earlier.tape[BackShoulderSlant] = Readings{{Length::mm(400)}};
      }
      if (!to_hip) earlier.tape[WaistToHip].reset();
      Session now = earlier;
      now.date = "2026-07-12";
      for (const MeasurementName name : {BackWaistLength, FrontWaistLength, SideNeckToWaist,
                                         SideLength, FrontShoulderSlant, BackShoulderSlant}) {
        if (now.tape[name]) change(now, name, 30.0);
      }
      const Problem problem = judge_changes(earlier, now).front();
      CHECK(problem.severity == Severity::Warning);
      CHECK(problem.message.plain().find("the waist was taken too low, by about 30 mm") !=
            std::string::npos);
      if (!slants) continue;
      change(now, FrontShoulderSlant, -30.0);  // it stayed: no lower elastic
      CHECK(judge_changes(earlier, now).front().severity == Severity::Note);
    }
  }
}

TEST_CASE("a level that moved by less than 15 mm is told as changes alone", "[kLeastLevelMove]") {
  const Session earlier = session_on("2026-01-10");
  for (const double by : each({14.0, 16.0})) {
    Session now = session_on("2026-07-12");
    for (const MeasurementName name :
         {BackWaistLength, FrontWaistLength, SideNeckToWaist, SideLength}) {
      change(now, name, by);
    }
    change(now, WaistToHip, -by);
    CHECK(judge_changes(earlier, now).front().severity ==
          (by < 15.0 ? Severity::Note : Severity::Warning));
  }
}

TEST_CASE("the session before is the newest that is older") {
  Client client;
  client.sessions = {session_on("2026-01-10"), session_on("2026-03-14"), session_on("2026-07-12")};
  CHECK(session_taken_before(client, client.sessions[2]) == &client.sessions[1]);
  CHECK(session_taken_before(client, client.sessions[0]) == nullptr);
}

}  // namespace
}  // namespace blockwright
