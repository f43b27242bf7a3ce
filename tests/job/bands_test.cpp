// How far the lines of a block could be off, as it is written and said.
#include "blockwright/job/job.hpp"
#include "support/memory_files.hpp"

#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>

#include <cmath>
#include <map>
#include <string>
#include <vector>

using namespace blockwright;

namespace {

using Json = nlohmann::json;

constexpr const char* kFew = R"({
  "format": "blockwright-client-1", "name": "Odile", "unit": "cm",
  "sessions": [{ "date": "2026-03-14", "tape": { "bust_girth": 92, "waist_girth": 74 } }]
})";
constexpr const char* kInches = R"({
  "format": "blockwright-client-1", "name": "Odile", "unit": "in",
  "sessions": [{ "date": "2026-03-14", "tape": {
    "bust_girth": "36 1/4", "waist_girth": 29, "back_waist_length": "15 1/4",
    "side_neck_to_waist": "16 1/4", "side_neck_to_bust_point": "10 3/8", "shoulder_slope": 23,
    "shoulder_length": "4 7/8", "side_length": 7, "front_waist_length": 13 } }]
})";
constexpr const char* kContradicting = R"({
  "format": "blockwright-client-1", "name": "Odile", "unit": "cm",
  "sessions": [{ "date": "2026-03-14",
                 "tape": { "bust_girth": 92, "armscye_girth": 70, "scye_depth": 12 } }]
})";

Job bands_job() {
  Job job;
  job.client = "odile.json";
  job.out = "out";
  job.write = {OutputKind::Svg, OutputKind::Pdf};
  job.bands = true;
  return job;
}

MemoryFiles with_client(const std::string& text) {
  return MemoryFiles(std::map<std::string, std::string>{{"odile.json", text}});
}

bool has(const std::string& text, const std::string& part) {
  return text.find(part) != std::string::npos;
}

}  // namespace

TEST_CASE("The bands are a sheet of their own; the pieces to cut have none") {
  MemoryFiles files = with_client(kFew);
  const JobResult result = run_job(bands_job(), files);
  REQUIRE(result.exit_code == 0);
  CHECK(result.files == std::vector<std::string>{"out/odile-toile.svg", "out/odile-toile.pdf",
                                                 "out/odile-bands.svg", "out/odile-bands.pdf"});
  const std::string& bands = files.files["out/odile-bands.svg"];
  CHECK(has(bands, "class=\"band\""));
  CHECK_FALSE(has(bands, "class=\"balance-line\""));
  CHECK_FALSE(has(files.files["out/odile-toile.svg"], "class=\"band\""));
}

TEST_CASE("Without --bands nothing is said or written of them") {
  MemoryFiles files = with_client(kFew);
  Job job = bands_job();
  job.bands = false;
  const JobResult result = run_job(job, files);
  CHECK(result.files.size() == 2);
  CHECK_FALSE(has(result.output, "How far the lines"));
}

TEST_CASE("A client that fails has no bands") {
  MemoryFiles files = with_client(kContradicting);
  const JobResult result = run_job(bands_job(), files);
  REQUIRE(result.exit_code == 1);
  CHECK(result.files.empty());
  CHECK_FALSE(has(result.output, "How far the lines"));
}

TEST_CASE("The report says what to take first, what was estimated, and what to leave") {
  MemoryFiles files = with_client(kFew);
  const std::string report = run_job(bands_job(), files).output;
  CHECK(has(report, "How far the lines could be off, 19 times of 20, in cm"));
  CHECK(has(report, "\nTake first the "));
  CHECK(has(report, ", which was estimated: the lines would then be "));
  CHECK(has(report, "\nThen the "));
  CHECK(has(report, "more than the seams of a toile can take up"));
}

TEST_CASE(
    "What to leave is what the draft takes: in quarters of an inch, and in mm for the option") {
  MemoryFiles files = with_client(kInches);
  const std::string report = run_job(bands_job(), files).output;
  const auto at = report.find("leave ");
  REQUIRE(at != std::string::npos);
  const std::string said = report.substr(at, report.find('\n', at) - at);
  INFO(said);
  CHECK(has(said, " in at side, shoulder and opening"));
  Job job = bands_job();
  job.allowance = Length::mm(std::stod(said.substr(said.find("--allowance ") + 12)));
  CHECK(job.allowance->mm() / 6.35 == Approx(std::round(job.allowance->mm() / 6.35)).margin(0.01));
  CHECK(has(run_job(job, files).output, " at the toile's seams are enough to let it out that far"));
}

TEST_CASE("The sheet says that it is not for cutting, and orders nothing to be cut") {
  MemoryFiles files = with_client(kFew);
  (void)run_job(bands_job(), files);
  CHECK(has(files.files["out/odile-bands.svg"], "not for cutting"));
  CHECK_FALSE(has(files.files["out/odile-bands.svg"], "cut 1 on the fold"));
  CHECK(has(files.files["out/odile-toile.svg"], "cut 1 on the fold"));
}

TEST_CASE("In JSON each edge and named point has its band, and no list is longer than needed") {
  MemoryFiles files = with_client(kFew);
  Job job = bands_job();
  job.report = ReportKind::Json;
  const Json bands = Json::parse(run_job(job, files).output)["bands"];
  REQUIRE(bands["edges"].size() == 12);
  for (const Json& edge : bands["edges"]) CHECK(edge["off_mm"].get<double>() > 0.0);
  REQUIRE(bands["points"].size() == 16);
  CHECK(bands["points"][0]["point"] == "front.centre_waist");
  CHECK(bands["points"][0]["y_mm"] == 0.0);  // both pieces are drawn from there
  REQUIRE(bands["take_first"].size() == 2);
  CHECK(bands["take_first"][0]["source"] == "estimated");
  CHECK(bands["take_first"][0]["narrows"].get<double>() >
        bands["take_first"][1]["narrows"].get<double>());
  CHECK(bands["toile_allowance_mm"].get<double>() > 10.0);
}
