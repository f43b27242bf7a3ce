#include "blockwright/measure/body.hpp"
#include "support/each_person.hpp"
#include "support/people.hpp"

#include <catch2/catch.hpp>

#include <cmath>
#include <map>

namespace blockwright {
namespace {

using enum MeasurementName;

// In the words of a person who measures in that unit.
Problems judged(const Session& session, Unit unit = Unit::Cm) {
  return worded(judge(session, fill_in(session)), unit);
}

const Problem* found(const Problems& problems, std::string_view code, MeasurementName name) {
  for (const Problem& problem : problems) {
    if (problem.code == code && problem.where == info(name).key) return &problem;
  }
  return nullptr;
}

bool doubted(const Problems& problems, MeasurementName name) {
  return found(problems, "measure.doubtful", name) || found(problems, "measure.retake", name) ||
         found(problems, "measure.slip", name);
}

Session average_person() {
  Session session = bust_only(907.0);
  const Body body = fill_in(session);
  for (const MeasurementInfo& entry : measurement_catalogue()) {
    if (body.has(entry.name)) tape(session, entry.name, std::round(body[entry.name].number()));
  }
  return session;
}

TEST_CASE("an average person is not remarked on, nor is a bust girth alone") {
  CHECK(judged(average_person()).empty());
  CHECK(judged(bust_only(710.0)).empty());
  CHECK(judged(bust_only(1400.0)).empty());
}

// 23 % of the survey's women have an upper chest larger than the bust, 10 % a hip smaller
// (Gordon et al. 1989, NATICK/TR-89/044).
TEST_CASE("upper chest over bust and hip under bust are ordinary people") {
  Session session = bust_only(920.0);
  tape(session, UpperChestGirth, 950.0);
  CHECK(judged(session).empty());
  session = bust_only(980.0);
  tape(session, HipGirth, 960.0);
  CHECK(judged(session).empty());
}

// Our judgement from measuring errors (ISO 20685: 9 mm on large girths, 4 to 5 mm on lengths).
TEST_CASE("readings that repeat badly are noted, then warned of: 10 and 20 mm on girths") {
  Session session = average_person();
  tape(session, WaistGirth, {720.0, 730.0});
  CHECK(judged(session).empty());
  tape(session, WaistGirth, {720.0, 731.0, 722.0});
  const Problems noted = judged(session);
  REQUIRE(found(noted, "measure.spread", WaistGirth));
  CHECK(noted.front().severity == Severity::Note);
  CHECK(noted.front().message.plain().find("1.1 cm apart") != std::string::npos);
  CHECK(noted.front().message.plain().find("72.2 cm") != std::string::npos);
  CHECK(noted.front().hint.plain().find("settle") != std::string::npos);
  tape(session, WaistGirth, {715.0, 736.0});
  CHECK(judged(session).front().severity == Severity::Warning);
}

TEST_CASE("lengths must repeat better: 5 and 10 mm; the slope within 2 and 4 degrees") {
  Session session = average_person();
  tape(session, ShoulderLength, {142.0, 147.0});
  CHECK(judged(session).empty());
  tape(session, ShoulderLength, {142.0, 148.0});
  CHECK(judged(session).front().severity == Severity::Note);
  tape(session, ShoulderLength, {139.0, 150.0});
  CHECK(judged(session).front().severity == Severity::Warning);
  session = average_person();
  tape(session, ShoulderSlope, {24.0, 27.0});
  CHECK(judged(session).front().severity == Severity::Note);
  CHECK(judged(session).front().message.plain().find("3.0 degrees apart") != std::string::npos);
}

TEST_CASE("what is judged carries its measurement and the limit that it passed") {
  Session session = average_person();
  tape(session, WaistGirth, {715.0, 736.0});
  Problem wide = judged(session).front();
  CHECK(wide.measurements == std::vector<std::string>{"waist_girth"});
  CHECK(wide.limit == Limit{.least = {}, .most = Length::mm(10)});
  session = average_person();
  tape(session, ShoulderSlope, {24.0, 27.0});
  CHECK(judged(session).front().limit.most == Measure::degrees(2));
  session = average_person();
  tape(session, NeckBaseGirth, 446.0);
  const Limit likely = judged(session).front().limit;
  CHECK(*likely.most < Length::mm(446));
  CHECK(*likely.least < Length::mm(346));
}

TEST_CASE("a value misread is named with its expectation and how to take it again") {
  Session session = average_person();
  tape(session, NeckBaseGirth, 401.0);
  const Problems problems = judged(session);
  REQUIRE(problems.size() == 1);
  const Problem& problem = problems.front();
  CHECK(problem.code == "measure.retake");
  CHECK(problem.severity == Severity::Warning);
  CHECK(problem.where == "neck_base_girth");
  CHECK(problem.message.plain().find("40.1 cm") != std::string::npos);
  CHECK(problem.message.plain().find("expect 34.6 cm") != std::string::npos);
  CHECK(problem.message.plain().find("of 2,208 women hardly one was more than 4.5") !=
        std::string::npos);
  CHECK(problem.hint.plain().find("take it again: Round the base of the neck") !=
        std::string::npos);
}

TEST_CASE("messages speak the client's unit") {
  Session session = average_person();
  tape(session, NeckBaseGirth, 446.0);
  CHECK(judged(session, Unit::Inch).front().message.plain().find("17 9/16 in") !=
        std::string::npos);
}

// Three to four and a half residual SD: the neck given all other items has one of 1.08 cm
// about 34.6 (computed from the rows of the 1988 survey). Round centimetres, whose digits make no
// other neck.
TEST_CASE("between 3 and 4.5 SD a value is doubtful, beyond to be taken again") {
  const auto code_at = [](double neck) {
    Session session = average_person();
    tape(session, NeckBaseGirth, neck);
    const Problems problems = judged(session);
    return problems.empty() ? std::string() : problems.front().code;
  };
  CHECK(code_at(376.0).empty());
  CHECK(code_at(380.0) == "measure.doubtful");
  CHECK(code_at(390.0) == "measure.doubtful");
  CHECK(code_at(290.0) == "measure.retake");
}

TEST_CASE("where two values contradict each other, the bust is believed") {
  Session session = bust_only(920.0);
  tape(session, WaistGirth, 900.0);
  const Problems problems = judged(session);
  REQUIRE(problems.size() == 1);
  CHECK(problems.front().where == "waist_girth");
}

TEST_CASE("an across front far from the back is doubted") {
  Session session = average_person();
  tape(session, AcrossFront, 250.0);
  const Problems problems = judged(session);
  REQUIRE(problems.size() == 1);
  CHECK(problems.front().where == "across_front");
}

// The orderings of all 2,208 women of the 1988 survey.
TEST_CASE("orderings that hold on every body are reported when broken, never as errors") {
  struct Broken {
    MeasurementName smaller;
    double small_value;
    MeasurementName larger;
    double large_value;
  };
  const Broken all[] = {
      {UnderbustGirth, 900, UpperChestGirth, 880},
      {WaistGirth, 880, HipGirth, 870},
      {ScyeDepth, 300, BackWaistLength, 300},
      {ShoulderLength, 190, AcrossBack, 376},
      {UpperArmGirth, 380, ArmscyeGirth, 371},
      {BustPointWidth, 300, AcrossBack, 290},
      {SideNeckToBustPoint, 390, SideNeckToWaist, 386},
      {FrontWaistLength, 390, SideNeckToWaist, 386},
      {SideLength, 330, BackWaistLength, 320},
      {BustPointWidth, 320, FrontBustWidth, 310},
  };
  for (const Broken& broken : all) {
    INFO(info(broken.smaller).key << " under " << info(broken.larger).key);
    Session session = bust_only(907.0);
    tape(session, broken.smaller, broken.small_value);
    tape(session, broken.larger, broken.large_value);
    session.sure.add(broken.smaller);  // else a slip is named that explains it
    session.sure.add(broken.larger);
    const Problems problems = judged(session);
    const Problem* problem = found(problems, "measure.order", broken.smaller);
    REQUIRE(problem);
    CHECK(problem->message.plain().find("her ") != std::string::npos);
    CHECK(problem->hint.plain().find("take both again") != std::string::npos);
    CHECK_FALSE(problem->hint.empty());
    CHECK_FALSE(has_errors(problems));
  }
}

// A tape of 40 mm too much or too little: more than twice what the other tapes leave in doubt.
TEST_CASE("of the two front lengths the one that is off is doubted, both where both are") {
  struct Slip {
    double front_waist = 0.0, side_neck = 0.0;
    std::string doubted;
  };
  const std::vector<Slip> slips = {
      {-40.0, 0.0, "front_waist_length"},
      {40.0, 0.0, "front_waist_length"},
      {0.0, 40.0, "side_neck_to_waist"},
      {0.0, -40.0, "side_neck_to_waist"},
      {-30.0, 30.0, "front_waist_length, side_neck_to_waist"},
      {30.0, -30.0, "front_waist_length, side_neck_to_waist"},
      {-40.0, -20.0, "front_waist_length"},  // the other makes the neck less odd
  };
  for (const Slip& slip : each(slips)) {
    Session session = average_person();
    session.tape[FrontWaistLength]->values.front() += Length::mm(slip.front_waist);
    session.tape[SideNeckToWaist]->values.front() += Length::mm(slip.side_neck);
    const bool too_deep = slip.side_neck - slip.front_waist > 0.0;
    const OddNeck neck{too_deep ? Length::mm(130) : Length::mm(40), Length::mm(60),
                       Length::mm(110)};
    const Problems problems = judge_neck(fill_in(session), neck);
    REQUIRE(problems.size() == 1);
    CHECK(problems[0].severity == Severity::Warning);
    CHECK(problems[0].where == slip.doubted);
  }
}

TEST_CASE("a waist larger than the bust is a build, so only noted") {
  Session session = bust_only(1100.0);
  tape(session, WaistGirth, 1120.0);
  const Problems problems = judged(session);
  REQUIRE(found(problems, "measure.order", WaistGirth));
  CHECK(found(problems, "measure.order", WaistGirth)->severity == Severity::Note);
  CHECK(problems.back().message.plain() == "her waist (112 cm) is larger than her bust (110 cm)");
  CHECK(problems.back().hint.plain() == "take both again; if they stay, it is her shape");
}

TEST_CASE(
    "of readings that lie apart the odd one is named, with its digits swapped where it fits") {
  Session session = average_person();
  tape(session, WaistGirth, {470.0, 745.0, 740.0});
  const Problems problems = judged(session);
  REQUIRE(found(problems, "measure.spread", WaistGirth));
  const std::string said = found(problems, "measure.spread", WaistGirth)->message.plain();
  CHECK(said ==
        "3 readings lie 27.5 cm apart; 1 cm is usual at most. 47 cm looks like 74 cm (two digits "
        "swapped); the middle one, 74 cm, is used");
  tape(session, WaistGirth, {700.0, 745.0, 740.0});
  CHECK(found(judged(session), "measure.spread", WaistGirth)
            ->message.plain()
            .find("70 cm lies apart from the others; the middle one, 74 cm, is used") !=
        std::string::npos);
  tape(session, WaistGirth, {700.0, 745.0});
  CHECK(found(judged(session), "measure.spread", WaistGirth)
            ->message.plain()
            .find("lies apart from the others") == std::string::npos);
}

// On the survey's rows 0.2 to 1.2 % of the women lie beyond 3 residual SD, by item.
TEST_CASE("of 2,000 people at most 1 % are doubted by item, and hardly one is to be retaken") {
  const auto people = survey_people(2000, 21);
  std::map<std::string, int> doubts;
  int retakes = 0;
  for (const Session& person : people) {
    for (const Problem& problem : judged(person)) {
      doubts[problem.where] += 1;
      retakes += problem.code == "measure.retake" ? 1 : 0;
    }
  }
  CHECK(doubts.size() > 10);
  for (const auto& [key, count] : doubts) {
    INFO(key);
    CHECK(count <= 20);
  }
  CHECK(retakes <= 4);
}

struct Slip {
  MeasurementName name;
  double slip_mm;
  double least;  // share of people in whom the slip must be caught
  double most;
};

// Shares caught by the 3 SD rule with all other items as predictors, computed from the rows of the
// 1988 survey; here shares may differ by 6 points, as a few more items are taped and people are
// drawn from the covariance.
constexpr Slip kSlips[] = {
    {BustGirth, 100, 0.91, 1.0},       {WaistGirth, 100, 0.81, 1.0},
    {NeckBaseGirth, 100, 0.99, 1.0},   {ShoulderLength, 100, 0.99, 1.0},
    {AcrossBack, 100, 0.99, 1.0},      {SideNeckToBustPoint, 100, 0.99, 1.0},
    {BustPointWidth, 100, 0.99, 1.0},  {FrontWaistLength, 100, 0.99, 1.0},
    {BackWaistLength, 100, 0.99, 1.0}, {ArmscyeGirth, 100, 0.99, 1.0},
    {ScyeDepth, 100, 0.99, 1.0},       {UpperArmGirth, 100, 0.99, 1.0},
    {UnderbustGirth, 100, 0.92, 1.0},  {UpperChestGirth, 100, 0.94, 1.0},
    {NeckBaseGirth, 50, 0.86, 0.99},   {BustPointWidth, 50, 0.72, 0.84},
};

TEST_CASE("planted slips are caught as often as the survey promises") {
  const auto people = survey_people(300, 22);
  for (const Slip& planted : kSlips) {
    int caught = 0;
    double sign = 1.0;
    for (const Session& person : people) {
      Session slipped = person;
      Measure& value = slipped.tape[planted.name]->values.front();
      value += sign * Length::mm(planted.slip_mm);
      sign = -sign;
      caught += doubted(judged(slipped), planted.name) ? 1 : 0;
    }
    INFO(info(planted.name).key << ' ' << planted.slip_mm);
    const double share = static_cast<double>(caught) / static_cast<double>(people.size());
    CHECK(share >= planted.least);
    CHECK(share <= planted.most);
  }
}

TEST_CASE("a slip that is caught is named first") {
  int first = 0;
  int caught = 0;
  for (const Session& person : each_person(300, 23)) {
    Session slipped = person;
    Measure& value = slipped.tape[BackWaistLength]->values.front();
    value += Length::mm(100);
    const Problems problems = judged(slipped);
    if (!doubted(problems, BackWaistLength)) continue;
    ++caught;
    first += problems.front().where == info(BackWaistLength).key ? 1 : 0;
  }
  REQUIRE(caught > 290);
  CHECK(first == caught);
}

}  // namespace
}  // namespace blockwright
