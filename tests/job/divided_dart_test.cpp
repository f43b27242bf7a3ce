// The pass that makes two of a bust dart too wide to sew in one: what each command does about it.
#include "blockwright/job/job.hpp"
#include "support/memory_files.hpp"
#include "support/run_tool.hpp"

#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>

#include <algorithm>
#include <string>
#include <vector>

namespace divided_dart_test {

using namespace blockwright;
using Json = nlohmann::json;

namespace {

const std::string kPerson = "bronislawa-slizewicz";  // her bust dart is over 25 degrees

MemoryFiles files_here() {
  const std::string examples = BLOCKWRIGHT_SOURCE_DIR "/examples/";
  return MemoryFiles(
      {{"she.json", blockwright_tests::read_bytes(examples + "wardrobe/" + kPerson + ".json")},
       {"princess.json", blockwright_tests::read_bytes(examples + "styles/princess-bodice.json")}});
}

Job job_of(Command command) {
  Job job;
  job.command = command;
  job.client = "she.json";
  job.out = "out";
  job.write = {OutputKind::Svg, OutputKind::Json};
  job.report = ReportKind::Json;
  return job;
}

struct Done {
  Json report, front;
};

Done done(const Job& job) {
  MemoryFiles files = files_here();
  const JobResult result = run_job(job, files);
  REQUIRE(result.exit_code == 0);
  Done done{Json::parse(result.output), {}};
  for (const std::string& file : result.files) {
    if (file.ends_with("-pattern.json")) done.front = Json::parse(files.files[file])["pieces"][0];
  }
  return done;
}

std::vector<std::string> darts_of(const Json& piece) {
  std::vector<std::string> names;
  for (const Json& dart : piece["darts"]) names.push_back(dart["name"]);
  return names;
}

bool has(const std::vector<std::string>& names, const std::string& name) {
  return std::ranges::find(names, name) != names.end();
}

std::vector<std::string> stages_of(const Json& report) {
  std::vector<std::string> names;
  for (const Json& stage : report["stages"]) names.push_back(stage["name"]);
  return names;
}

/// The problem of that code, "" if there is none: "warning front.shoulder".
std::string found(const Json& report, const std::string& code) {
  for (const Json& problem : report["problems"]) {
    if (problem["code"] != code) continue;
    return problem["severity"].get<std::string>() + " " + problem["where"].get<std::string>();
  }
  return "";
}

}  // namespace

TEST_CASE("draft divides a wide bust dart, says so, and keeps every length and the angle") {
  const Done two = done(job_of(Command::Draft));
  CHECK(has(darts_of(two.front), "side"));
  CHECK(stages_of(two.report) == std::vector<std::string>{"drafted", "divided"});
  CHECK(found(two.report, "dart.divided") == "note front.shoulder");
  CHECK(found(two.report, "dart.wide").empty());
  const Json &before = two.report["stages"][0], &after = two.report["stages"][1];
  for (const char* edge : {"front.side", "front.shoulder", "front.armhole", "front.neckline"}) {
    INFO(edge);
    CHECK(after["lengths"][edge].get<double>() ==
          Approx(before["lengths"][edge].get<double>()).margin(1e-3));
  }
}

TEST_CASE("A maker who wants one dart has one, and is warned that it is hard to sew") {
  Job job = job_of(Command::Draft);
  job.one_bust_dart = true;
  const Done one = done(job);
  CHECK_FALSE(has(darts_of(one.front), "side"));
  CHECK(stages_of(one.report) == std::vector<std::string>{"drafted"});
  CHECK(found(one.report, "dart.divided").empty());
  CHECK(found(one.report, "dart.wide") == "warning front.shoulder");
}

TEST_CASE("A style that moves the shoulder dart has the whole bust dart; any other leaves two") {
  Job princess = job_of(Command::Adapt);
  princess.style = "princess.json";
  const Done panels = done(princess);
  CHECK(stages_of(panels.report) == std::vector<std::string>{"drafted", "worn", "styled"});
  CHECK_FALSE(has(darts_of(panels.front), "side"));

  Job back = job_of(Command::Pivot);
  back.dart = {"back.shoulder"};
  back.to = {"back.neck"};
  const Done moved = done(back);
  CHECK(stages_of(moved.report) == std::vector<std::string>{"drafted", "divided", "styled"});
  CHECK(has(darts_of(moved.front), "side"));
}

TEST_CASE("The side dart that a draft made can be moved") {
  Job job = job_of(Command::Pivot);
  job.dart = {"front.side"};
  job.to = {"front.armhole"};
  const Done moved = done(job);
  CHECK_FALSE(has(darts_of(moved.front), "side"));
  CHECK(has(darts_of(moved.front), "armhole"));
  CHECK(has(darts_of(moved.front), "shoulder"));
}

TEST_CASE("The steps for pencil and shears end with the division") {
  Job job = job_of(Command::Draft);
  job.steps = true;
  job.report = ReportKind::Text;
  MemoryFiles files = files_here();
  const std::string text = run_job(job, files).output;
  CHECK(text.find("At last, on the front: cut from the side seam, 6 cm below the underarm, to the "
                  "bust point") != std::string::npos);
  job.one_bust_dart = true;
  CHECK(run_job(job, files).output.find("At last") == std::string::npos);
}

TEST_CASE("A dart that reads as wide as is usual is not told as too wide") {
  MemoryFiles files(
      {{"she.json", blockwright_tests::read_bytes(BLOCKWRIGHT_SOURCE_DIR
                                                  "/examples/wardrobe/odalys-fenn.json")}});
  const auto told = [&](Unit unit) {
    Job job = job_of(Command::Draft);
    job.unit = unit;
    return found(Json::parse(run_job(job, files).output), "dart.wide");
  };
  // 60.3 mm, where 60 are usual: both read 2 3/8 in, or 6 cm.
  CHECK(told(Unit::Inch).empty());
  CHECK(told(Unit::Cm).empty());
}

}  // namespace divided_dart_test
