// Forms and empty files for a tape session, with files in memory.
#include "blockwright/job/tape_form.hpp"
#include "support/each.hpp"
#include "support/memory_files.hpp"

#include <catch2/catch.hpp>

#include <algorithm>
#include <sstream>

using namespace blockwright;

namespace {

const std::string kVerity = R"({
  "format": "blockwright-client-1",
  "name": "Verity Lark",  "unit": "in",
  "sessions": [
    { "date": "2026-03-14", "tape": { "bust_girth": 36, "waist_girth": 29 } },
    { "date": "2026-07-12", "tape": { "bust_girth": "36 1/2", "shoulder_slope": 22.5 } }
  ]
})";

TapeJob sheet_of(const std::string& client) {
  TapeJob job;
  job.client = client;
  job.out = "forms";
  job.sheet = true;
  return job;
}

std::string all_svg(const MemoryFiles& files) {
  std::string text;
  for (const auto& [name, bytes] : files.files) {
    if (name.ends_with(".svg")) text += bytes;
  }
  return text;
}

bool contains_text(const std::string& text, const std::string& part) {
  return text.find(part) != std::string::npos;
}

JobResult blank_in(MemoryFiles& files) {
  TapeJob job;
  job.client = "people/me.json";
  job.blank = true;
  job.date = "2026-11-29";
  return run_tape_blank(job, files);
}

Problem only_problem(const JobResult& result) {
  REQUIRE(result.problems.size() == 1);
  return result.problems.front();
}

}  // namespace

TEST_CASE("A form without a client is for anybody") {
  MemoryFiles files;
  const JobResult result = run_tape_sheet(sheet_of(""), files);
  INFO(result.output);
  CHECK(result.exit_code == 0);
  REQUIRE(files.files.contains("forms/tape-sheet.pdf"));
  CHECK(files.files.at("forms/tape-sheet.pdf").starts_with("%PDF-1.7"));
  CHECK(result.files.size() == 1 + static_cast<std::size_t>(result.summary.pages));
  const std::string svg = all_svg(files);
  for (const MeasurementInfo& entry : each(measurement_catalogue())) {
    CHECK(contains_text(svg, ">" + name_text(entry.key) + "</text>"));
  }
  CHECK(contains_text(svg, "Write centimetres, for example 74.5</text>"));
  CHECK(contains_text(svg, "Write inches, to the eighth, for example 29 3/8</text>"));
}

TEST_CASE("A client's form has her name, her unit and the values of her newest session") {
  MemoryFiles files({{"people/verity.json", kVerity}});
  const JobResult result = run_tape_sheet(sheet_of("people/verity.json"), files);
  INFO(result.output);
  CHECK(result.exit_code == 0);
  CHECK(files.files.contains("forms/verity-tape-sheet.pdf"));
  const std::string svg = all_svg(files);
  CHECK(contains_text(svg, ">Verity Lark</text>"));
  CHECK(contains_text(svg, ">36 1/2 in on 2026-07-12</text>"));
  CHECK(contains_text(svg, ">22.5\u00b0 on 2026-07-12</text>"));
  CHECK_FALSE(contains_text(svg, "29 in on"));  // of the older session
  CHECK_FALSE(contains_text(svg, "Write centimetres"));
  CHECK(files.files.at("people/verity.json") == kVerity);
}

TEST_CASE("The same form has the same bytes") {
  MemoryFiles once, again;
  run_tape_sheet(sheet_of(""), once);
  run_tape_sheet(sheet_of(""), again);
  CHECK(once.files.size() > 1);
  CHECK(once.files == again.files);
}

TEST_CASE("A client file that is not there yet has an empty form of its own name") {
  MemoryFiles files;
  TapeJob job = sheet_of("people/me.json");
  job.unit = Unit::Inch;
  job.write = {OutputKind::Svg};
  CHECK(run_tape_sheet(job, files).exit_code == 0);
  const std::string svg = all_svg(files);
  CHECK(contains_text(svg, "blockwright tape me.json."));
  CHECK(contains_text(svg, "Write inches, to the eighth, for example 29 3/8</text>"));
  CHECK_FALSE(contains_text(svg, "Write centimetres"));
  CHECK_FALSE(files.files.contains("forms/me-tape-sheet.pdf"));
}

TEST_CASE("A form for a file that is not there says so") {
  MemoryFiles files({{"people/verity.json", kVerity}});
  const std::string said = "There is no people/typo.json yet: a form without a name.\n";
  CHECK(run_tape_sheet(sheet_of("people/typo.json"), files).output.starts_with(said));
  CHECK_FALSE(contains_text(run_tape_sheet(sheet_of("people/verity.json"), files).output, "yet:"));
  CHECK_FALSE(contains_text(run_tape_sheet(sheet_of(""), files).output, "yet:"));
}

TEST_CASE("A date or a name that a session refuses is not printed either") {
  for (const char* client : {"", "people/verity.json"}) {
    MemoryFiles files({{"people/verity.json", kVerity}});
    TapeJob job = sheet_of(client);
    job.date = "nonsense";
    CHECK(only_problem(run_tape_sheet(job, files)).where == "--date");
    job.date = "2026-11-29";
    for (const std::string& by : {std::string(300, 'x'), std::string("R\x01")}) {
      job.by = by;
      CHECK(only_problem(run_tape_sheet(job, files)).where == "--by");
    }
    CHECK(files.files.size() == 1);
  }
}

TEST_CASE("A form says in its unit when a third reading is wanted") {
  MemoryFiles either, inches;
  run_tape_sheet(sheet_of(""), either);
  CHECK(contains_text(all_svg(either), "1 cm (3/8 in)"));
  TapeJob job = sheet_of("");
  job.unit = Unit::Inch;
  run_tape_sheet(job, inches);
  CHECK(contains_text(all_svg(inches), "3/8 in"));
  CHECK_FALSE(contains_text(all_svg(inches), "1 cm"));
}

TEST_CASE("The form has three pages on a4 and on letter, with and without her last values") {
  for (const std::string& paper : each(std::vector<std::string>{"a4", "letter"})) {
    for (const char* client : {"", "people/verity.json"}) {
      INFO("'" << client << "'");
      MemoryFiles files({{"people/verity.json", kVerity}});
      TapeJob job = sheet_of(client);
      job.paper = paper;
      CHECK(run_tape_sheet(job, files).summary.pages == 3);
    }
  }
}

TEST_CASE("A form in another unit than her file's is refused") {
  MemoryFiles files({{"people/verity.json", kVerity}});
  TapeJob job = sheet_of("people/verity.json");
  job.unit = Unit::Cm;
  const JobResult result = run_tape_sheet(job, files);
  CHECK(result.exit_code == 2);
  CHECK(only_problem(result).where == "--unit");
  CHECK(only_problem(result).message.plain() ==
        "her file is in inches, and what is taken is written into it");
  CHECK(files.files.size() == 1);
}

TEST_CASE("Two of check, sheet and blank at once are refused, and no client but for a form") {
  MemoryFiles files;
  TapeJob both = sheet_of("");
  both.check = true;
  CHECK(run_tape_sheet(both, files).exit_code == 2);
  TapeJob nobody;
  nobody.check = true;
  const JobResult result = run_tape(nobody, files);
  CHECK(result.exit_code == 2);
  CHECK(only_problem(result).where == "CLIENT");
  CHECK(files.files.empty());
}

TEST_CASE("An empty file has every key, and the bust girth alone makes it one to draft from") {
  MemoryFiles files;
  CHECK(blank_in(files).exit_code == 0);
  std::string& text = files.files.at("people/me.json");
  for (const MeasurementInfo& entry : each(measurement_catalogue())) {
    CHECK(contains_text(text, "\"" + std::string(entry.key) + "\": null"));
  }
  Job draft;
  draft.client = "people/me.json";
  draft.write = {OutputKind::Json};
  const JobResult unfinished = run_job(draft, files);
  CHECK(unfinished.exit_code == 1);
  CHECK(only_problem(unfinished).code == "client.missing");
  text.replace(text.find("null"), 4, "92.5");
  CHECK(run_job(draft, files).exit_code == 0);
}

TEST_CASE("An empty file is not written over a file that is there, whatever that is") {
  for (const std::string& there : each(std::vector<std::string>{kVerity, "a letter", ""})) {
    MemoryFiles files({{"people/me.json", there}});
    const JobResult result = blank_in(files);
    CHECK(result.exit_code != 0);
    CHECK(files.files.size() == 1);
    CHECK(files.files.at("people/me.json") == there);
  }
  MemoryFiles files({{"people/me.json", kVerity}});
  CHECK(only_problem(blank_in(files)).code == "file.write");
}
