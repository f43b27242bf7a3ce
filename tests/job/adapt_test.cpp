// Darts moved from the command line's words and from a style file, with files in memory.
#include "blockwright/job/job.hpp"
#include "support/memory_files.hpp"

#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>

#include <algorithm>

using namespace blockwright;

namespace {

using Json = nlohmann::json;

const char* const kClient = R"({
  "format": "blockwright-client-1", "name": "Odile", "unit": "cm",
  "sessions": [{ "date": "2026-03-14", "tape": { "bust_girth": 92, "waist_girth": 74 } }]
})";

const char* const kStyle = R"({
  "format": "blockwright-style-1", "name": "blouse", "unit": "cm",
  "steps": [
    { "pivot": { "dart": "front.shoulder", "to": "front.side:6cm" } },
    { "panel_seam": { "from": "back.shoulder", "to": "back.waist" } }
  ]
})";

MemoryFiles files_here() {
  return MemoryFiles({{"odile.json", kClient}, {"styles/side blouse.json", kStyle}});
}

Job pivot_job() {
  Job job;
  job.command = Command::Pivot;
  job.client = "odile.json";
  job.out = "out";
  job.report = ReportKind::Json;
  job.write = {OutputKind::Svg};
  job.dart = {"front.shoulder"};
  job.to = {"front.side:0.3"};
  return job;
}

Job adapt_job() {
  Job job = pivot_job();
  job.command = Command::Adapt;
  job.dart = job.to = {};
  job.style = "styles/side blouse.json";
  return job;
}

double angle_of_dart(const Json& darts, const std::string& piece, const std::string& name) {
  for (const Json& dart : darts) {
    if (dart["piece"] == piece && dart["name"] == name) return dart["angle_deg"].get<double>();
  }
  return 0.0;
}

std::string message_of(const Job& job) {
  MemoryFiles files = files_here();
  const JobResult result = run_job(job, files);
  CHECK(result.exit_code != 0);
  CHECK(files.files.size() == 2);
  return result.problems.empty() ? "" : to_text(result.problems.front());
}

}  // namespace

TEST_CASE("pivot writes the pieces under a name of their own and tells darts before and after") {
  MemoryFiles files = files_here();
  Job job = pivot_job();
  job.part = {0.5};
  const JobResult result = run_job(job, files);
  CHECK(result.exit_code == 0);
  CHECK(result.files == std::vector<std::string>{"out/odile-pivot-toile.svg"});
  const Json report = Json::parse(result.output);
  REQUIRE(report["stages"].size() == 2);
  const Json &drafted = report["stages"][0], &styled = report["stages"][1];
  CHECK(styled["name"] == "styled");
  REQUIRE(styled["moved"].size() == 1);
  CHECK(styled["moved"][0]["darts"].size() == 2);
  const double before = angle_of_dart(drafted["darts"], "front", "shoulder");
  const Json& after = styled["darts"];
  CHECK(angle_of_dart(after, "front", "shoulder") == Approx(0.5 * before).margin(1e-3));
  CHECK(angle_of_dart(after, "front", "side") == Approx(0.5 * before).margin(1e-3));
  CHECK(styled["lengths"]["front.side"].get<double>() ==
        Approx(drafted["lengths"]["front.side"].get<double>()).margin(1e-3));
}

TEST_CASE("Several moves and splits are done in order") {
  MemoryFiles files = files_here();
  Job job = pivot_job();
  job.dart = {"front.shoulder", "front.side"};
  job.to = {"front.side", "front.waist"};
  job.part = {0.4, 0.5};
  job.split = {"front.waist:3"};
  const Json report = Json::parse(run_job(job, files).output);
  const Json& styled = report["stages"].back();
  REQUIRE(styled["moved"].size() == 3);
  CHECK(styled["moved"][2]["did"] == "split front.waist into 3, fanned, 2.5 cm apart");
  CHECK(angle_of_dart(styled["darts"], "front", "waist_2") > 0.0);
}

TEST_CASE("A part may be given in degrees, but not twice") {
  MemoryFiles files = files_here();
  Job job = pivot_job();
  job.angle = {Angle::degrees(5.0)};
  const Json report = Json::parse(run_job(job, files).output);
  CHECK(angle_of_dart(report["stages"][1]["darts"], "front", "side") == Approx(5.0).margin(1e-3));
  job.part = {0.5};
  CHECK(message_of(job).find("--angle") != std::string::npos);
}

TEST_CASE("The overlay is a file of its own and shows the block under the pieces") {
  MemoryFiles files = files_here();
  Job job = pivot_job();
  job.overlay = true;
  job.write = {OutputKind::Svg, OutputKind::Pdf};
  const JobResult result = run_job(job, files);
  CHECK(result.files.size() == 4);
  const std::string& overlay = files.files["out/odile-pivot-overlay.svg"];
  CHECK(overlay.find("class=\"previous\"") != std::string::npos);
  CHECK(overlay.find("class=\"previous\" display=\"none\"") == std::string::npos);
  CHECK(files.files["out/odile-pivot-toile.svg"].find("class=\"previous\"") == std::string::npos);
}

TEST_CASE("adapt makes the garment's pieces and names them after client and style") {
  MemoryFiles files = files_here();
  Job job = adapt_job();
  job.write = {OutputKind::Svg, OutputKind::Json};
  const JobResult result = run_job(job, files);
  CHECK(result.exit_code == 0);
  REQUIRE(result.files.size() == 2);
  CHECK(result.files[0] == "out/odile-side-blouse-toile.svg");
  const Json pattern = Json::parse(files.files[result.files[1]]);
  std::vector<std::string> names;
  for (const Json& piece : pattern["pieces"]) names.push_back(piece["name"]);
  CHECK(names == std::vector<std::string>{"front", "centre_back", "side_back"});
  const std::string& svg = files.files["out/odile-side-blouse-toile.svg"];
  CHECK(svg.find("Centre back") != std::string::npos);
}

TEST_CASE("A strapped top is printed with its straps, over the block and as numbers") {
  MemoryFiles files = files_here();
  files.files["styles/top.json"] = R"({
    "format": "blockwright-style-1", "name": "top", "unit": "cm", "wearing_ease": "close",
    "steps": [{ "one_dart": { "into": "front.waist" } },
              { "top_edge": { "shape": "sweetheart", "straps": {} } }]
  })";
  Job job = adapt_job();
  job.style = "styles/top.json";
  job.overlay = true;
  job.write = {OutputKind::Svg, OutputKind::Pdf, OutputKind::Json};
  const JobResult result = run_job(job, files);
  CHECK(result.exit_code == 0);
  CHECK(result.files.size() == 5);
  const std::string& svg = files.files["out/odile-top-toile.svg"];
  CHECK(svg.find(">Strap<") != std::string::npos);
  CHECK(svg.find("class=\"previous\"") == std::string::npos);
  const std::string& overlay = files.files["out/odile-top-overlay.svg"];
  CHECK(overlay.find("class=\"previous\"") != std::string::npos);
  const Json pattern = Json::parse(files.files["out/odile-top-pattern.json"]);
  REQUIRE(pattern["pieces"].size() == 3);
  const Json& strap = pattern["pieces"][2];
  CHECK(strap["name"] == "strap");
  CHECK(strap["cut_on"] == "pair");
  CHECK(strap["edges"][0]["path"][1][1] == Approx(40.0));
  for (const Json& seam : pattern["seams"]) CHECK(seam["name"] == "side");
}

TEST_CASE("A pivot after a top edge, and a strapless top in inches, are told by their words") {
  MemoryFiles files = files_here();
  files.files["styles/top.json"] = R"({
    "format": "blockwright-style-1", "name": "top", "unit": "in",
    "steps": [{ "one_dart": { "into": "front.waist" } },
              { "top_edge": { "shape": "curved", "under_underarm": 0.25 } },
              { "pivot": { "dart": "front.waist", "to": "front.side:0.5", "part": 0.3 } }]
  })";
  Job job = adapt_job();
  job.style = "styles/top.json";
  job.report = ReportKind::Text;
  const std::string text = run_job(job, files).output;
  CHECK(text.find("cut a curved top edge, strapless") != std::string::npos);
  CHECK(text.find("goes with what is cut away") != std::string::npos);
}

TEST_CASE(
    "The text report tells each step in the maker's unit, and the block's table is left out") {
  MemoryFiles files = files_here();
  Job job = pivot_job();
  job.report = ReportKind::Text;
  job.unit = Unit::Inch;
  const std::string text = run_job(job, files).output;
  CHECK(text.find("pivot front.shoulder to front.side:0.3 (in)") != std::string::npos);
  CHECK(text.find("front shoulder") != std::string::npos);
  CHECK(text.find("-> closed") != std::string::npos);
  CHECK(text.find("sewn") != std::string::npos);
  CHECK(text.find("bust girth") == std::string::npos);
}

TEST_CASE("The same job gives the same bytes") {
  MemoryFiles first = files_here(), second = files_here();
  Job job = adapt_job();
  job.write = {OutputKind::Svg, OutputKind::Pdf, OutputKind::Json};
  CHECK(run_job(job, first).output == run_job(job, second).output);
  CHECK(first.files == second.files);
}

TEST_CASE("A move that cannot be done ends with its reason and nothing written") {
  Job job = pivot_job();
  job.to = {"front.side:1.4"};
  CHECK(message_of(job).find("[dart.place] front.side:1.4") != std::string::npos);
  job = pivot_job();
  job.dart = {};
  job.to = {};
  CHECK(message_of(job).find("--dart") != std::string::npos);
  job = pivot_job();
  job.to.push_back("front.waist");
  CHECK(message_of(job).find("1 darts and 2 places") != std::string::npos);
  job = pivot_job();
  job.part = {0.5, 0.5};
  CHECK(message_of(job).find("--part") != std::string::npos);
  job = pivot_job();
  job.split = {"front.waist:x"};
  CHECK(message_of(job).find("--split") != std::string::npos);
  job = pivot_job();
  job.toile = -1;
  CHECK(message_of(job).find("--toile") != std::string::npos);
  job = adapt_job();
  job.style = "none.json";
  CHECK(message_of(job).find("[file.read] none.json") != std::string::npos);
}

TEST_CASE("A fault of a style file names its line and the step's key") {
  MemoryFiles files = files_here();
  files.files["bad.json"] = R"({"format": "blockwright-style-1", "name": "x", "steps": [
    {"pivot": {"dart": "front.shoulder", "to": "front.hem"}}]})";
  Job job = adapt_job();
  job.style = "bad.json";
  const JobResult result = run_job(job, files);
  CHECK(result.exit_code == 1);
  REQUIRE(result.problems.size() == 1);
  CHECK(result.problems[0].where.rfind("bad.json:2:48 steps[0].pivot.to: front.hem", 0) == 0);
}

TEST_CASE("What moves make of a dart on the way is not said; how the pieces end is") {
  MemoryFiles files = files_here();
  const auto wide = [&](const Job& job) {
    const JobResult result = run_job(job, files);
    CHECK(result.exit_code == 0);
    return std::ranges::count(result.problems, "dart.wide", &Problem::code);
  };
  Job job = pivot_job();
  job.one_bust_dart = true;
  job.to = {"front.waist"};
  job.part = {0.6};
  CHECK(wide(job) == 1);
  job.dart.push_back("front.waist");
  job.to.push_back("front.side:0.3");
  job.part = {0.6, 0.6};
  CHECK(wide(job) == 0);
}
