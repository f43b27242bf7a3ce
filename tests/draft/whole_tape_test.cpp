// Lengths that contradict each other are settled before anything is drawn:
// docs/decisions/019-the-whole-tape.md.
#include "blockwright/measure/settled_tape.hpp"
#include "support/blocks.hpp"
#include "support/each_person.hpp"
#include "support/people.hpp"

#include <catch2/catch.hpp>

#include <cmath>

using namespace blockwright;
using enum MeasurementName;

namespace {

// Her side and scye are 26 mm longer together than those of nearly any back as hers.
Session long_sided() {
  Session session = bust_only(907.0);
  tape(session, SideLength, 200.0);
  tape(session, ScyeDepth, 208.0);
  tape(session, BackWaistLength, 357.0);
  return session;
}

double adjusted(const DraftedBlock& block, MeasurementName name) {
  double by = 0.0;
  for (const Adjustment& a : block.adjustments) by += a.name == name ? a.by.number() : 0.0;
  return by;
}

bool is_told(const CheckedBlock& checked, MeasurementName name) {
  return std::ranges::any_of(checked.report.problems, [&](const Problem& problem) {
    return problem.code == "draft.adjusted" && problem.where == info(name).key &&
           problem.message.plain().find("contradict each other by") != std::string::npos;
  });
}

}  // namespace

TEST_CASE("the pattern has the settled lengths, and the report says by how much they moved") {
  const CheckedBlock checked = checked_block(long_sided());
  const SettledTape settled = settle_tape(checked.body);
  REQUIRE(settled.moved.size() == 3);
  CHECK(errors_of(checked.report).empty());
  for (const MeasurementName name : {SideLength, BackWaistLength}) {
    const MeasureBack* row = row_of(checked.report, name);
    REQUIRE(row != nullptr);
    const double by = (settled.body[name] - checked.body[name]).number();
    CHECK(std::abs(by) > 1.0);
    CHECK(adjusted(checked.block, name) == Approx(by).margin(1e-9));
    CHECK(row->residual().number() == Approx(by).margin(0.01));
    CHECK(is_told(checked, name));
  }
  CHECK(is_told(checked, ScyeDepth));
}

TEST_CASE("a length that is sure comes back, and the others give way around it") {
  Session session = long_sided();
  session.sure.add(BackWaistLength);
  const CheckedBlock checked = checked_block(session);
  CHECK(row_of(checked.report, BackWaistLength)->residual().number() == Approx(0.0).margin(0.01));
  CHECK(adjusted(checked.block, SideLength) < -1.0);
}

// Lengths of people whose tapes err: within 0.1 mm of tape, ease and what the report says.
TEST_CASE("badly taped lengths come back as the report says") {
  const auto drawn = survey_people(people(200), 14);
  int moved = 0;
  for (RandomCase& random : each_random(people(200), 14)) {
    Session session = drawn[static_cast<std::size_t>(random.number)];
    for (const MeasurementName name : {SideLength, ScyeDepth, BackWaistLength, FrontWaistLength}) {
      tape(session, name, session.tape[name]->median().number() + random.between(-20, 20));
    }
    const CheckedBlock checked = checked_block(session);
    moved += settle_tape(checked.body).moved.empty() ? 0 : 1;
    for (const MeasureBack& row : checked.report.measure_back) {
      INFO(info(row.name).key);
      CHECK(std::abs((row.residual() - row.adjustment).number()) <= 0.1);
    }
  }
  CHECK(moved >= people(200) / 20);
}

// Which of two front lengths is to be doubted is judged by what was taped.
TEST_CASE("an odd neck is told as the tapes have it, not as they were settled") {
  Session session = bust_only(907.0);
  tape(session, NeckBaseGirth, 346.0);
  tape(session, FrontWaistLength, 365.0);
  tape(session, SideNeckToWaist, 390.0);
  const CheckedBlock checked = checked_block(session);
  CHECK_FALSE(settle_tape(checked.body).moved.empty());
  REQUIRE(checked.block.odd_neck.has_value());
  for (const MeasurementName name : {NeckBaseGirth, FrontWaistLength, SideNeckToWaist}) {
    session.sure.add(name);
  }
  const CheckedBlock as_taped = checked_block(session);
  CHECK(settle_tape(as_taped.body).moved.empty());
  CHECK(checked.block.odd_neck->asked.mm() == Approx(as_taped.block.odd_neck->asked.mm()));
}
