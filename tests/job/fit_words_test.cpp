// Corrections in words: found, paired with their options, tried before they are written, told toile
// by toile.
#include "blockwright/job/fit_words.hpp"

#include "block_pass.hpp"
#include "blockwright/measure/correction_table.hpp"
#include "support/each.hpp"
#include "support/memory_files.hpp"
#include "support/run_tool.hpp"

#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>

#include <map>

namespace fit_words_test {

using namespace blockwright;

namespace {

using Json = nlohmann::json;

std::string client_text(const char* unit, const char* bust, const char* waist) {
  return std::string(R"({"format": "blockwright-client-1", "name": "Verity Lark", "unit": ")") +
         unit + R"(", "sessions": [{"date": "2026-01-10", "tape": {"bust_girth": )" + bust +
         R"(, "waist_girth": )" + waist + "}}]}\n";
}

MemoryFiles files_in(Unit unit) {
  MemoryFiles files;
  files.files["verity.json"] =
      unit == Unit::Cm ? client_text("cm", "94.0", "74.0") : client_text("in", "37", "29");
  return files;
}

FitJob adding(std::vector<std::string> add) {
  FitJob job;
  job.client = "verity.json";
  job.add = std::move(add);
  job.date = "2026-01-20";
  job.toile = 1;
  return job;
}

std::string written(const FitJob& job, Unit unit = Unit::Cm) {
  MemoryFiles files = files_in(unit);
  const JobResult result = run_fit(job, files);
  for (const Problem& problem : result.problems) UNSCOPED_INFO(to_text(problem));
  CHECK(result.exit_code == 0);
  return files.files["verity.json"];
}

std::string refused(const FitJob& job, Unit unit = Unit::Cm) {
  MemoryFiles files = files_in(unit);
  const JobResult result = run_fit(job, files);
  CHECK(result.exit_code != 0);
  CHECK(files.files.size() == 1);
  return result.problems.empty() ? "" : to_text(result.problems.front());
}

bool has(const std::string& text, const std::string& part) {
  return text.find(part) != std::string::npos;
}

/// As the command line gives them.
FitJob typed(FitJob job, std::vector<std::string> names) {
  job.typed = std::move(names);
  return job;
}

}  // namespace

TEST_CASE("An amount is kept as it was given, in its own unit") {
  CHECK(has(written(adding({"lower front_neck 1 cm"})), R"("by": 1 })"));
  CHECK(has(written(adding({"lower front_neck 1,5"})), R"("by": 1.5 })"));
  CHECK(has(written(adding({"lower front_neck 8 mm"})), R"("by": "8 mm" })"));
  CHECK(has(written(adding({"lower front_neck 3/8 in"})), R"("by": "3/8 in" })"));
  CHECK(has(written(adding({"lower front_neck 1 cm"}), Unit::Inch), R"("by": "1 cm" })"));
  CHECK(has(written(adding({"lower front_neck 3/8"}), Unit::Inch), R"("by": "3/8" })"));
  CHECK(has(written(adding({"take in waist 1.0 per half"})), R"("by": 1.0, "as": "per_half" })"));
  CHECK(has(written(adding({"lower one shoulder 0.8 right"})), R"("side": "right")"));
}

TEST_CASE("An amount is told as it was given, in the report too") {
  MemoryFiles files = files_in(Unit::Cm);
  const JobResult result = run_fit(adding({"lower front_neck 3/8 in"}), files);
  CHECK(has(result.output, "lower front neck 3/8 in (2026-01-20, toile 1)"));
  CHECK_FALSE(has(result.output, "0.95"));
}

TEST_CASE("A refused amount says what would be accepted") {
  CHECK(has(refused(adding({"lower front_neck 5/8"})), "'5/8': of an inch or of a cm?"));
  CHECK(has(refused(adding({"lower front_neck 5/8"})), "write \"5/8 in\" or \"5/8 cm\""));
  CHECK(has(refused(adding({"lower front_neck 1o"})), "'1o' is not an amount"));
  CHECK(has(refused(adding({"lower front_neck 1 roughly"})), "'roughly' of"));
  CHECK(
      has(refused(adding({"take_in waist 1"})), "\"take in waist 1 per half\": cloth on one half"));
  CHECK(has(refused(adding({"lower front_neck -1"})), "raise"));
}

TEST_CASE("What is refused of --add is said in the words that are typed") {
  const auto said = [](const char* words, Unit unit = Unit::Cm) {
    const std::string text = refused(adding({words}), unit);
    INFO(text);
    CHECK_FALSE(has(text, "\": \""));  // a key of the file
    CHECK(text.find("--add: '") != std::string::npos);
    return text;
  };
  CHECK(has(said("lower underarm -1"), "write \"lower underarm 1\", or \"raise underarm 1\""));
  CHECK(has(said("take_in upper_chest -1 length"), "write \"take in upper chest 1\""));
  CHECK(has(said("lower underarm 0"), "its amount is 0"));
  CHECK(has(said("lower underarm 90"), "is 90 cm; this block takes up to \"lower underarm "));
  CHECK(has(said("let_out waist 11 cm whole_girth"), "is 11 cm; a correction is at most 10 cm"));
  // 3 15/16 in are 10.001 cm.
  const std::string inches = said("let_out side 11 whole_girth", Unit::Inch);
  INFO(inches);
  CHECK(has(inches, "a correction is at most 3 7/8 in"));
  CHECK(has(said("lower one_shoulder 1"), "write left or right behind the amount"));
  CHECK(has(said("take_in waist 2 whole_girth left"), "for the left alone"));
}

TEST_CASE("How an amount was counted is kept as the row counts, or refused with lines to type") {
  CHECK(has(written(adding({"take_in waist 2 cm each side"})), R"("by": 2, "as": "per_half" })"));
  CHECK(has(written(adding({"take_in waist 2 cm altogether"})), R"("as": "whole_girth" })"));
  CHECK(has(written(adding({"take_in waist 2 cm all round"})), R"("as": "whole_girth" })"));
  CHECK(has(written(adding({"lower underarm 1 cm each side"})), R"("underarm", "by": 1)"));

  const std::string round = refused(adding({"widen neck 0.3 cm all round"}));
  INFO(round);
  CHECK(has(round, "widen neck is not measured round the whole body"));
  CHECK(has(round, "write \"widen neck 0.3 cm\": how far it is to move on the body"));
  written(adding({"widen neck 0.3 cm"}));

  const std::string edge = refused(adding({"take_in front_armhole_edge 0.6 altogether"}));
  INFO(edge);
  CHECK(has(edge, "write \"take in front armhole edge 0.6 tuck depth\": depth of the pinned tuck"));
  CHECK(has(edge, "or \"take in front armhole edge 0.6 per half\": cloth on one half"));
  written(adding({"take in front armhole edge 0.6 tuck depth"}));
  written(adding({"take in front armhole edge 0.6 per half"}));
}

TEST_CASE("A refusal of the block names the amount as it was given, not as it is counted") {
  const std::string said = refused(adding({"shorten shoulder 3 1/2 in"}));
  INFO(said);
  CHECK(has(said, "3 1/2 in: "));
  CHECK_FALSE(has(said, "8.9"));
  const std::string seam = refused(adding({"take_in side 9,5 cm per_seam"}));
  INFO(seam);
  CHECK(has(seam, "9.5 cm: "));
  CHECK_FALSE(has(seam, "19"));
}

TEST_CASE("Words that are no correction are answered with those that they may mean") {
  const std::string said = refused(adding({"lower neck 1"}));
  INFO(said);
  CHECK(has(said, "perhaps you mean \"lower front_neck 1\""));
}

TEST_CASE("Each --as, --seen and --side is of the --add before it") {
  FitJob job = adding({"take_in waist 1", "lower front_neck 0.6", "let_out side 1"});
  job.as = {AmountAs::PerHalf, AmountAs::PerSeam};
  job.seen = {"loose", "chokes"};
  const std::string text =
      written(typed(job, {"--add", "--as", "--seen", "--add", "--seen", "--add", "--as"}));
  CHECK(has(text, R"("waist", "by": 1, "as": "per_half", "seen": "loose")"));
  CHECK(has(text, R"("front_neck", "by": 0.6, "seen": "chokes")"));
  CHECK(has(text, R"("side", "by": 1, "as": "per_seam")"));
}

TEST_CASE("With one --add the order does not matter; before several it is refused, not guessed") {
  FitJob one = adding({"take_in waist 1"});
  one.as = {AmountAs::PerHalf};
  CHECK(has(written(typed(one, {"--as", "--add"})), R"("as": "per_half")"));
  CHECK(has(written(typed(one, {"--add", "--as"})), R"("as": "per_half")"));
  FitJob two = adding({"take_in waist 1", "let_out side 1"});
  two.as = {AmountAs::PerHalf};
  const std::string said = refused(typed(two, {"--as", "--add", "--add"}));
  CHECK(has(said, "before the first of them"));
  CHECK(has(said, "behind the --add that it is for"));
  // Behind the last it is of the last alone, and the first lacks its own.
  CHECK(has(refused(typed(two, {"--add", "--add", "--as"})),
            "does not say how the amount was counted"));
  one.as = {AmountAs::PerHalf, AmountAs::WholeGirth};
  CHECK(has(refused(typed(one, {"--add", "--as", "--as"})), "more than one"));
  one = adding({"take_in waist 1 per_half"});
  one.as = {AmountAs::WholeGirth};
  CHECK(has(refused(typed(one, {"--add", "--as"})), "say different things"));
}

TEST_CASE("In a job file there is one for each") {
  FitJob job = adding({"take_in waist 1", "lower front_neck 0.6"});
  job.as = {AmountAs::PerHalf, std::nullopt};
  job.seen = {"", "chokes"};
  const std::string text = written(job);
  CHECK(has(text, R"("waist", "by": 1, "as": "per_half" })"));
  CHECK(has(text, R"("front_neck", "by": 0.6, "seen": "chokes")"));
  job.as = {AmountAs::PerHalf};
  CHECK(has(refused(job), "1 of them for 2 corrections"));
}

TEST_CASE("fit --ask prints at most five answers, with cure and usual amount in her unit") {
  MemoryFiles files = files_in(Unit::Inch);
  FitJob job;
  job.client = "verity.json";
  job.ask = "armhole digs in";
  const JobResult result = run_fit(job, files);
  CHECK(result.exit_code == 0);
  CHECK(has(result.output, "lower underarm"));
  CHECK(has(result.output, "The underarm comes down the side seam, front and back."));
  CHECK(has(result.output, "usual 1/4 in (1/8 to 13/16)"));
  CHECK(has(result.output, "--add \"lower underarm AMOUNT\""));
  CHECK(files.files.size() == 1);
  job.report = ReportKind::Json;
  const Json json = Json::parse(run_fit(job, files).output);
  CHECK(json["answers"].size() <= 5);
  CHECK(json["answers"][0]["words"] == "lower underarm");
  job.report = ReportKind::Text;
  job.ask = "flummoxed";
  CHECK(has(run_fit(job, files).output, "Not understood: \"flummoxed\".\nSay where it is"));
}

std::string asked(const std::string& seen, ReportKind report = ReportKind::Text) {
  MemoryFiles files = files_in(Unit::Cm);
  FitJob job;
  job.client = "verity.json";
  job.ask = seen;
  job.report = report;
  return run_fit(job, files).output;
}

TEST_CASE("fit --ask says in one sentence that nothing is wrong, or that it is no bodice") {
  CHECK(asked("waist isn't loose") ==
        "\"waist isn't loose\"\nFrom what you say nothing is wrong there, so there is nothing to "
        "correct.\n");
  CHECK(asked("sleeve is too tight") ==
        "\"sleeve is too tight\"\nThe bodice has no sleeve: say what you see at its armhole or "
        "shoulder.\n");
  CHECK(asked("wrinkles under my bum") ==
        "\"wrinkles under my bum\"\nThe bodice ends at the waist: say what you see there or above "
        "it.\n");
  const std::string both = asked("sleeve is too tight and the neck gapes");
  CHECK(has(both, "narrow neck"));
  CHECK(has(both, "\nThe bodice has no sleeve.\n"));
  const std::string rest = asked("waist isn't loose but the neck gapes");
  CHECK(has(rest, "narrow neck"));
  CHECK_FALSE(has(rest, "nothing is wrong"));
}

TEST_CASE("fit --ask says the side that she named in what is to be typed") {
  CHECK(has(asked("left armhole gapes"),
            "--add \"take_in front_armhole_edge AMOUNT\" --side left\n"));
  CHECK(has(asked("right breast bigger than left"), "AMOUNT\" --side right\n"));
  CHECK(has(asked("one shoulder is lower"), "AMOUNT\" --side left, or --side right\n"));
  CHECK(has(asked("armhole gapes"), "AMOUNT\"\n"));
}

TEST_CASE("fit --ask gives a side to the correction that it was said of, and to no other") {
  const std::string both = asked("the neck gapes, left shoulder lower");
  INFO(both);
  CHECK(has(both, "--add \"narrow neck AMOUNT\"\n"));
  CHECK(has(both, "(0.5 to 2); --side left\n"));
  CHECK_FALSE(has(asked("left armhole gapes"), "); --side"));  // said once, in the line to type
  const Json json = Json::parse(asked("the neck gapes, left shoulder lower", ReportKind::Json));
  CHECK(json["answers"][0]["words"] == "narrow neck");
  CHECK_FALSE(json["answers"][0].contains("side"));
  CHECK(json["answers"][1]["words"] == "lower one_shoulder");
  CHECK(json["answers"][1]["side"] == "left");
}

TEST_CASE("The JSON of fit --ask has the side and what names no fault, where there is any") {
  const Json left = Json::parse(asked("left armhole gapes", ReportKind::Json));
  CHECK(left["side"] == "left");
  CHECK_FALSE(left.contains("set_aside"));
  const Json fine = Json::parse(asked("the neck is fine", ReportKind::Json));
  CHECK(fine["set_aside"] == "no_fault");
  CHECK(fine["answers"].empty());
  CHECK_FALSE(fine.contains("side"));
  CHECK(Json::parse(asked("sleeve too tight", ReportKind::Json))["set_aside"] == "sleeve");
  CHECK(Json::parse(asked("hips too wide", ReportKind::Json))["set_aside"] == "below_waist");
}

TEST_CASE("What a correction would do is told before a letter is written") {
  MemoryFiles files = files_in(Unit::Cm);
  const std::string before = files.files["verity.json"];
  const FitPreview preview = preview_fit(adding({"take_in waist 1 per_half"}), files);
  CHECK(files.files["verity.json"] == before);
  CHECK(files.files.size() == 1);
  CHECK(preview.at_fault.empty());
  // The row's law: 1 cm on the half takes 2 cm off the whole waist.
  CHECK(has(preview.does, "(-2.0)"));
  // The underarm comes down the side, which keeps both girths.
  const std::string underarm = preview_fit(adding({"lower underarm 1"}), files).does;
  CHECK(has(underarm, "cm, stays; waist "));
  CHECK(has(underarm, "cm, stays; front side "));
  CHECK(has(underarm, "(-1.0)"));
  // A second of the same row is told by itself, not with the first.
  run_fit(adding({"take_in waist 1 per_half"}), files);
  CHECK(has(preview_fit(adding({"take_in waist 0.5 per_half"}), files).does, "(-1.0)"));
}

TEST_CASE("A refused preview says what has to be asked for again") {
  MemoryFiles files = files_in(Unit::Cm);
  const auto fault = [&](FitJob job) {
    const FitPreview preview = preview_fit(job, files);
    CHECK(preview.does.empty());
    CHECK_FALSE(preview.problems.empty());
    return preview.at_fault;
  };
  CHECK(fault(adding({"lower front_neck 99"})) == "amount");
  CHECK(fault(adding({"shorten shoulder 9.9"})) == "amount");
  CHECK(fault(adding({"take_in waist 1 per_seam"})) == "as");
  CHECK(fault(adding({"lower one_shoulder 1"})) == "side");
  FitJob job = adding({"lower front_neck 1"});
  job.date = "21.3.2026";
  CHECK(fault(job) == "date");
}

TEST_CASE("fit --list tells the fittings toile by toile") {
  MemoryFiles files = files_in(Unit::Cm);
  FitJob first = adding({"lower front_neck 1,0", "take_in waist 1 per_half"});
  first.seen = {"chokes her", ""};
  REQUIRE(run_fit(first, files).exit_code == 0);
  FitJob second = adding({"shorten shoulder 5 mm"});
  second.date = "2026-01-27";
  second.toile = 2;
  REQUIRE(run_fit(second, files).exit_code == 0);
  FitJob undo;
  undo.client = "verity.json";
  undo.undo = {2};
  REQUIRE(run_fit(undo, files).exit_code == 0);
  FitJob list;
  list.client = "verity.json";
  list.list = true;
  const std::string story = run_fit(list, files).output;
  INFO(story);
  CHECK(has(story,
            "Toile 1, 2026-01-20\n   1. seen: chokes her\n      done: lower front neck 1.0 cm\n"));
  CHECK(has(story, "take in waist 1 cm (per half); withdrawn, not applied"));
  CHECK(has(story, "Look at these first on toile 2:\n    front neck edge taken in: a loose fold"));
  CHECK(has(story, "Toile 2, 2026-01-27\n   3. done: shorten shoulder 5 mm\n"));
  CHECK(has(story, "Never taped\n"));
  CHECK(has(story, "shoulder length: "));
  CHECK_FALSE(has(story, "waist girth: "));  // what doubted it is withdrawn
}

TEST_CASE("At most five lines say what to look at first", "[kMostLookedAt]") {
  MemoryFiles files = files_in(Unit::Cm);
  // widen neck alone asks to look at four rows, shorten shoulder at four more.
  REQUIRE(run_fit(adding({"widen neck 0.3", "shorten shoulder 0.6"}), files).exit_code == 0);
  FitJob list;
  list.client = "verity.json";
  list.list = true;
  const std::string story = run_fit(list, files).output;
  const std::size_t at = story.find("Look at these first");
  REQUIRE(at != std::string::npos);
  std::size_t lines = 0;
  for (std::size_t i = story.find("\n    ", at); i != std::string::npos;
       i = story.find("\n    ", i + 1))
    ++lines;
  CHECK(lines == 5);
}

TEST_CASE("The map page of a toile says what to look at first; that of a card does not") {
  MemoryFiles files = files_in(Unit::Cm);
  REQUIRE(run_fit(adding({"lower front_neck 1.0"}), files).exit_code == 0);
  FitJob second = adding({"shorten shoulder 0.5"});
  second.toile = 2;
  REQUIRE(run_fit(second, files).exit_code == 0);
  Job job;
  job.client = "verity.json";
  const BlockRun run = fitted_block(block_source(job, files));
  // Because of the newest fitting: its row makes these four void.
  const auto looked_at = notes_of(report_of(run, CutStyle::Toile)).look_first;
  REQUIRE(looked_at.size() == 4);
  CHECK(looked_at.front() ==
        "front armhole edge taken in: the front armhole gapes, a fold to the bust");
  CHECK(notes_of(report_of(run, CutStyle::Card)).look_first.empty());
}

TEST_CASE("Nothing is offered at darts that her block has not got, and that is said") {
  MemoryFiles files;
  files.files["verity.json"] = blockwright_tests::read_bytes(
      BLOCKWRIGHT_SOURCE_DIR "/examples/wardrobe/nadezhda-vetrova.json");
  FitJob job;
  job.client = "verity.json";
  job.ask = "waist loose";
  const std::string asked = run_fit(job, files).output;
  INFO(asked);
  CHECK(has(asked, "  take_in waist "));
  CHECK(has(asked, "  take_in side_at_waist "));
  CHECK_FALSE(has(asked, "take_in waist_darts"));
  CHECK_FALSE(has(asked, "take_in front_waist_dart"));
  CHECK(has(asked,
            "Left out, for her block has none: waist darts, front waist dart, back waist dart."));
  // Of a block that has them all nothing is left out; typed, they are refused with the reason.
  MemoryFiles others = files_in(Unit::Cm);
  CHECK(has(run_fit(job, others).output, "take_in waist_darts"));
  CHECK_FALSE(has(run_fit(job, others).output, "Left out"));
  CHECK(places_lacking(job, others).empty());
}

TEST_CASE("Every part of the body has its corrections, and its name finds them") {
  for (const auto part : part_names()) {
    INFO(part);
    CHECK_FALSE(answers_at(part, Unit::Cm).empty());
  }
  CHECK(answers_at("wardrobe", Unit::Cm).empty());
}

}  // namespace fit_words_test
