// The passes from a tape to a checked block.
#include "block_pass.hpp"

#include "blockwright/measure/correction_table.hpp"
#include "support/blocks.hpp"
#include "support/dart_over_slit.hpp"
#include "support/people.hpp"

#include <catch2/catch.hpp>

#include <algorithm>

using namespace blockwright;
using blockwright_tests::dart_over_slit;

namespace {

const Problem* find_code(const Problems& problems, std::string_view code) {
  const auto it = std::ranges::find(problems, code, &Problem::code);
  return it == problems.end() ? nullptr : &*it;
}

/// A sound run up to its checks, for a gate to judge.
BlockRun drafted_run() {
  BlockRun run;
  run.file = "ondine.json";
  run.session = bust_only(920.0);
  CheckedBlock checked = checked_block(run.session);
  run.body = checked.body;
  run.block = checked.block;
  run.checks = checked.report;
  run.fitted.pattern = run.block.pattern;
  run.made = run.block.pattern;
  return run;
}

/// Of a block: its side seam opens by 0.2 mm.
void break_side_seam(Pattern& pattern) {
  for (Seam& seam : pattern.seams) {
    if (seam.name == "side") seam.ease_in += 0.2;
  }
}

}  // namespace

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

TEST_CASE("Gate after the draft: far contradictions that show on trued pieces alone stop the run") {
  BlockRun run = drafted_run();
  judge_draft(run);
  CHECK_FALSE(has_errors(run.problems));
  run.block.pattern = {.pieces = {dart_over_slit(3.0)}, .seams = {}};
  judge_draft(run);
  const Problem* broken = find_code(run.problems, "pattern.broken");
  REQUIRE(broken != nullptr);
  CHECK(broken->where.starts_with("ondine.json: "));
  CHECK(run.problems.front().code == "draft.contradiction");
}

TEST_CASE(
    "Gate after the corrections: what they say is said, and seams that no longer meet stop it") {
  BlockRun run = drafted_run();
  judge_corrected(run);
  CHECK(run.problems.empty());
  run.fitted.remarks = {{Severity::Warning, "fit.limit", "shoulder point lower", "", ""}};
  break_side_seam(run.fitted.pattern);
  judge_corrected(run);
  REQUIRE(run.problems.size() == 2);
  CHECK(run.problems[0].code == "check.seam");
  CHECK(run.problems[0].severity == Severity::Error);
  CHECK(run.problems[1].code == "fit.limit");
}

TEST_CASE("Gate before trueing: pieces that do not hold together are neither trued nor printed") {
  BlockRun run = drafted_run();
  true_for_paper(run);
  CHECK(run.problems.empty());
  CHECK(run.printed.pieces.size() == 2);
  BlockRun bad = drafted_run();
  break_side_seam(bad.made);
  true_for_paper(bad);
  REQUIRE(bad.problems.size() == 1);
  CHECK(bad.problems[0].code == "check.seam");
  CHECK(bad.printed.pieces.empty());
}

TEST_CASE("Gate after trueing: pieces that only their trued darts break are refused") {
  BlockRun run = drafted_run();
  run.made = {.pieces = {dart_over_slit(3.0)}, .seams = {}};
  CHECK(check_pattern(run.made).empty());
  true_for_paper(run);
  REQUIRE(run.problems.size() == 1);
  CHECK(run.problems[0].code == "pattern.broken");
}

TEST_CASE("What corrections say of the block is in the problems of the run") {
  BlockSource source;
  source.session = bust_only(920.0);
  const auto lower_neck = [](double mm) {
    Fitting fitting{"2026-03-21", 1, "", "", {}};
    fitting.corrections.push_back(
        {"lower", "front_neck", Length::mm(mm), AmountAs::Length, BodySide::Both, "", false});
    return fitting;
  };
  source.client.fittings = {lower_neck(6.0)};
  CHECK(find_code(fitted_block(source).problems, "fit.limit") == nullptr);
  source.client.fittings = {lower_neck(20.0)};
  CHECK(find_code(fitted_block(source).problems, "fit.limit") != nullptr);
}
