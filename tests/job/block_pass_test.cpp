// The passes from a tape to a checked block.
#include "block_pass.hpp"

#include "support/blocks.hpp"
#include "support/dart_over_slit.hpp"
#include "support/people.hpp"

#include <catch2/catch.hpp>

#include <algorithm>

using namespace blockwright;
using blockwright_tests::dart_over_slit;

TEST_CASE("A block is judged with its darts trued, as it will be printed") {
  CHECK(faults_on_paper(checked_block(bust_only(920.0)).block.pattern).empty());
  CHECK(faults_on_paper({.pieces = {dart_over_slit(5.0)}, .seams = {}}).empty());
  const Problems faults = faults_on_paper({.pieces = {dart_over_slit(3.0)}, .seams = {}});
  REQUIRE(faults.size() == 1);
  CHECK(faults[0].code == "pattern.broken");
}

TEST_CASE("A front neck that nobody has is told in the report, with the length that is doubted") {
  BlockSource source;
  source.session = bust_only(907.0);
  tape(source.session, MeasurementName::FrontWaistLength, 312.0);
  tape(source.session, MeasurementName::SideNeckToWaist, 390.0);
  const auto is_neck = [](const Problem& p) { return p.code == "measure.neck_depth"; };
  CHECK(std::ranges::none_of(fitted_block(source).problems, is_neck));
  tape(source.session, MeasurementName::FrontWaistLength, 352.0);
  const Problems problems = fitted_block(source).problems;
  const auto told = std::ranges::find_if(problems, is_neck);
  REQUIRE(told != problems.end());
  CHECK(told->where == "front_waist_length");
}

TEST_CASE("A contradiction names each measurement, also one whose key is part of another's") {
  BlockRun run;
  run.problems = {{Severity::Error, "check.seam", "side", "", ""},
                  {Severity::Warning, "measure.doubtful", "", "", "", {"underbust_girth"}},
                  {Severity::Warning, "measure.order", "", "", "", {"waist_girth", "bust_girth"}}};
  run.block.adjustments = {{MeasurementName::BustGirth, Length::mm(3), ""}};
  name_contradictions(run);
  CHECK(run.problems.front().code == "draft.contradiction");
  CHECK(run.problems.front().where == "underbust_girth, waist_girth, bust_girth");
  CHECK(run.problems.front().measurements.size() == 3);
}
