// A person who works in inches never reads millimetres: not in a report, a warning, a refusal, a
// batch's summary or a comparison; and what her reports add up is a sum as printed.
#include "blockwright/job/job.hpp"
#include "blockwright/measure/fitting.hpp"
#include "support/memory_files.hpp"
#include "support/sanitized.hpp"

#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <random>
#include <sstream>

namespace inches_test {

using namespace blockwright;
namespace fs = std::filesystem;

namespace {

using Json = nlohmann::ordered_json;

std::vector<fs::path> json_files(const char* folder) {
  std::vector<fs::path> found;
  for (const auto& entry : fs::directory_iterator(fs::path(BLOCKWRIGHT_SOURCE_DIR) / folder)) {
    if (entry.path().extension() == ".json") found.push_back(entry.path());
  }
  std::sort(found.begin(), found.end());
  REQUIRE(found.size() >= 7);
  return found;
}

std::string bytes_of(const fs::path& path) {
  std::ifstream in(path, std::ios::binary);
  return {std::istreambuf_iterator<char>(in), {}};
}

/// The lines that have "mm" as a unit; empty if there are none.
std::string lines_in_mm(const std::string& text) {
  std::string found, line;
  for (std::istringstream lines(text); std::getline(lines, line);) {
    for (const char* mm : {" mm ", " mm,", " mm;", " mm)", " mm:", "mm\n"}) {
      if ((line + "\n").find(mm) != std::string::npos) found += line + "\n";
    }
  }
  return found;
}

std::string said(const JobResult& result) {
  std::string text = result.output;
  for (const Problem& problem : result.problems) text += to_text(problem) + "\n";
  return text;
}

Job job_of(Unit unit) {
  Job job;
  job.client = "she.json";
  job.unit = unit;
  job.out = "out";
  job.write = {OutputKind::Json};
  return job;
}

/// In sixteenths of an inch: "17 3/16", "-1/2".
long sixteenths(const std::string& cell) {
  std::istringstream in(cell.substr(cell.front() == '-' ? 1 : 0));
  long sum = 0;
  for (std::string part; in >> part;) {
    const std::size_t stroke = part.find('/');
    const long value = 16 * std::stol(part);
    sum += stroke == std::string::npos ? value : value / std::stol(part.substr(stroke + 1));
  }
  return cell.front() == '-' ? -sum : sum;
}

/// The number in these columns of a table's line.
long cell(const std::string& line, std::size_t begin, std::size_t width) {
  const std::string text = line.substr(begin, width);
  return sixteenths(text.substr(text.find_first_not_of(' ')));
}

}  // namespace

TEST_CASE("No report of the wardrobe in inches speaks of millimetres, drafted or in any style") {
  for (const fs::path& person : json_files("examples/wardrobe")) {
    CAPTURE(person.filename());
    MemoryFiles files({{"she.json", bytes_of(person)}});
    Job job = job_of(Unit::Inch);
    job.steps = true;
    CHECK(lines_in_mm(said(run_job(job, files))) == "");
    job.command = Command::Adapt;
    job.style = "style.json";
    for (const fs::path& style : json_files("examples/styles")) {
      CAPTURE(style.filename());
      files.files["style.json"] = bytes_of(style);
      for (const ReportKind report : {ReportKind::Text, ReportKind::Json}) {
        job.report = report;
        CHECK(lines_in_mm(said(run_job(job, files))) == "");
      }
    }
  }
}

TEST_CASE("No correction, applied or refused, speaks of millimetres to a person in inches") {
  const std::string client =
      bytes_of(fs::path(BLOCKWRIGHT_SOURCE_DIR) / "examples/wardrobe/ondine-marsh.json");
  REQUIRE(Json::parse(client)["unit"] == "cm");
  std::size_t warned = 0, refused = 0;
  std::mt19937 random(11);
  const auto& words = correction_words();
  const std::size_t step = kSanitized ? 10 : 1;
  for (std::size_t i = 0; i < words.size(); i += step) {
    for (const char* cm : {" 0.6", " 2", " 9"}) {
      MemoryFiles files({{"she.json", client}});
      for (const CorrectionWords* word : {&words[i], &words[random() % words.size()]}) {
        CAPTURE(i, word->action, word->place, cm);
        FitJob job;
        job.client = "she.json";
        job.date = "2027-09-01";
        job.toile = 90;
        job.unit = Unit::Inch;
        if (word->must_say) job.as = {word->readings.front()};
        if (word->one_sided) job.side = {BodySide::Left};
        job.add = {std::string(word->action) + " " + std::string(word->place) + cm};
        const JobResult result = run_fit(job, files);
        CHECK(lines_in_mm(said(result)) == "");
        refused += result.exit_code == 0 ? 0 : 1;
        warned += result.exit_code == 0 && !result.problems.empty() ? 1 : 0;
      }
      CHECK(lines_in_mm(said(run_job(job_of(Unit::Inch), files))) == "");
    }
  }
  CHECK(warned > 50 / step);
  CHECK(refused > 10 / step);
}

TEST_CASE("The measurements of a report in inches add up as printed") {
  std::size_t rows = 0;
  for (const fs::path& person : json_files("examples/wardrobe")) {
    CAPTURE(person.filename());
    MemoryFiles files({{"she.json", bytes_of(person)}});
    std::istringstream lines(run_job(job_of(Unit::Inch), files).output);
    for (std::string line; std::getline(lines, line) && line != "Darts";) {
      const bool is_row = line.size() >= 70 && line[69] >= '0' && line[69] <= '9';
      if (!is_row || line.find("°") != std::string::npos) continue;
      CAPTURE(line);
      CHECK(cell(line, 28, 10) + cell(line, 38, 10) + cell(line, 58, 12) == cell(line, 48, 10));
      ++rows;
    }
  }
  CHECK(rows > 100);
}

TEST_CASE("A toile in inches has 3/4 in of allowance where nothing else is asked for") {
  const fs::path person = json_files("examples/wardrobe").front();
  MemoryFiles files({{"she.json", bytes_of(person)}});
  Job job = job_of(Unit::Inch);
  job.write = {OutputKind::Svg};
  const auto drawn = [&] {
    REQUIRE(run_job(job, files).exit_code == 0);
    return files.files.at("out/she-toile.svg");
  };
  const std::string usual = drawn();
  CHECK(usual.find("seam allowance 3/4 in") != std::string::npos);
  job.allowance = Length::mm(19.05);
  CHECK(drawn() == usual);
  job.allowance = Length::mm(20.0);
  CHECK(drawn() != usual);
  job.allowance = std::nullopt;
  job.unit = Unit::Cm;
  const std::string metric = drawn();
  CHECK(metric.find("seam allowance 2 cm") != std::string::npos);
  job.allowance = Length::mm(20.0);
  CHECK(drawn() == metric);
}

TEST_CASE("A comparison in inches speaks of no millimetres, and says front once") {
  const std::string client = R"({
  "format": "blockwright-client-1", "name": "Odile", "unit": "in",
  "sessions": [{ "date": "2026-01-05", "tape": { "bust_girth": 36 } },
               { "date": "2026-03-14", "tape": { "bust_girth": "37 1/2" } }] })";
  MemoryFiles files({{"she.json", client}});
  CompareJob job;
  job.client = "she.json";
  job.paper = "a0";
  job.write = {OutputKind::Svg, OutputKind::Pdf};
  const JobResult result = run_compare(job, files);
  REQUIRE(result.exit_code == 0);
  CHECK(lines_in_mm(said(result)) == "");
  CHECK(result.output.find("front front") == std::string::npos);
}

}  // namespace inches_test
