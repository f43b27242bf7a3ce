// What the program asks at a prompt, with answers from a text and files in memory.
#include "../../src/cli/fit_prompt.hpp"

#include "../../src/cli/new_tape_prompt.hpp"

#include "blockwright/base/error.hpp"
#include "blockwright/base/printable.hpp"
#include "support/each.hpp"
#include "support/memory_files.hpp"

#include <catch2/catch.hpp>

#include <sstream>

using namespace blockwright;

namespace {

// Half a year after the fitting the new tape has the shorter shoulder and the smaller waist.
const std::string kClient = R"({
  "format": "blockwright-client-1",
  "name": "Verity Lark",  "unit": "cm",
  "sessions": [
    { "date": "2026-01-10", "tape": { "bust_girth": 94.0, "waist_girth": 74.00, "shoulder_length": 12.4 } },
    { "date": "2026-07-12", "tape": { "bust_girth": 94.0, "waist_girth": 72.00, "shoulder_length": 11.8 } }
  ],
  "fittings": [
    { "date": "2026-01-20", "toile": 1, "corrections": [
      { "lower": "front_neck", "by": 1.0 },
      { "take_in": "waist", "by": 2.0, "as": "whole_girth" },
      { "shorten": "shoulder", "by": 0.6 } ] }
  ]
})";

MemoryFiles files_here() {
  return MemoryFiles(std::map<std::string, std::string>{{"verity.json", kClient}});
}

Job draft_job() {
  Job job;
  job.client = "verity.json";
  job.out = "out";
  job.write = {OutputKind::Svg};
  return job;
}

// What the program says to these answers.
std::string asked(const Job& job, const std::string& answers, MemoryFiles& files) {
  std::istringstream in(answers);
  std::ostringstream out;
  ask_of_explained(job, files, in, out);
  return out.str();
}

std::string replaced(std::string text, const std::string& what, const std::string& by) {
  const std::size_t at = text.find(what);
  REQUIRE(at != std::string::npos);
  return text.replace(at, what.size(), by);
}

std::vector<std::string> warned(const Job& job, MemoryFiles& files) {
  std::vector<std::string> where;
  for (const Problem& problem : run_job(job, files).problems) {
    if (problem.code == "fit.explained") where.push_back(problem.where);
  }
  return where;
}

}  // namespace

TEST_CASE("Each correction that the new tape already has is asked of; the answers are written") {
  MemoryFiles files = files_here();
  const std::string said = asked(draft_job(), "keep\nd\n", files);
  CHECK(said.find("correction 2 asked for 2 cm less waist girth; the newer tape has 2 cm of it "
                  "(74 cm on 2026-01-10, 72 cm on 2026-07-12), and nothing remains: 2 (take in "
                  "waist) is left out.") != std::string::npos);
  CHECK(said.find("correction 3 asked for 0.6 cm less shoulder length") != std::string::npos);
  CHECK(said.find("correction 1") == std::string::npos);
  // All that was typed stays as it was; the two answers stand beside their corrections.
  const std::string kept =
      replaced(kClient, R"("as": "whole_girth" })", R"("as": "whole_girth", "new_tape": "keep" })");
  CHECK(files.files["verity.json"] == replaced(kept, R"("shoulder", "by": 0.6 })",
                                               R"("shoulder", "by": 0.6, "new_tape": "drop" })"));
  CHECK(files.files["verity.json.bak"] == kClient);
  // Then the run goes on with them, and nothing is asked or warned of any more.
  CHECK(warned(draft_job(), files).empty());
  CHECK(asked(draft_job(), "d\nd\n", files).empty());
}

TEST_CASE("The name of a client file makes no line of a prompt") {
  const std::string path = "ver\nWritten into\u202eity.json";
  MemoryFiles files;
  files.files[path] = kClient;
  Job job = draft_job();
  job.client = path;
  const std::string said = asked(job, "keep\nd\n", files);
  CHECK(said == printable_lines(said));
  CHECK(said.find("Written into ver\\nWritten into\\u202eity.json; the text before it is "
                  "ver\\nWritten into\\u202eity.json.bak\n") != std::string::npos);
}

TEST_CASE("Without an answer the sum counts with a warning, and is asked of again") {
  for (const char* answers : each({"\n\n", "", "k", "perhaps\n\nno\n"})) {
    MemoryFiles files = files_here();
    const bool first_kept = std::string(answers) == "k";
    asked(draft_job(), answers, files);
    CHECK((files.files["verity.json"] == kClient) == !first_kept);
    CHECK(warned(draft_job(), files).size() == (first_kept ? 1 : 2));
  }
}

TEST_CASE("An answer that is none is asked for once more") {
  MemoryFiles files = files_here();
  const std::string said = asked(draft_job(), "yes\nd\nk\n", files);
  CHECK(said.find("s, k, d, or nothing") != std::string::npos);
  CHECK(files.files["verity.json"].find("\"whole_girth\", \"new_tape\": \"drop\"") !=
        std::string::npos);
}

TEST_CASE("Nothing is asked of an older session, an older toile, or a file that cannot be read") {
  MemoryFiles files = files_here();
  Job job = draft_job();
  job.session = "2026-01-10";
  CHECK(asked(job, "k\nk\n", files).empty());
  job = draft_job();
  job.toile = 1;
  CHECK(asked(job, "k\nk\n", files).empty());
  job.client = "nobody.json";
  CHECK(asked(job, "k\nk\n", files).empty());
  files.files["torn.json"] = "{";
  job.client = "torn.json";
  CHECK(asked(job, "k\nk\n", files).empty());
}

TEST_CASE("The prompt of fit asks of explained corrections first, then what is seen") {
  MemoryFiles files = files_here();
  FitJob job;
  job.client = "verity.json";
  std::istringstream in("d\nk\n1\n0.4\n\n");
  std::ostringstream out;
  ask_for_corrections(job, files, in, out);
  const std::string said = out.str();
  CHECK(said.find("drop it (d)?") < said.find("What is seen?"));
  CHECK(said.find("Added: ") != std::string::npos);
  const std::string& text = files.files["verity.json"];
  CHECK(text.find("\"new_tape\": \"drop\"") != std::string::npos);
  CHECK(text.find("\"new_tape\": \"keep\"") != std::string::npos);
}

TEST_CASE("If the client file cannot be written, the old one stays and the run does not go on") {
  MemoryFiles files = files_here();
  files.refuses_writing = true;
  CHECK_THROWS_AS(asked(draft_job(), "d\nk\n", files), FileError);
  CHECK(files.files["verity.json"] == kClient);
}

TEST_CASE("An answer of 1000 bytes is read; a longer one is refused, naming the limit") {
  MemoryFiles files = files_here();
  const std::string longest(1000, 'y');
  const std::string said = asked(draft_job(), longest + "\nk\nd\n", files);
  CHECK(said.find("s, k, d, or nothing") != std::string::npos);
  CHECK(files.files["verity.json"].find("\"new_tape\": \"drop\"") != std::string::npos);
  for (const char* end : each({"\n", "", "yyyy"})) {
    MemoryFiles fresh = files_here();
    try {
      asked(draft_job(), longest + "y" + end, fresh);
      FAIL("it was read");
    } catch (const UsageError& error) {
      CHECK(error.problem().code == "input.line");
      CHECK(error.problem().where == "standard input");
      CHECK(error.problem().message.plain() == "the answer is longer than 1000 bytes");
    }
    CHECK(fresh.files["verity.json"] == kClient);
  }
}
