// Job files: one key for each option, everything else refused with a cure.
#include "blockwright/base/error.hpp"
#include "blockwright/job/job.hpp"

#include <catch2/catch.hpp>

using namespace blockwright;

namespace {

std::string code_of(const std::string& text) {
  try {
    read_job(text, "job.json", {});
  } catch (const Error& error) {
    CHECK(error.problem().where.find("job.json") == 0);
    CHECK_FALSE(error.problem().hint.empty());
    return error.problem().code;
  }
  return "";
}

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

TEST_CASE("What is not a job file is refused") {
  CHECK(code_of("{") == "job.syntax");
  CHECK(code_of("[]") == "job.type");
  CHECK(code_of("{}") == "job.format");
  CHECK(code_of(R"({"format": "blockwright-client-1"})") == "job.format");
  CHECK(code_of(R"({"format": "blockwright-job-1", "papers": "a4"})") == "job.key");
  CHECK(code_of(R"({"format": "blockwright-job-1", "paper": 4})") == "job.type");
  CHECK(code_of(R"({"format": "blockwright-job-1", "write": "svg"})") == "job.type");
  CHECK(code_of(R"({"format": "blockwright-job-1", "steps": 1})") == "job.type");
  CHECK(code_of(std::string(100000, '[')) == "job.syntax");
}
