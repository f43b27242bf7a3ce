// Job files: one key for each option, everything else refused with a cure.
#include "blockwright/base/error.hpp"
#include "blockwright/job/job.hpp"

#include <catch2/catch.hpp>

using namespace blockwright;

namespace {

Problem refusal_of(const std::string& text) {
  try {
    read_job(text, "job.json", {});
  } catch (const Error& error) {
    CHECK(error.problem().where.find("job.json") == 0);
    CHECK_FALSE(error.problem().hint.empty());
    return error.problem();
  }
  return {};
}

std::string code_of(const std::string& text) { return refusal_of(text).code; }

}  // namespace

TEST_CASE("Every option can stand in a job file") {
  const Job job = read_job(R"({"format": "blockwright-job-1", "client": "a.json",
    "session": "2026-01-01", "out": "o", "write": ["json"], "paper": "letter", "cut": "card",
    "unit": "in", "report": "json", "allowance": 15, "margin": 12, "overlap": 8, "steps": true})",
                           "job.json", {});
  CHECK(job.client == "a.json");
  CHECK(job.session == "2026-01-01");
  CHECK(job.out == "o");
  CHECK(job.write == std::vector<std::string>{"json"});
  CHECK(job.paper == "letter");
  CHECK(job.cut == "card");
  CHECK(job.unit == "in");
  CHECK(job.report == "json");
  CHECK(job.allowance == 15.0);
  CHECK(job.margin == 12.0);
  CHECK(job.overlap == 8.0);
  CHECK(job.steps);
}

TEST_CASE("Options of pivot, adapt, fit and compare can stand in their job files") {
  Job job;
  job.command = Command::Pivot;
  job = read_job(R"({"format": "blockwright-job-1", "dart": ["front.waist"], "to": ["front.side"],
    "part": [0.5], "split": ["front.side:2"], "hold_back": 20, "overlay": true})",
                 "job.json", job);
  CHECK(job.command == Command::Pivot);
  CHECK(job.dart == std::vector<std::string>{"front.waist"});
  CHECK(job.part == std::vector<double>{0.5});
  CHECK(job.hold_back == 20.0);
  CHECK(job.overlay);
  const FitJob fit = read_fit_job(R"({"format": "blockwright-job-1", "client": "a.json",
    "add": ["lower front_neck 1.0", "raise underarm 0.5"], "as": "length", "side": "left",
    "seen": "folds", "date": "2026-03-21", "toile": 2, "by": "Ada", "note": "standing",
    "undo": [3], "redo": [1, 2], "session": "2026-01-01", "unit": "in", "report": "json",
    "list": false, "ask": true})",
                                  "job.json", {});
  CHECK(fit.client == "a.json");
  CHECK(fit.add == std::vector<std::string>{"lower front_neck 1.0", "raise underarm 0.5"});
  CHECK(fit.as == "length");
  CHECK(fit.side == "left");
  CHECK(fit.seen == "folds");
  CHECK(fit.date == "2026-03-21");
  CHECK(fit.toile == 2);
  CHECK(fit.by == "Ada");
  CHECK(fit.note == "standing");
  CHECK(fit.undo == std::vector<int>{3});
  CHECK(fit.redo == std::vector<int>{1, 2});
  CHECK(fit.session == "2026-01-01");
  CHECK(fit.unit == "in");
  CHECK(fit.report == "json");
  CHECK_FALSE(fit.list);
  CHECK(fit.ask);
  const CompareJob compare = read_compare_job(R"({"format": "blockwright-job-1", "client": "a.json",
    "other": "b.json", "session": ["2026-01-01", "2026-06-01"], "toile": [1, 2], "align": "neck",
    "out": "o", "write": ["svg"], "paper": "a0", "unit": "in", "report": "json", "margin": 12,
    "overlap": 8})",
                                              "job.json", {});
  CHECK(compare.client == "a.json");
  CHECK(compare.other == "b.json");
  CHECK(compare.sessions == std::vector<std::string>{"2026-01-01", "2026-06-01"});
  CHECK(compare.toiles == std::vector<int>{1, 2});
  CHECK(compare.align == "neck");
  CHECK(compare.out == "o");
  CHECK(compare.write == std::vector<std::string>{"svg"});
  CHECK(compare.paper == "a0");
  CHECK(compare.margin == 12.0);
  CHECK(compare.overlap == 8.0);
}

TEST_CASE("What a job file does not say stays as it was") {
  FitJob job;
  job.client = "a.json";
  job.toile = 4;
  const FitJob read = read_fit_job(R"({"format": "blockwright-job-1", "by": "Ada"})", "j", job);
  CHECK(read.client == "a.json");
  CHECK(read.toile == 4);
  CHECK(read.by == "Ada");
}

TEST_CASE("A key of another command is refused, and the message lists those of this one") {
  const auto hint = [](auto&& read) -> std::string {
    try {
      read();
    } catch (const Error& error) {
      CHECK(error.problem().code == "job.key");
      return error.problem().hint.plain();
    }
    return "";
  };
  const char* const dart = R"({"format": "blockwright-job-1", "dart": ["front.waist"]})";
  const std::string draft = hint([&] { (void)read_job(dart, "j", {}); });
  CHECK(draft.find("steps") != std::string::npos);
  CHECK(draft.find("dart") == std::string::npos);
  const std::string fit = hint([&] { (void)read_fit_job(dart, "j", {}); });
  CHECK(fit.find("undo") != std::string::npos);
  CHECK(fit.find("paper") == std::string::npos);
  const std::string compare = hint([&] { (void)read_compare_job(dart, "j", {}); });
  CHECK(compare.find("align") != std::string::npos);
  CHECK(compare.find("undo") == std::string::npos);
}

TEST_CASE("What is not a job file is refused") {
  CHECK(code_of("{") == "job.syntax");
  CHECK(code_of("[]") == "job.type");
  CHECK(code_of("{}") == "job.format");
  CHECK(code_of(R"({"format": "blockwright-client-1"})") == "job.format");
  CHECK(code_of(R"({"format": "blockwright-job-1", "papers": "a4"})") == "job.key");
  CHECK(code_of(R"({"format": "blockwright-job-1", "paper": 4})") == "job.type");
  CHECK(code_of(R"({"format": "blockwright-job-1", "write": "svg"})") == "job.type");
  CHECK(code_of(R"({"format": "blockwright-job-1", "steps": 1})") == "job.type");
  CHECK(code_of(R"({"format": "blockwright-job-1", "toile": 1.5})") == "job.type");
  CHECK(code_of(R"({"format": "blockwright-job-1", "toile": 99999999999})") == "job.type");
  CHECK(code_of(R"({"format": "blockwright-job-1", "write": ["svg", 1]})") == "job.type");
  CHECK(code_of(R"({"format": "blockwright-job-1", "paper": "a4", "paper": "a3"})") == "job.key");
  CHECK(code_of(std::string(100000, '[')) == "job.syntax");
  CHECK(refusal_of("{\n \"paper\": A4}").where == "job.json:2:11");
}
