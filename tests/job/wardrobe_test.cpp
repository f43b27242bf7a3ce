// The travelling theatre's wardrobe in examples/wardrobe: everybody drafts, and to the same numbers
// as the approved reports in tests/golden. To approve new numbers after a look at the drawings, run
// this test program with BLOCKWRIGHT_APPROVE=1 in the environment.
#include "blockwright/job/job.hpp"
#include "support/memory_files.hpp"

#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>

#include <algorithm>
#include <cmath>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <sstream>

namespace wardrobe_test {

using namespace blockwright;
using Json = nlohmann::ordered_json;
namespace fs = std::filesystem;

namespace {

/// A hundredth of a millimetre or degree: below what anybody draws.
constexpr double kGoldenTolerance = 0.01;

std::vector<fs::path> json_files(const std::string& folder) {
  std::vector<fs::path> found;
  for (const auto& entry : fs::directory_iterator(fs::path(BLOCKWRIGHT_SOURCE_DIR) / folder)) {
    if (entry.path().extension() == ".json") found.push_back(entry.path());
  }
  std::sort(found.begin(), found.end());
  return found;
}

std::vector<fs::path> wardrobe() { return json_files("examples/wardrobe"); }

std::string bytes_of(const fs::path& path) {
  std::ifstream in(path, std::ios::binary);
  std::ostringstream text;
  text << in.rdbuf();
  return text.str();
}

Json report_of(const fs::path& path) {
  MemoryFiles files;
  Job job;
  job.client = path.filename().string();
  job.report = ReportKind::Json;
  job.write = {OutputKind::Json};
  files.files[job.client] = bytes_of(path);
  const JobResult result = run_job(job, files);
  INFO(result.output);
  CHECK(result.exit_code == 0);
  return Json::parse(result.output);
}

/// The first place where two reports differ by more than the tolerance, or nothing.
std::string difference(const Json& a, const Json& b, const std::string& at = "") {
  if (a.is_number() && b.is_number()) {
    const bool same = std::abs(a.get<double>() - b.get<double>()) <= kGoldenTolerance;
    return same ? "" : at + ": " + a.dump() + " is not " + b.dump();
  }
  if (a.type() != b.type() || a.size() != b.size()) return at + " differs in kind or number";
  if (a.is_structured()) {
    const auto left = a.items(), right = b.items();
    auto i = left.begin();
    for (auto j = right.begin(); i != left.end(); ++i, ++j) {
      if (i.key() != j.key()) return at + ": " + i.key() + " is not " + j.key();
      const std::string found = difference(i.value(), j.value(), at + "/" + i.key());
      if (!found.empty()) return found;
    }
    return "";
  }
  return a == b ? "" : at + ": " + a.dump() + " is not " + b.dump();
}

std::size_t count_of(const std::string& text, const std::string& what) {
  std::size_t count = 0;
  for (auto at = text.find(what); at != std::string::npos; at = text.find(what, at + 1)) ++count;
  return count;
}

/// The pieces of a style as they are read and as they are cut; empty if she cannot wear it.
struct Adapted {
  std::string pattern;
  std::string drawing;

  [[nodiscard]] std::size_t places() const {
    const Json read = Json::parse(pattern);
    std::size_t count = 0;
    for (const Json& piece : read["pieces"]) {
      count += piece.contains("fullness") ? piece["fullness"].size() : 0;
    }
    return count;
  }
  [[nodiscard]] std::size_t told() const {
    return count_of(drawing, ">gather ") + count_of(drawing, ">ease ");
  }
};

Adapted adapted(const fs::path& person, const std::string& style, CutStyle cut) {
  MemoryFiles files({{"she.json", bytes_of(person)}, {"style.json", style}});
  Job job;
  job.command = Command::Adapt;
  job.client = "she.json";
  job.style = "style.json";
  job.out = "out";
  job.cut = cut;
  job.write = {OutputKind::Svg, OutputKind::Json};
  const JobResult result = run_job(job, files);
  if (result.exit_code != 0) return {};
  REQUIRE(result.files.size() == 2);
  return {files.files.at(result.files[1]), files.files.at(result.files[0])};
}

}  // namespace

TEST_CASE("Everybody of the wardrobe drafts as approved") {
  const auto people = wardrobe();
  REQUIRE(people.size() >= 7);
  for (const fs::path& person : people) {
    INFO(person.filename());
    const Json report = report_of(person);
    const fs::path golden = fs::path(BLOCKWRIGHT_SOURCE_DIR) / "tests/golden" / person.filename();
    if (std::getenv("BLOCKWRIGHT_APPROVE") != nullptr) {
      std::ofstream(golden) << report.dump(1) << '\n';
    }
    REQUIRE(fs::exists(golden));
    CHECK(difference(Json::parse(bytes_of(golden)), report) == "");
  }
}

TEST_CASE("The wardrobe holds both units and somebody with the bust girth alone") {
  int inches = 0, alone = 0;
  for (const fs::path& person : wardrobe()) {
    const Json client = Json::parse(bytes_of(person));
    inches += client["unit"] == "in" ? 1 : 0;
    for (const Json& session : client["sessions"]) alone += session["tape"].size() == 1 ? 1 : 0;
  }
  CHECK(inches >= 1);
  CHECK(alone >= 1);
}

TEST_CASE("Whatever is gathered or eased says on the paper from what to what") {
  std::size_t gathered = 0;
  for (const fs::path& person : wardrobe()) {
    for (const fs::path& style : json_files("examples/styles")) {
      INFO(person.filename() << ", " << style.filename());
      const Adapted garment = adapted(person, bytes_of(style), CutStyle::Net);
      if (garment.pattern.empty()) continue;
      CHECK(garment.told() == garment.places());
      gathered += garment.places();
    }
  }
  CHECK(gathered >= 40);
}

TEST_CASE("Gathers too short for their words have them near by") {
  const std::string style = R"({
    "format": "blockwright-style-1", "name": "gathered armhole", "unit": "cm",
    "steps": [{ "pivot": { "dart": "front.shoulder", "to": "front.armhole" } },
              { "gathers": { "dart": "front.armhole", "over": 1.0 } }]
  })";
  for (const fs::path& person : wardrobe()) {
    INFO(person.filename());
    const Adapted garment = adapted(person, style, CutStyle::Toile);
    REQUIRE(!garment.pattern.empty());
    CHECK(garment.places() == 1);
    CHECK(garment.told() == 1);
  }
}

TEST_CASE("An armhole flattened by one correction still bends one way after the next") {
  const std::string file = "nadezhda-vetrova.json";
  MemoryFiles files;
  files.files[file] = bytes_of(fs::path(BLOCKWRIGHT_SOURCE_DIR) / "examples/wardrobe" / file);
  FitJob job;
  job.client = file;
  job.date = "2026-03-21";
  job.toile = 1;
  job.add = {"lower shoulder_point 1.5", "shorten shoulder 1"};
  const JobResult result = run_fit(job, files);
  INFO(result.output);
  CHECK(result.exit_code == 0);
  CHECK(result.output.find("turns back") == std::string::npos);
}

}  // namespace wardrobe_test
