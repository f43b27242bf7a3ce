// A tape session as `tape --check` judges it, and what a draft and a batch say of the same.
#include "blockwright/job/job.hpp"
#include "blockwright/job/tape_form.hpp"
#include "support/each.hpp"
#include "support/memory_files.hpp"

#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>

#include <algorithm>
#include <map>
#include <string>

namespace tape_check_test {

using namespace blockwright;
using Json = nlohmann::json;

namespace {

// The survey's mean woman (Gordon et al. 1989, NATICK/TR-89/044), with a neck of 34.6 cm written as
// 43.6 and a back waist length of 36.7 read ten too many.
const char* const kTwoSlips = R"({
  "format": "blockwright-client-1", "name": "Odalys Fenn", "unit": "cm",
  "sessions": [{ "date": "2026-03-14", "tape": {
    "bust_girth": 90.7, "upper_chest_girth": 88.7, "waist_girth": 72.6, "neck_base_girth": 43.6,
    "armscye_girth": 37.1, "shoulder_length": 14.5, "back_waist_length": 46.7,
    "front_waist_length": 31.2, "side_neck_to_waist": 39.0, "side_length": 17.7,
    "scye_depth": 18.6 } }]
})";

const char* const kLowerWaist = R"({
  "format": "blockwright-client-1", "name": "Odalys Fenn", "unit": "cm",
  "sessions": [
    { "date": "2026-01-10", "tape": { "bust_girth": 90.7, "waist_girth": 72.6,
      "back_waist_length": 36.7, "front_waist_length": 31.2, "side_length": 17.7 } },
    { "date": "2026-07-12", "tape": { "bust_girth": 90.7, "waist_girth": 75.1,
      "back_waist_length": 39.7, "front_waist_length": 34.0, "side_length": 20.7 } }]
})";

MemoryFiles with(const std::string& path, const std::string& text) {
  return MemoryFiles(std::map<std::string, std::string>{{path, text}});
}

JobResult checked(const std::string& text, const TapeJob& options = {}) {
  MemoryFiles files = with("her.json", text);
  TapeJob job = options;
  job.client = "her.json";
  job.check = true;
  return run_tape(job, files);
}

TapeJob in_full() {
  TapeJob job;
  job.all = true;
  return job;
}

std::string tape_of(const std::string& more) {
  return R"({"format": "blockwright-client-1", "name": "Runa Vell", "unit": "cm",
             "sessions": [{"date": "2026-03-14", "tape": {"bust_girth": 90.7, )" +
         more + "}}]}";
}

bool has(const std::string& text, const std::string& part) {
  return text.find(part) != std::string::npos;
}

int lines_of(const std::string& text) {
  return static_cast<int>(std::count(text.begin(), text.end(), '\n'));
}

}  // namespace

TEST_CASE("The likeliest slip is one line, with what to do and how many more there are") {
  const JobResult result = checked(kTwoSlips);
  CHECK(result.exit_code == 0);
  CHECK(lines_of(result.output) == 3);  // who, the slip, and that there are contradictions
  CHECK(has(result.output, "Odalys Fenn, session of 2026-03-14: 11 taken, 10 estimated.\n"));
  CHECK(has(result.output, "warning [measure.slip] back_waist_length: 46.7 cm: did you mean 36.7"));
  CHECK(has(result.output, "look at 1 more: `blockwright tape her.json --check --all`"));
  CHECK_FALSE(has(result.output, "neck_base_girth"));
}

TEST_CASE("With --all each slip is a line") {
  TapeJob job;
  job.all = true;
  const JobResult result = checked(kTwoSlips, job);
  CHECK(lines_of(result.output.substr(0, result.output.find("\nToo far"))) == 3);
  CHECK(has(result.output, "neck_base_girth: 43.6 cm: did you mean 34.6 cm (two digits swapped)?"));
}

TEST_CASE("In inches the slip is told in inches, and the digits are those of the file") {
  TapeJob job;
  job.all = true;
  job.unit = Unit::Inch;
  CHECK(has(checked(kTwoSlips, job).output, "did you mean 13 5/8 in (two digits swapped)?"));
}

TEST_CASE("The JSON report has all slips, ranked, whatever is told") {
  TapeJob job;
  job.report = ReportKind::Json;
  const Json report = Json::parse(checked(kTwoSlips, job).output);
  CHECK(report["client"] == "Odalys Fenn");
  CHECK(report["problems"].size() == 1);
  CHECK(report["taped"].size() == 11);
  CHECK(report["estimated"].size() == 10);
  CHECK(report["estimated"][0]["doubt_mm"].get<double>() > 0.0);
  const Json& slips = report["slips"];
  REQUIRE(slips.size() == 2);
  CHECK(slips[0]["gain"].get<double>() > slips[1]["gain"].get<double>());
  CHECK(slips[1]["slip"] == "swapped_digits");
  CHECK(slips[1]["exact"] == true);
  CHECK(slips[1]["values"][0] ==
        Json{{"name", "neck_base_girth"}, {"read_mm", 436.0}, {"meant_mm", 346.0}});
  CHECK(report["changes"]["since"].is_null());
}

TEST_CASE("What cannot be read is told in JSON as of every run") {
  TapeJob job;
  job.report = ReportKind::Json;
  const JobResult result = checked("{", job);
  CHECK(result.exit_code == 1);
  CHECK(Json::parse(result.output)["problems"][0]["severity"] == "error");
}

TEST_CASE(
    "What changed is one line, and lengths to the waist that moved together are told in drafts") {
  TapeJob as_json;
  as_json.report = ReportKind::Json;
  const Json report = Json::parse(checked(kLowerWaist, as_json).output);
  CHECK(report["changes"]["since"] == "2026-01-10");
  CHECK(report["changes"]["measurements"].size() == 4);
  CHECK(report["changes"]["measurements"][0] == Json{{"name", "waist_girth"}, {"by_mm", 25.0}});
  const std::string text = checked(kLowerWaist).output;
  CHECK(lines_of(text) == 2);
  CHECK(has(text, "warning [measure.changed] since 2026-01-10: waist girth 2.5 cm more"));
  CHECK(has(text, "the waist was taken too low, by about 2.9 cm"));
  MemoryFiles files = with("her.json", kLowerWaist);
  Job draft;
  draft.client = "her.json";
  CHECK(has(run_job(draft, files).output, "[measure.changed]"));
}

TEST_CASE("A draft tells the likeliest slip alone, and how much is estimated") {
  MemoryFiles files = with("her.json", kTwoSlips);
  Job draft;
  draft.client = "her.json";
  const std::string text = run_job(draft, files).output;
  CHECK(has(text, "\n11 taken, 10 estimated\n"));
  CHECK(has(text, "[measure.slip]"));
}

TEST_CASE("A batch tells of each person how much was taken and how much estimated") {
  MemoryFiles files = with("all/her.json", R"({
    "format": "blockwright-client-1", "name": "Odalys Fenn", "unit": "cm",
    "sessions": [{ "date": "2026-03-14",
      "tape": { "bust_girth": 90.7, "waist_girth": 72.6, "hip_girth": 97 } }]})");
  BatchJob batch;
  batch.folder = "all";
  batch.each.out = "out";
  std::string said;
  run_batch(batch, files, {[&](std::string_view text) { said += text; }, {}});
  CHECK(has(said, "Odalys Fenn; 3 taken, 18 estimated; "));
}

TEST_CASE("That lengths contradict each other is a line, and with --all a table") {
  const std::string text =
      tape_of(R"("side_length": 20.0, "scye_depth": 20.8, "back_waist_length": 35.7)");
  CHECK(has(checked(text).output, "3 measurements contradict each other"));
  const std::string output = checked(text, in_full()).output;
  CHECK(has(output, "These contradict each other."));
  CHECK(has(output, "side length"));
  CHECK(has(output, "back waist length"));
  CHECK(has(output, "35.7 cm"));
  CHECK(has(output, "moved by"));
  CHECK_FALSE(has(output, "redundancy"));
}

TEST_CASE("Where nothing was moved one is a slip, and a sentence says so") {
  const std::string output = checked(kTwoSlips, in_full()).output;
  CHECK(has(output, "Too far from each other to be errors of the tape: "));
  CHECK(has(output, "One of them is a slip: take them again."));
  CHECK_FALSE(has(output, "moved by"));
}

TEST_CASE("One measurement is compared with nothing") {
  const std::string output = checked(R"({"format": "blockwright-client-1", "name": "Runa Vell",
    "unit": "cm", "sessions": [{"date": "2026-03-14", "tape": {"bust_girth": 90.7}}]})")
                                 .output;
  CHECK(has(output, "One measurement: there is nothing to compare it with."));
  CHECK_FALSE(has(output, "Nothing in it is unlikely"));
}

TEST_CASE("A command names her file as a shell needs it") {
  MemoryFiles files = with("Odalys' tape.json", kTwoSlips);
  TapeJob job;
  job.client = "Odalys' tape.json";
  job.check = true;
  CHECK(
      has(run_tape(job, files).output, "`blockwright tape 'Odalys'\\'' tape.json' --check --all`"));
  Job draft;
  draft.client = job.client;
  CHECK_FALSE(has(run_job(draft, files).output, "tape CLIENT"));
}

TEST_CASE("A whole session in the other unit is told at its first value") {
  const auto said = [](const std::string& tape) {
    return checked(R"({"format": "blockwright-client-1", "name": "Runa Vell", "unit": "cm",
      "sessions": [{"date": "2026-03-14", "tape": {"bust_girth": 36, )" +
                   tape + "}}]}")
        .problems.front()
        .hint.plain();
  };
  CHECK(has(said(R"("waist_girth": 28.5, "hip_girth": 38, "back_waist_length": 14.5)"),
            "If all is in inches, write \"unit\": \"in\""));
  CHECK_FALSE(has(said(R"("waist_girth": 72.5, "hip_girth": 97, "back_waist_length": 36.7)"),
                  "If all is in inches"));
}

TEST_CASE("Of lengths that go together nothing is said") {
  const std::string text =
      tape_of(R"("side_length": 17.7, "scye_depth": 18.6, "back_waist_length": 36.7)");
  CHECK_FALSE(has(checked(text).output, "contradict"));
  CHECK_FALSE(has(checked(text, in_full()).output, "contradict"));
}

TEST_CASE("The check says what to take first, as the bands do") {
  const std::string text = tape_of(R"("waist_girth": 72)");
  const std::string output = checked(text).output;
  CHECK(has(output, "Take first the "));
  CHECK(has(output, ", which was estimated: the lines would then be "));
  TapeJob job;
  job.report = ReportKind::Json;
  const Json report = Json::parse(checked(text, job).output);
  REQUIRE(report["take_first"].size() == 2);
  CHECK(report["take_first"][0]["source"] == "estimated");
}

TEST_CASE("Contradictions are in the JSON report with what was settled") {
  TapeJob job;
  job.report = ReportKind::Json;
  const Json report = Json::parse(
      checked(tape_of(R"("side_length": 20.0, "scye_depth": 20.8, "back_waist_length": 35.7)"), job)
          .output);
  REQUIRE(report["contradicting"].size() == 3);
  for (const Json& row : report["contradicting"]) {
    CHECK(row["taped_mm"] != row["settled_mm"]);
    CHECK(row["redundancy"].get<double>() > 0.0);
  }
}

TEST_CASE("The check doubts what a draft of the same session doubts") {
  const std::string text = R"({"format": "blockwright-client-1", "name": "Runa Vell",
    "unit": "cm", "sessions": [{"date": "2026-03-14",
      "tape": {"bust_girth": 90.7, "front_waist_length": 36.0, "side_neck_to_waist": 38.6},
      "sure": ["front_waist_length", "side_neck_to_waist"]}]})";
  const JobResult result = checked(text);
  CHECK(has(result.output, "[measure.neck_depth]"));
  CHECK_FALSE(has(result.output, "Nothing in it is unlikely"));
}

TEST_CASE("A session that no block can be drawn from fails the check, as the draft") {
  const std::string text = tape_of(R"("armscye_girth": 70, "scye_depth": 12)");
  const JobResult result = checked(text);
  MemoryFiles files = with("her.json", text);
  Job draft;
  draft.client = "her.json";
  CHECK(run_job(draft, files).exit_code == 1);
  CHECK(result.exit_code == 1);
  CHECK(has(result.output, "error ["));
}

TEST_CASE("A session whose bust is still null is passed over, where there is another") {
  const std::string text = R"({"format": "blockwright-client-1", "name": "Runa Vell", "unit": "cm",
    "sessions": [{"date": "2026-03-14", "tape": {"bust_girth": 90.7}},
                 {"date": "2026-09-14", "tape": {"bust_girth": null, "waist_girth": null}}]})";
  CHECK(has(checked(text).output, "Runa Vell, session of 2026-03-14: 1 taken"));
}

TEST_CASE("What belongs to the check is refused without it") {
  TapeJob job;
  job.client = "her.json";
  job.all = true;
  CHECK_THROWS_AS(judge_tape(job), UsageError);
  job.check = true;
  CHECK_NOTHROW(judge_tape(job));
}

}  // namespace tape_check_test
