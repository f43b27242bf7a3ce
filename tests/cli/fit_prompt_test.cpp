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

// What the prompt of fit says to these answers.
std::string fitted(FitJob& job, const std::string& answers, MemoryFiles& files) {
  std::istringstream in(answers);
  std::ostringstream out;
  ask_for_corrections(job, "2026-08-01", files, {in, out});
  return out.str();
}

const std::string kNewClient = R"({
  "format": "blockwright-client-1", "name": "Pip Quill", "unit": "cm",
  "sessions": [ { "date": "2026-07-12", "tape": { "bust_girth": 94.0, "waist_girth": 74.0 } } ]
})";

// What the prompt of fit says of a client without fittings, and the file after it.
struct Asked {
  std::string said, file;
  [[nodiscard]] bool says(const std::string& part) const {
    return said.find(part) != std::string::npos;
  }
  [[nodiscard]] bool wrote(const std::string& part) const {
    return file.find(part) != std::string::npos;
  }
};
Asked new_fitting(const std::string& answers, const std::string& ask = "",
                  std::optional<Unit> unit = std::nullopt) {
  MemoryFiles files;
  files.files["pip.json"] = kNewClient;
  FitJob job;
  job.client = "pip.json";
  job.ask = ask;
  job.unit = unit;
  const std::string said = fitted(job, answers, files);
  return {said, files.files["pip.json"]};
}

std::size_t count_of(const std::string& text, const std::string& part) {
  std::size_t count = 0;
  for (std::size_t at = text.find(part); at != std::string::npos; at = text.find(part, at + 1)) {
    ++count;
  }
  return count;
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
  CHECK(files.files["verity.json.bak"] == kept);  // each answer was written as it was given
  // Then the run goes on with them, and nothing is asked or warned of any more.
  CHECK(warned(draft_job(), files).empty());
  CHECK(asked(draft_job(), "d\nd\n", files).empty());
}

TEST_CASE("A sum that is settled leaves its amounts in the file") {
  // Asked for: 2 and 2 cm; the new tape has 1.2 cm of it: under the least that is sewn of a waist
  // (1 cm), the 0.8 that remain of the first go to the second.
  const std::string client = replaced(
      replaced(kClient, R"("waist_girth": 72.00)", R"("waist_girth": 72.80)"),
      R"({ "take_in": "waist", "by": 2.0, "as": "whole_girth" })",
      R"({ "take_in": "waist", "by": 2.0, "as": "whole_girth" }, { "take_in": "waist", "by": 2.0, "as": "whole_girth", "seen": "again" })");
  MemoryFiles files;
  files.files["verity.json"] = client;
  const std::string said = asked(draft_job(), "s\nsettle\n", files);
  CHECK(said.find("corrections 2 and 3 asked for 4 cm less waist girth; the newer tape has 1.2 cm "
                  "of it (74 cm on 2026-01-10, 72.8 cm on 2026-07-12), and 2.8 cm remains: 2 (take "
                  "in waist) is left out and 3 (take in waist) is now 2.8 cm in place of 2 cm.") !=
        std::string::npos);
  const std::string first = replaced(client, R"("as": "whole_girth" }, {)",
                                     R"("as": "whole_girth", "new_tape": { "settled": 0 } }, {)");
  const std::string second = replaced(first, R"("seen": "again" })",
                                      R"("seen": "again", "new_tape": { "settled": 2.8 } })");
  CHECK(files.files["verity.json"] ==
        replaced(second, R"("shoulder", "by": 0.6 })",
                 R"("shoulder", "by": 0.6, "new_tape": { "settled": 0 } })"));
  CHECK(warned(draft_job(), files).empty());
  CHECK(asked(draft_job(), "", files).empty());
}

TEST_CASE("Two versions are compared with the sum that one of them is made by") {
  MemoryFiles files = files_here();
  CompareJob job;
  job.client = "verity.json";
  job.out = "out";
  job.write = {OutputKind::Svg};
  const JobResult result = run_compare(job, files);
  CHECK(result.exit_code == 0);
  CHECK(result.problems.size() == 2);
  CHECK(count_of(result.output, "corrections 2") + count_of(result.output, "correction 2") == 1);
  CHECK(count_of(result.output, "correction 3: asked for 0.6 cm less shoulder length") == 1);
}

TEST_CASE("Of corrections both ways the sum is shown whole, and nothing is asked that is nothing") {
  // 2 cm more and 2 cm less of the bust, whatever each was read as; the tape has 2 more.
  MemoryFiles files;
  files.files["verity.json"] = replaced(
      replaced(kClient, R"("2026-07-12", "tape": { "bust_girth": 94.0, "waist_girth": 72.00)",
               R"("2026-07-12", "tape": { "bust_girth": 96.0, "waist_girth": 74.00)"),
      R"({ "take_in": "waist", "by": 2.0, "as": "whole_girth" })",
      R"({ "fuller": "bust", "by": 1, "as": "per_half" }, { "take_in": "side", "by": 0.5, "as": "per_seam" })");
  CHECK(asked(draft_job(), "k\n", files).find("bust girth") == std::string::npos);
  const Problems said = run_job(draft_job(), files).problems;
  const auto bust = std::ranges::find(said, "corrections 2 and 3", &Problem::where);
  REQUIRE(bust != said.end());
  CHECK(bust->severity == Severity::Note);
  CHECK(bust->message.plain() ==
        "asked for 2 cm less and 2 cm more bust girth, together nothing; the newer tape takes "
        "nothing off that (94 cm on 2026-01-10, 96 cm on 2026-07-12): 2 (fuller bust) and 3 (take "
        "in side) count in full");
  // 2 more and 1 less: the tape has the 1 that is left of both.
  files.files["verity.json"] =
      replaced(files.files["verity.json"], R"("by": 0.5, "as": "per_seam")",
               R"("by": 0.5, "as": "per_half")");
  const std::string sum = asked(draft_job(), "s\n", files);
  INFO(sum);
  CHECK(sum.find("corrections 2 and 3 asked for 1 cm less and 2 cm more bust girth, together 1 cm "
                 "more; the newer tape has 1 cm of it (94 cm on 2026-01-10, 96 cm on 2026-07-12), "
                 "and nothing remains: 2 (fuller bust) is now 1 cm in place of 2 cm and 3 (take in "
                 "side) counts in full.") != std::string::npos);
}

TEST_CASE("What the tape may err by is said and not asked; a newer tape is asked about again") {
  MemoryFiles files;
  files.files["verity.json"] =
      replaced(kClient, R"("waist_girth": 72.00)", R"("waist_girth": 73.20)");
  CHECK(asked(draft_job(), "s\ns\n", files).find("waist girth") == std::string::npos);
  const Problems said = run_job(draft_job(), files).problems;
  const auto waist = std::ranges::find(said, "correction 2", &Problem::where);
  REQUIRE(waist != said.end());
  CHECK(waist->severity == Severity::Note);
  CHECK(waist->message.plain().find("2 (take in waist) is now 1.2 cm in place of 2 cm") !=
        std::string::npos);
  files.files["verity.json"] =
      replaced(files.files["verity.json"], R"("waist_girth": 73.20)", R"("waist_girth": 72.80)");
  CHECK(asked(draft_job(), "s\n", files).find("is now 0.8 cm in place of 2 cm") !=
        std::string::npos);
}

TEST_CASE(
    "A correction of one side is named where the tape went its way; the file's answer ends it") {
  const std::string one_side = replaced(kClient, R"("by": 2.0, "as": "whole_girth" })",
                                        R"("by": 1.0, "as": "per_half", "side": "left" })");
  MemoryFiles files;
  files.files["verity.json"] = one_side;
  const Problems said = run_job(draft_job(), files).problems;
  const auto waist = std::ranges::find(said, "correction 2", &Problem::where);
  REQUIRE(waist != said.end());
  CHECK(waist->message.plain().find(
            "2 (take in waist, left) is applied in full, for no tape tells the "
            "sides apart; but the tape has 2 cm less waist girth (74 cm on "
            "2026-01-10, 72 cm on 2026-07-12)") == 0);
  CHECK(asked(draft_job(), "", files).find("waist girth") == std::string::npos);
  files.files["verity.json"] =
      replaced(one_side, R"("side": "left" })", R"("side": "left", "new_tape": "keep" })");
  CHECK(warned(draft_job(), files).size() == 1);
}

TEST_CASE("The name of a client file makes no line of a prompt") {
  const std::string path = "ver\nWritten into\u202eity.json";
  MemoryFiles files;
  files.files[path] = kClient;
  Job job = draft_job();
  job.client = path;
  const std::string said = asked(job, "keep\nd\n", files);
  CHECK(said == printable_lines(said));
  CHECK(said.find("Written into ver\\nWritten into\\u202eity.json; the text before the last "
                  "answer is ver\\nWritten into\\u202eity.json.bak\n") != std::string::npos);
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
  const std::string said =
      fitted(job, "d\nk\nfront neck chokes\na\n0.4\n2026-07-20\n\n\n\n", files);
  CHECK(said.find("drop it (d)?") < said.find("What do you see?"));
  CHECK(said.find("Added: lower front neck 0.4 cm, toile 2 of 2026-07-20.") != std::string::npos);
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

TEST_CASE("What is seen is said in words; a letter, an amount and yes write the correction") {
  const Asked asked = new_fitting("armhole digs in\na\n1,0\n2026-07-20\n1\n\n\n");
  CHECK(asked.says("  a  lower underarm"));
  CHECK(asked.says("On the pattern: bust "));
  CHECK(asked.says("cm, stays; waist 7"));
  CHECK(asked.says("Added: lower underarm 1,0 cm, toile 1 of 2026-07-20."));
  CHECK(asked.wrote(R"("underarm", "by": 1.0, "seen": "armhole digs in")"));
}

TEST_CASE("Words of --ask are answered at once; a correction may be typed with its amount") {
  const Asked asked = new_fitting("take in waist 1.0 per half\n\n\nyes\n\n\n", "waist loose");
  CHECK(asked.says("  a  take in waist"));
  CHECK_FALSE(asked.says("By how much"));
  CHECK_FALSE(asked.says("How did you read"));
  CHECK(asked.wrote(R"("date": "2026-08-01")"));
  CHECK(asked.wrote(R"("waist", "by": 1.0, "as": "per_half", "seen": "waist loose")"));
}

TEST_CASE("More words narrow the answers, and back leads to those before") {
  const Asked asked = new_fitting("armhole digs in\nat the front\nback\na 1\n\n\n\n\n");
  const std::size_t narrowed = asked.said.find("  a  scoop front armhole");
  REQUIRE(narrowed != std::string::npos);
  CHECK(asked.said.find("  a  lower underarm") < narrowed);
  CHECK(asked.said.find("  a  lower underarm", narrowed) != std::string::npos);
  CHECK(asked.wrote(R"("lower": "underarm", "by": 1)"));
}

TEST_CASE("A part of the body shows all that can be done there, and all shows everything") {
  const Asked neck = new_fitting("neck\n\n\n");
  CHECK(neck.says("  j  raise back neck"));
  const Asked back = new_fitting("back\n\n\n");
  CHECK(back.says("widen across back"));
  const Asked all = new_fitting("all\n\n");
  CHECK(all.says("neck\n  lower front neck\n"));
  CHECK(all.says("one side\n  lower one shoulder\n"));
  CHECK(all.file == kNewClient);
}

TEST_CASE("Whatever is refused is asked for again, and nothing else") {
  // Not an amount, too much, then right; a way that there is not; a date that is none.
  const Asked asked =
      new_fitting("waist loose\na\nmuch\n99\nsideways\nper half\n1\n20 July\n2026-07-20\n2\n\n\n");
  INFO(asked.said);
  CHECK(asked.says("\"much\" is not an amount: 1.5, 1,5, 5/8 or 1 1/2"));
  CHECK(asked.says("one of the words above"));
  CHECK(asked.says("\"20 July\" is not a date"));
  CHECK(asked.wrote(R"("date": "2026-07-20")"));
  CHECK(asked.wrote(R"("waist", "by": 1, "as": "per_half", "seen": "waist loose")"));
  CHECK(asked.wrote("\"toile\": 2"));
  CHECK(count_of(asked.said, "Which toile?") == 1);
  CHECK(count_of(asked.said, "How did you read") == 2);  // once more for "sideways" alone
  CHECK(count_of(asked.said, "What do you see?") == 2);
}

TEST_CASE("What her block does not take is said before date and toile are asked for") {
  const Asked asked = new_fitting("armhole digs in\na 11\n1\n\n\n\n\n");
  INFO(asked.said);
  const std::size_t refused = asked.said.find("this block takes up to \"lower underarm ");
  REQUIRE(refused != std::string::npos);
  CHECK(refused < asked.said.find("Date of the fitting"));
  CHECK(count_of(asked.said, "Date of the fitting") == 1);
  CHECK(asked.wrote(R"("lower": "underarm", "by": 1)"));
  // What it was judged for is asked again, and judged again, wherever it is changed.
  const Asked later = new_fitting("armhole digs in\na\n1\nback\n11\n1.5\n\n\n\n\n");
  CHECK(later.said.find("this block takes up to") < later.said.rfind("Date of the fitting"));
  CHECK(later.wrote(R"("by": 1.5)"));
}

TEST_CASE("Buttons alone find nothing, and it is said how to go on") {
  const Asked asked = new_fitting("buttons\nbuttons gape at the waist\na 1 per half\n\n\n\n\n");
  CHECK(asked.says("Nothing of the catalogue is found by these words alone."));
  CHECK(asked.says("Say where it is and what the cloth does there"));
  CHECK(asked.wrote(R"("let_out": "waist")"));
}

TEST_CASE("Date and toile are asked for once") {
  const Asked asked =
      new_fitting("armhole digs in\na 1\n2026-07-20\n2\n\nfront neck chokes\na 0,5\n\n\n");
  CHECK(count_of(asked.said, "Date of the fitting") == 1);
  CHECK(count_of(asked.said, "Which toile?") == 1);
  CHECK(asked.wrote("underarm"));
  CHECK(asked.wrote("front_neck"));
}

TEST_CASE("Done, q, quit and the like end as Enter does; so at a tape, where they save") {
  for (const char* word : each({"done", "q", "QUIT", "exit", "end", "save"})) {
    const Asked at_once = new_fitting(std::string(word) + "\nwaist loose\n");
    CHECK(count_of(at_once.said, "What do you see?") == 1);
    CHECK_FALSE(at_once.says("Not understood"));
    const Asked at_answers = new_fitting("waist loose\n" + std::string(word) + "\n");
    CHECK(count_of(at_answers.said, "What do you see?") == 1);
    const Asked at_amount = new_fitting("waist loose\na\n" + std::string(word) + "\n\n");
    CHECK_FALSE(at_amount.says("is not an amount"));
    CHECK(at_amount.file == kNewClient);
  }
  // However many answers there are, no letter of theirs is a word that ends.
  const Asked many = new_fitting("shoulder\nq\n");
  CHECK(many.says("  p  "));
  CHECK(many.says("  r  "));
  CHECK_FALSE(many.says("  q  "));
  CHECK(count_of(many.said, "What do you see?") == 1);
  CHECK(many.file == kNewClient);
  CHECK(new_fitting("shoulder\nr 0.5 per half\n\n\n\n\n").file != kNewClient);
  MemoryFiles files = files_here();
  CHECK(count_of(asked(draft_job(), "quit\n", files), "Settle it so (s)") == 1);
}

TEST_CASE("Where it was asked how an amount was read, no and another amount are taken") {
  const Asked no = new_fitting("waist loose\na 99\nno\n1 per half\n\n\n\n\n");
  CHECK(count_of(no.said, "By how much") == 1);
  CHECK(no.wrote(R"("by": 1, "as": "per_half")"));
  const Asked other = new_fitting("waist loose\na 99\n1.5\nper half\n\n\n\n\n");
  CHECK(other.says("How did you read 1.5?"));
  CHECK(other.wrote(R"("by": 1.5, "as": "per_half")"));
  const Asked at_once = new_fitting("waist loose\na 99\n1.5 per half\n\n\n\n\n");
  CHECK(at_once.wrote(R"("by": 1.5, "as": "per_half")"));
}

TEST_CASE("Enter in place of an amount is asked about once before the correction is left out") {
  const Asked again = new_fitting("armhole digs in\na\n\n1\n\n\n\n\n");
  CHECK(again.says("Without an answer this correction is not written; Enter again leaves it out."));
  CHECK(again.wrote(R"("lower": "underarm", "by": 1)"));
  const Asked left = new_fitting("armhole digs in\na\n\n\n\n");
  CHECK(left.says("Left out: nothing was written of it."));
  CHECK(count_of(left.said, "What do you see?") == 2);
  CHECK(left.file == kNewClient);
}

TEST_CASE("A number that is none is refused for itself, and not for its unit") {
  const Asked asked = new_fitting("armhole digs in\na 1.5.2 cm\n1.5 cm\n\n\n\n\n");
  INFO(asked.said);
  CHECK_FALSE(asked.says("\"cm\""));
  CHECK(asked.says("'1.5.2 cm' is not an amount"));
  CHECK(asked.wrote(R"("by": 1.5)"));
}

TEST_CASE("No writes nothing; another amount is told before it is written") {
  const Asked no = new_fitting("waist loose\na 1 per half\n\n\nno\n\n");
  CHECK(no.says("Not written."));
  CHECK(no.file == kNewClient);
  const Asked other = new_fitting("waist loose\na 1 per half\n\n\n0,5\nyes\n\n");
  CHECK(other.says("(-2.0)"));
  CHECK(other.says("(-1.0)"));
  CHECK(other.wrote(R"("by": 0.5, "as": "per_half")"));
}

TEST_CASE("How an amount was read may be said with it, wherever an amount is asked for") {
  const Asked asked = new_fitting("waist loose\na\n2 whole girth\n\n\n1 per half\nyes\n\n");
  CHECK_FALSE(asked.says("How did you read"));
  CHECK(asked.wrote(R"("by": 1, "as": "per_half")"));
}

TEST_CASE("A fraction without a unit is of cm or of an inch: it is asked") {
  const Asked asked = new_fitting("front neck chokes\na\n3/8\nin\n\n\n\n\n");
  CHECK(asked.says("3/8 of what: cm or in?"));
  CHECK(asked.wrote(R"("by": "3/8 in")"));
}

TEST_CASE("Where cm or inches are asked for another amount is taken") {
  const Asked whole = new_fitting("front neck chokes\na 5/8\n1.5 cm\n\n\n\n\n");
  CHECK(whole.says("5/8 of what: cm or in?"));
  CHECK(whole.wrote(R"("lower": "front_neck", "by": 1.5)"));
  const Asked none = new_fitting("front neck chokes\na 5/8\nmuch\nin\n\n\n\n\n");
  CHECK(none.says("cm or in, or another amount"));
  CHECK(none.wrote(R"("by": "5/8 in")"));
}

TEST_CASE("A side that was said with what is seen is not asked for") {
  const Asked asked = new_fitting("right shoulder lower\nlower one shoulder 0.8\n\n\n\n\n");
  CHECK_FALSE(asked.says("Which side"));
  CHECK(asked.wrote(R"("side": "right")"));
}

TEST_CASE("A side that was said goes with its own fault, and is forgotten with it") {
  const std::string ask = "left shoulder lower, and the front neck chokes me\n";
  const Asked neck = new_fitting(ask + "lower front neck 0.8\n\n\n\n\n");
  CHECK(neck.wrote(R"("lower": "front_neck", "by": 0.8, "seen")"));
  const Asked shoulder = new_fitting(ask + "lower one shoulder 0.8\n\n\n\n\n");
  CHECK(shoulder.wrote(R"("side": "left")"));
  const std::string sides = "left side: waist loose; right side: waist tight\n";
  const Asked right = new_fitting(sides + "b\n1 per half\n\n\n\n\n");
  CHECK(right.says("  b  let out waist, right"));
  CHECK(right.wrote(R"("let_out": "waist", "by": 1, "as": "per_half", "side": "right")"));
  const Asked other = new_fitting("left shoulder lower\nwaist loose\na\n2 whole girth\n\n\n\n\n");
  CHECK(other.wrote(R"("as": "whole_girth", "seen": "waist loose")"));
}

TEST_CASE("A way of counting that a correction does not know is told, and the amount asked again") {
  const Asked asked = new_fitting("widen neck 0.3 all round\n0.4\n\n\n\n\n");
  CHECK(asked.says("widen neck is not measured round the whole body: write \"widen neck 0.3\""));
  CHECK(asked.wrote(R"("widen": "neck", "by": 0.4 })"));
  const Asked each_side = new_fitting("take in waist 2\neach side\n\n\n\n\n");
  CHECK(each_side.wrote(R"("by": 2, "as": "per_half")"));
}

TEST_CASE("What is not understood is said, with the parts of the body") {
  const Asked asked = new_fitting("flummoxed\n\n");
  CHECK(asked.says("Not understood: \"flummoxed\"."));
  CHECK(asked.says("Parts of the body: neck, shoulder, armhole"));
}

TEST_CASE("What is not understood is no part of what was seen") {
  const Asked asked = new_fitting("armhole digs in\nflummoxed\na 1,5 furlong\na 1\n\n\n\n");
  CHECK(asked.says("Not understood: \"flummoxed\"."));
  CHECK(asked.wrote(R"("seen": "armhole digs in")"));
  CHECK_FALSE(asked.wrote("flummoxed"));
  CHECK_FALSE(asked.wrote("furlong"));
  CHECK(
      asked.says("\"furlong\" is not understood: behind the amount may be its unit, cm, mm or in"));
}

TEST_CASE("A fraction is asked about wherever an amount is typed; nothing is no amount") {
  const Asked other = new_fitting("armhole digs in\na 1\n\n\n3/8\nin\n\n\n");
  CHECK(other.says("3/8 of what: cm or in?"));
  CHECK(other.wrote(R"("by": "3/8 in")"));
  // Not answered, the amount is what it was.
  CHECK(new_fitting("armhole digs in\na 1\n\n\n3/8\nback\n\n\n").wrote(R"("by": 1)"));
  const Asked at_once = new_fitting("armhole digs in\na 3/8\ncm\n\n\n\n\n");
  CHECK(at_once.says("3/8 of what: cm or in?"));
  CHECK(at_once.wrote(R"("by": "3/8 cm")"));
  const Asked nothing = new_fitting("armhole digs in\na 0\n0\n1\n\n\n0\n\n\n");
  CHECK(nothing.says("0 changes nothing: more than 0, usual 0.6 cm"));
  CHECK(nothing.wrote(R"("by": 1)"));
}

TEST_CASE("A correction that is called by its name, with an amount, is that correction") {
  const Asked asked = new_fitting("shoulder shorter 0.6\n\n\n\n\n");
  CHECK(asked.wrote(R"("shorten": "shoulder", "by": 0.6)"));
}

TEST_CASE("The end of the input in the middle keeps what was added and nothing half answered") {
  const std::string one = "armhole digs in\na 1\n\n\n\n";
  const std::string more = "waist loose\na\n1\nper half\n";
  for (std::size_t end = 0; end <= more.size(); ++end) {
    const Asked asked = new_fitting(one + more.substr(0, end));
    INFO(end);
    CHECK(asked.wrote("underarm"));
    CHECK_FALSE(asked.wrote("waist\","));
  }
}

TEST_CASE(
    "After a newer tape session date and toile are asked for, and the newest toile is not taken") {
  MemoryFiles files = files_here();
  FitJob job;
  job.client = "verity.json";
  const std::string said = fitted(job, "k\nk\nfront neck chokes\na 0.4\n2026-07-20\n\n\n\n", files);
  CHECK(count_of(said, "These go to toile") == 0);
  CHECK(count_of(said, "Date of the fitting") == 1);
  CHECK(count_of(said, "Which toile? (Enter: 2)") == 1);
  CHECK(count_of(files.files["verity.json"], R"("date": "2026-07-20", "toile": 2)") == 1);
}

TEST_CASE("The toile of a fitting that the file has is not asked for") {
  MemoryFiles files = files_here();
  FitJob job;
  job.client = "verity.json";
  const std::string said = fitted(job, "k\nk\nfront neck chokes\na 0.4\n2026-01-20\n\n\n", files);
  CHECK(count_of(said, "Which toile?") == 0);
  CHECK(count_of(said, "toile 1 of 2026-01-20") > 0);
}

TEST_CASE("A toile of --toile that is new is asked for its date, and keeps its number") {
  MemoryFiles files = files_here();
  FitJob job;
  job.client = "verity.json";
  job.toile = 4;
  fitted(job, "k\nk\nfront neck chokes\na 0.4\n2026-08-01\n\n\n", files);
  CHECK(count_of(files.files["verity.json"], R"("date": "2026-08-01", "toile": 4)") == 1);
}

TEST_CASE("An older toile of --toile is asked for its date, whatever fitting is the newest") {
  MemoryFiles files = files_here();
  files.files["verity.json"] =
      replaced(kClient, "\"by\": 0.6 } ] }\n",
               "\"by\": 0.6 } ] }, { \"date\": \"2026-02-20\", \"toile\": 2 }\n");
  FitJob job;
  job.client = "verity.json";
  job.toile = 1;
  const std::string said = fitted(job, "k\nk\nfront neck chokes\na 0.4\n2026-01-20\n\n\n", files);
  CHECK(count_of(said, "Added: lower front neck 0.4 cm, toile 1 of 2026-01-20.") == 1);
}

TEST_CASE("A note to which no correction was added is kept with its fitting, or said to be lost") {
  MemoryFiles files = files_here();
  FitJob job;
  job.client = "verity.json";
  job.note = "sits well";
  CHECK(count_of(fitted(job, "k\nk\n\n", files), "The note is not kept") == 1);
  CHECK(job.note.empty());
  job.note = "sits well";
  job.date = "2026-01-20";
  CHECK(count_of(fitted(job, "\n", files), "The note is not kept") == 0);
  CHECK(run_fit(job, files).exit_code == 0);
  CHECK(count_of(files.files["verity.json"], "\"note\": \"sits well\"") == 1);
  // A correction brings it along.
  job.note = "chokes";
  job.date = "2026-08-01";
  job.toile = 2;
  fitted(job, "front neck chokes\na 0.4\n\n\n", files);
  CHECK(job.note.empty());
  CHECK(job.date.empty());
  CHECK(count_of(files.files["verity.json"], "\"note\": \"chokes\"") == 1);
}

TEST_CASE("A description that the file cannot keep is asked for again when it is typed") {
  for (const std::string& seen :
       each({std::string("waist \x1b[A loose"), "waist loose" + std::string(600, '!')})) {
    const Asked asked = new_fitting(seen + "\nwaist loose\na 1 per half\n\n\n\n\n");
    CHECK(asked.says("; say it again"));
    CHECK(count_of(asked.said, "By how much") == 0);
    CHECK(asked.wrote(R"("seen": "waist loose")"));
  }
}

TEST_CASE("Descriptions that are too long together are not put together") {
  const std::string almost = "waist loose" + std::string(480, '!');
  const Asked asked = new_fitting(almost + "\nat the front of the body\na 1 per half\n\n\n\n\n");
  CHECK(asked.says("over 500"));
  CHECK(asked.wrote("\"seen\": \"" + almost + "\""));
}

TEST_CASE("Letters and words of the prompt may be capitals") {
  const Asked asked = new_fitting(
      "one breast fuller\nBACK\nRight one breast fuller\nA 0.6\n2026-07-20\n1\nYES\n\n");
  INFO(asked.said);
  CHECK(asked.says("Added: fuller one breast 0.6 cm, right, toile 1 of 2026-07-20."));
  const Asked all = new_fitting("ALL\n\n");
  CHECK(all.says("neck\n  lower front neck\n"));
  const Asked way = new_fitting("waist loose\nA\n3/8\nIN\nPer Half\n2026-07-20\n1\nY\n\n");
  CHECK(way.wrote(R"("by": "3/8 in", "as": "per_half")"));
}

TEST_CASE("Back goes one question back, up to the corrections") {
  const Asked asked = new_fitting(
      "one breast fuller\na\nback\nb\nback\na\n0.5\nback\n0.6\nl\nback\nr\n2026-07-20\nback\n"
      "2026-07-21\n3\nback\n2\n\n\n");
  INFO(asked.said);
  CHECK(count_of(asked.said, "Which? Its letter") == 3);
  CHECK(asked.says("fuller one breast 0.6 cm, right, toile 3 of 2026-07-21"));
  CHECK(asked.says("Added: fuller one breast 0.6 cm, right, toile 2 of 2026-07-21."));
}

TEST_CASE("A date is judged when it is typed, and none is before the first tape session") {
  const Asked asked =
      new_fitting("waist loose\na 1 per half\n20 July\n2026-07-01\n2026-07-20\n\n\n\n");
  CHECK(count_of(asked.said, "Date of the fitting") == 3);
  CHECK(count_of(asked.said, "Which toile?") == 1);
  CHECK(
      asked.says("a fitting of 2026-07-01 would be before the first tape session, of 2026-07-12"));
  CHECK(asked.wrote("2026-07-20"));
}

TEST_CASE("An amount is asked for in words, and the page that was drawn is named") {
  MemoryFiles files;
  files.files["pip.json"] = replaced(replaced(kNewClient, R"("unit": "cm")", R"("unit": "in")"),
                                     R"("bust_girth": 94.0, "waist_girth": 74.0)",
                                     R"("bust_girth": 37, "waist_girth": 29)");
  FitJob job;
  job.client = "pip.json";
  const std::string said = fitted(job, "fuller one breast\n1/2\nl\n2026-07-20\n1\n\n\n", files);
  CHECK(count_of(said, "By how much, in inches? Usual 1/4 in on each half") == 1);
  CHECK(count_of(said, "Added: fuller one breast 1/2 in, left, toile 1 of 2026-07-20.") == 1);
  CHECK(count_of(said, "The page of it: pip-fit.svg") == 1);
  CHECK(files.files.contains("pip-fit.svg"));
}

TEST_CASE("Ctrl-C at the sums keeps the answers before it and asks nothing more") {
  MemoryFiles files = files_here();
  FitJob job;
  job.client = "verity.json";
  const std::string said = fitted(job, "s\n", files);
  CHECK(count_of(said, "Settle it so (s)") == 2);
  CHECK(count_of(said, "What do you see?") == 0);
  CHECK(count_of(files.files["verity.json"], "\"new_tape\": { \"settled\": 0 }") == 1);
}

TEST_CASE("What no answer would mend is refused before anything is asked") {
  const auto refused = [](const FitJob& job, MemoryFiles& files) {
    std::istringstream in("waist loose\n");
    std::ostringstream out;
    FitJob asked = job;
    try {
      ask_for_corrections(asked, "2026-08-01", files, {in, out});
    } catch (const Error& error) {
      CHECK(out.str().empty());
      return to_text(error.problem());
    }
    return std::string();
  };
  MemoryFiles files = files_here();
  FitJob job;
  job.client = "verity.json";
  job.note = std::string(501, 'n');
  CHECK_THAT(refused(job, files), Catch::Contains("note to be added"));
  job.note.clear();
  job.date = "2025-12-24";
  CHECK_THAT(refused(job, files), Catch::Contains("before the first tape session, of 2026-01-10"));
  job.date.clear();
  job.seen = {"loose"};
  CHECK_THAT(refused(job, files), Catch::Contains("--seen"));
  job.seen.clear();
  files.held->insert("");
  files.held->insert(".");
  CHECK_THAT(refused(job, files), Catch::Contains("another run is at work there"));
}

TEST_CASE("The prompt asks in the unit of the run, and a number alone is of that unit") {
  const std::string answers = "1\nper half\n\n\nyes\n";
  const Asked inches = new_fitting(answers, "take in waist", Unit::Inch);
  INFO(inches.said << inches.file);
  CHECK(inches.says("By how much, in inches? Usual "));
  CHECK(inches.says("take in waist 1 in per half"));
  CHECK(inches.wrote("\"by\": \"1 in\""));
  CHECK_FALSE(inches.says(" cm"));
  const Asked own = new_fitting(answers, "take in waist");
  INFO(own.said << own.file);
  CHECK(own.says("By how much, in cm? Usual "));
  CHECK(own.wrote("\"by\": 1,"));
  // What names its unit is kept as it was typed.
  const Asked named = new_fitting("1.5 cm per half\n\n\nyes\n", "take in waist", Unit::Inch);
  INFO(named.said << named.file);
  CHECK(named.wrote("\"by\": 1.5,"));
}
