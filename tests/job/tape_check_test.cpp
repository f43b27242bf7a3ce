// What `tape --check` says of lengths that contradict each other.
#include "blockwright/job/job.hpp"
#include "support/memory_files.hpp"

#include <catch2/catch.hpp>

using namespace blockwright;

namespace {

std::string checked(const std::string& tape) {
  MemoryFiles files({{"runa.json",
                      R"({"format": "blockwright-client-1", "name": "Runa Vell", "unit": "cm",
                      "sessions": [{"date": "2026-03-14", "tape": {"bust_girth": 90.7, )" +
                          tape + "}}]}"}});
  TapeJob job;
  job.client = "runa.json";
  job.check = true;
  return run_tape(job, files).output;
}

bool has(const std::string& text, const std::string& part) {
  return text.find(part) != std::string::npos;
}

}  // namespace

TEST_CASE("lengths that contradict each other are shown as taped and as settled") {
  const std::string output =
      checked(R"("side_length": 20.0, "scye_depth": 20.8, "back_waist_length": 35.7)");
  CHECK(has(output, "These contradict each other."));
  CHECK(has(output, "side length"));
  CHECK(has(output, "back waist length"));
  CHECK(has(output, "35.7 cm"));
  CHECK(has(output, "redundancy"));
}

TEST_CASE("lengths that go together need no table") {
  const std::string output =
      checked(R"("side_length": 17.7, "scye_depth": 18.6, "back_waist_length": 36.7)");
  CHECK_FALSE(has(output, "contradict"));
}
