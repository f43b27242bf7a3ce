// A folder of clients at once.
#include "blockwright/job/job.hpp"
#include "support/memory_files.hpp"
#include "support/run_tool.hpp"

#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>

#include <filesystem>
#include <map>

using namespace blockwright;

namespace {

using Json = nlohmann::json;

std::string client(const std::string& name, const std::string& bust) {
  return R"({"format": "blockwright-client-1", "name": ")" + name +
         R"(", "unit": "cm", "sessions": [{"date": "2026-03-14", "tape": {"bust_girth": )" + bust +
         "}}]}";
}

MemoryFiles folder_of_people() {
  return MemoryFiles(
      std::map<std::string, std::string>{{"people/b.json", client("B", "92")},
                                         {"people/a.json", client("A", "88")},
                                         {"people/c.json", client("C", "9")},
                                         {"people/notes.txt", "not a client"},
                                         {"people/deep/d.json", client("D", "100")}});
}

BatchJob batch_of(const std::string& folder) {
  BatchJob batch;
  batch.folder = folder;
  batch.each.out = "out";
  batch.each.write = {"svg"};
  batch.each.report = "json";
  return batch;
}

}  // namespace

TEST_CASE("A batch takes every client in the order of the names; one failure stops nobody") {
  MemoryFiles files = folder_of_people();
  const JobResult result = run_batch(batch_of("people"), files);
  CHECK(result.exit_code == 1);
  const Json lines = Json::parse(result.output)["clients"];
  REQUIRE(lines.size() == 3);
  CHECK(lines[0]["file"] == "people/a.json");
  CHECK(lines[0]["state"] != "failed");
  CHECK(lines[0]["residual_mm"].get<double>() < 0.1);
  CHECK(lines[1]["client"] == "B");
  CHECK(lines[2]["state"] == "failed");
  CHECK(lines[2]["problems"][0]["code"] == "client.range");
  CHECK(files.files.count("out/a-toile.svg") == 1);
  CHECK(files.files.count("out/b-toile.svg") == 1);
  CHECK(files.files.count("out/c-toile.svg") == 0);
}

TEST_CASE("Subfolders are taken on request") {
  MemoryFiles files = folder_of_people();
  BatchJob batch = batch_of("people");
  batch.subfolders = true;
  CHECK(Json::parse(run_batch(batch, files).output)["clients"].size() == 4);
}

TEST_CASE("Two clients whose output would share a name: the later one is refused") {
  MemoryFiles files(std::map<std::string, std::string>{{"p/a b.json", client("A", "92")},
                                                       {"p/a-b.json", client("B", "92")}});
  const JobResult result = run_batch(batch_of("p"), files);
  CHECK(result.exit_code == 1);
  const Json lines = Json::parse(result.output)["clients"];
  CHECK(lines[0]["state"] != "failed");
  CHECK(lines[1]["problems"][0]["code"] == "batch.collision");
}

TEST_CASE("A folder without clients, or none, and a wrong number of jobs are told") {
  MemoryFiles files = folder_of_people();
  CHECK(run_batch(batch_of("nowhere"), files).exit_code == 2);
  BatchJob batch = batch_of("people");
  batch.jobs = 0;
  CHECK(run_batch(batch, files).exit_code == 2);
  DiskFiles disk;
  CHECK(run_batch(batch_of("/no/such/folder"), disk).exit_code == 2);
}

TEST_CASE("What is wrong for everybody is told once, and nobody is worked on") {
  MemoryFiles files = folder_of_people();
  BatchJob batch = batch_of("people");
  batch.each.paper = "papyrus";
  CHECK(run_batch(batch, files).exit_code == 2);
  batch = batch_of("people");
  batch.each.command = Command::Adapt;
  batch.each.style = "none.json";
  CHECK(run_batch(batch, files).exit_code == 2);
  CHECK(files.files.size() == 5);
}

TEST_CASE("Any number of jobs gives the same summary and the same bytes") {
  const blockwright_tests::TempFolder folder;
  DiskFiles disk;
  for (const int jobs : {1, 4}) {
    BatchJob batch = batch_of(std::string(BLOCKWRIGHT_SOURCE_DIR) + "/examples/wardrobe");
    batch.jobs = jobs;
    batch.each.write = {"svg", "pdf", "json"};
    batch.each.out = folder.path(std::to_string(jobs));
    const JobResult result = run_batch(batch, disk);
    CHECK(result.exit_code == 0);
    CHECK(result.files.size() == 24);
  }
  for (const auto& entry : std::filesystem::directory_iterator(folder.path("1"))) {
    const std::string name = entry.path().filename().string();
    INFO(name);
    CHECK(blockwright_tests::read_bytes(folder.path("1") + "/" + name) ==
          blockwright_tests::read_bytes(folder.path("4") + "/" + name));
  }
}
