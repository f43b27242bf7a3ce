// What a style is worn with, from its file to the report and the paper.
#include "blockwright/job/job.hpp"
#include "support/memory_files.hpp"

#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>

#include <algorithm>
#include <string>
#include <vector>

using namespace blockwright;

namespace {

using Json = nlohmann::json;

std::string odile_with(const std::string& more) {
  return R"({"format": "blockwright-client-1", "name": "Odile", "unit": "cm", )" + more +
         R"("sessions": [{ "date": "2026-03-14", "tape": { "bust_girth": 92, "waist_girth": 74 } }]})";
}

std::string top_with(const std::string& ease) {
  return R"({"format": "blockwright-style-1", "name": "top", "unit": "cm", "wearing_ease": )" +
         ease + R"(, "steps": [{ "one_dart": { "into": "front.waist" } }]})";
}

struct WornAsk {
  std::string ease = "\"sleeveless\"";
  std::string client_has = {};
  ReportKind report = ReportKind::Json;
};

struct WornRun {
  JobResult result;
  std::string svg;
};

WornRun worn_run(const WornAsk& asked) {
  MemoryFiles files(
      {{"odile.json", odile_with(asked.client_has)}, {"top.json", top_with(asked.ease)}});
  Job job;
  job.command = Command::Adapt;
  job.client = "odile.json";
  job.style = "top.json";
  job.out = "out";
  job.report = asked.report;
  job.write = {OutputKind::Svg};
  JobResult result = run_job(job, files);
  return {result, files.files["out/odile-top-toile.svg"]};
}

Json worn_report(const WornAsk& asked) {
  const WornRun one = worn_run(asked);
  INFO(one.result.output);
  REQUIRE(one.result.exit_code == 0);
  return Json::parse(one.result.output);
}

}  // namespace

TEST_CASE("The report of a style with an ease has its finished girths, and what was moved") {
  const Json report = worn_report({});
  const Json bust = report["finished"][0], waist = report["finished"][1];
  CHECK(bust["name"] == "bust_girth");
  CHECK(bust["finished_mm"].get<double>() == Approx(955.0).margin(0.05));
  CHECK(waist["finished_mm"].get<double>() == Approx(760.0).margin(0.05));
  CHECK(bust["own_ease_mm"] == 0.0);
  std::vector<std::string> names;
  for (const Json& stage : report["stages"]) names.push_back(stage["name"]);
  CHECK(names == std::vector<std::string>{"drafted", "worn", "styled"});
  const Json& moved = report["stages"][1]["moved"][0];
  CHECK(moved["did"] ==
        "worn sleeveless: bust 3.5 cm more and waist 2 cm more than the body, underarm higher by "
        "1.2 cm, shoulder shorter by 1.5 cm");
  // What the style draws keeps the worn waist.
  for (const char* edge : {"front.waist", "back.waist"}) {
    CHECK(report["stages"][2]["lengths"][edge].get<double>() ==
          Approx(report["stages"][1]["lengths"][edge].get<double>()).margin(1e-3));
  }
}

TEST_CASE("Her own ease and her corrections come on top of the style's") {
  const Json own = worn_report({.client_has = R"("ease": { "bust_girth": 7 }, )"})["finished"][0];
  CHECK(own["own_ease_mm"] == 20.0);
  CHECK(own["finished_mm"].get<double>() == Approx(975.0).margin(0.05));
  const Json let_out =
      worn_report({.client_has = R"("fittings": [{ "date": "2026-03-21", "toile": 1, "corrections":
          [{ "let_out": "side_at_bust", "by": 0.6, "as": "per_half" }] }], )"})["finished"][0];
  CHECK(let_out["corrections_mm"].get<double>() == Approx(12.0).margin(0.05));
  CHECK(let_out["finished_mm"].get<double>() == Approx(967.0).margin(0.05));
}

TEST_CASE("Text and paper say the finished ease, in numbers that add up") {
  const WornRun text = worn_run({.report = ReportKind::Text});
  CHECK_THAT(text.result.output, Catch::Contains("Finished girths"));
  CHECK_THAT(text.result.output, Catch::Contains("bust girth                      92.0       3.5"
                                                 "          0.0      95.5"));
  const WornRun toile = worn_run({R"({ "bust": 5, "waist": 2.5 })"});
  const Json same = Json::parse(toile.result.output);
  CHECK(same["stages"][1]["moved"][0]["lengths"].empty());
  CHECK(same["stages"][1]["moved"][0]["did"] ==
        "worn with bust 5 cm more and waist 2.5 cm more than the body");
}

TEST_CASE("An ease that her block cannot have is refused at its place in the style's file") {
  const WornRun refused = worn_run({R"({ "bust": 14.5, "waist": 2 })"});
  CHECK(refused.result.exit_code != 0);
  REQUIRE_FALSE(refused.result.problems.empty());
  const Problem& problem = refused.result.problems.front();
  CHECK(problem.code == "fit.wearing_ease");
  CHECK_THAT(problem.where, Catch::StartsWith("top.json:1:"));
  CHECK_THAT(problem.where, Catch::EndsWith("wearing_ease.bust"));
  CHECK_THAT(problem.message.plain(), Catch::Contains("bust ease 14.5 cm"));
  CHECK_THAT(problem.hint.plain(), Catch::Contains("12.9 cm"));
}
