// Corrections of a toile: added to the client file, applied, shown; with files in memory.
#include "blockwright/job/job.hpp"
#include "blockwright/measure/correction_table.hpp"
#include "support/each.hpp"
#include "support/memory_files.hpp"
#include "support/run_tool.hpp"

#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>

#include <algorithm>
#include <map>

namespace fit_test {

using namespace blockwright;

namespace {

using Json = nlohmann::json;

// A full set of a person who does not exist; odd spaces on purpose.
const char* const kClient = R"({
  "format": "blockwright-client-1",
  "name": "Verity Lark",  "unit": "cm",
  "sessions": [
    { "date": "2026-01-10", "tape": {
      "bust_girth": 94.0, "upper_chest_girth": 88.0, "underbust_girth": 79.0, "waist_girth": 74.00,
      "neck_base_girth": 37.0, "armscye_girth": 40.0, "shoulder_length": 12.4,
      "front_shoulder_slant": 42.5, "back_shoulder_slant": 42.0, "back_waist_length": 40.0,
      "front_waist_length": 34.5, "side_neck_to_bust_point": 26.5, "side_neck_to_waist": 42.5,
      "bust_point_width": 18.6, "across_back": 34.0, "across_front": 32.0, "side_length": 20.0,
      "scye_depth": 19.0 } }
  ]
})";

FitJob fit_job() {
  FitJob job;
  job.client = "verity.json";
  job.report = ReportKind::Json;
  return job;
}

FitJob adding(const std::string& words, std::optional<AmountAs> as = std::nullopt) {
  FitJob job = fit_job();
  job.add = {words};
  if (as) job.as = {as};
  job.date = "2026-01-20";
  job.toile = 1;
  return job;
}

MemoryFiles files_here() {
  return MemoryFiles(std::map<std::string, std::string>{{"verity.json", kClient}});
}

Json done(const FitJob& job, MemoryFiles& files) {
  const JobResult result = run_fit(job, files);
  for (const Problem& problem : result.problems) UNSCOPED_INFO(to_text(problem));
  REQUIRE(result.exit_code == 0);
  return Json::parse(result.output);
}

std::string refused(const FitJob& job) {
  MemoryFiles files = files_here();
  const JobResult result = run_fit(job, files);
  CHECK(result.exit_code != 0);
  CHECK(files.files.size() == 1);
  CHECK(files.files["verity.json"] == kClient);
  return result.problems.empty() ? "" : to_text(result.problems.front());
}

double change(const Json& correction, const std::string& length) {
  for (const Json& moved : correction["moved"]) {
    if (moved["name"] == length) {
      return moved["after_mm"].get<double>() - moved["before_mm"].get<double>();
    }
  }
  return 0.0;
}

}  // namespace

TEST_CASE("A correction in words goes into the file, and its effect is told") {
  MemoryFiles files = files_here();
  const Json report = done(adding("lower front neck 1.0"), files);
  REQUIRE(report["corrections"].size() == 1);
  const Json& correction = report["corrections"][0];
  CHECK(correction["number"] == 1);
  CHECK(correction["row"] == 1);
  CHECK(correction["stage"] == 2);
  CHECK(change(correction, "front.centre_front") == Approx(-10.0).margin(0.01));
  CHECK(files.files["verity.json"].find("\"lower\": \"front_neck\", \"by\": 1.0") !=
        std::string::npos);
  CHECK(files.files["verity.json.bak"] == kClient);
}

TEST_CASE("What was typed stays as it was typed") {
  MemoryFiles files = files_here();
  done(adding("take in waist 2", AmountAs::WholeGirth), files);
  const std::string& text = files.files["verity.json"];
  CHECK(text.find("\"name\": \"Verity Lark\",  \"unit\"") != std::string::npos);
  CHECK(text.find("\"waist_girth\": 74.00") != std::string::npos);
}

TEST_CASE("Withdrawn corrections stay in the file and are not applied") {
  MemoryFiles files = files_here();
  done(adding("lower front_neck 1.0"), files);
  const std::string with_one = files.files["verity.json"];
  done(adding("lower underarm 0.6"), files);
  FitJob undo = fit_job();
  undo.undo = {1};
  const Json report = done(undo, files);
  REQUIRE(report["corrections"].size() == 1);
  CHECK(report["corrections"][0]["number"] == 2);
  CHECK(files.files["verity.json"].find("front_neck") != std::string::npos);
  FitJob redo = fit_job();
  redo.redo = {1};
  CHECK(done(redo, files)["corrections"].size() == 2);
}

TEST_CASE("Corrections are shown in the fitter's order, not in that of the file") {
  MemoryFiles files = files_here();
  FitJob job = adding("lower underarm 0.6");
  job.add = {"lower underarm 0.6", "lower front_neck 0.6", "shorten below_bust 1.0 length"};
  const Json report = done(job, files);
  std::vector<int> numbers, stages;
  for (const Json& correction : report["corrections"]) {
    numbers.push_back(correction["number"]);
    stages.push_back(correction["stage"]);
  }
  CHECK(numbers == std::vector<int>{3, 2, 1});
  CHECK(std::is_sorted(stages.begin(), stages.end()));
}

TEST_CASE("A correction says which measurement it doubts and what value would have done") {
  MemoryFiles files = files_here();
  const Json report = done(adding("shorten shoulder 0.6"), files);
  const Json& doubts = report["corrections"][0]["doubts"];
  CHECK(doubts["name"] == "shoulder_length");
  CHECK(doubts["value"] == 124.0);
  // Drafted with a shoulder of 11.8 cm the seam is as short as the correction made it.
  CHECK(doubts["would_do"].get<double>() == Approx(118.0).margin(0.2));
}

TEST_CASE("The girth that would have done makes the armhole as long as the correction made it") {
  // With little taped the armhole is free to follow its girth.
  const auto corrected = [](const std::string& girth) {
    MemoryFiles files = files_here();
    files.files["verity.json"] = R"({"format": "blockwright-client-1", "name": "Verity Lark",
      "unit": "cm", "sessions": [{"date": "2026-01-10", "tape":
      {"bust_girth": 94.0, "armscye_girth": )" +
                                 girth + "}}]}";
    return done(adding("widen armhole 0.4"), files)["corrections"][0];
  };
  const auto armhole = [](const Json& correction, const char* when) {
    for (const Json& moved : correction["moved"]) {
      if (moved["name"] == "armhole") return moved[when].get<double>();
    }
    FAIL("the armhole did not move");
    return 0.0;
  };
  const Json first = corrected("40.0");
  REQUIRE(first["doubts"]["name"] == "armscye_girth");
  const Json again = corrected(std::to_string(first["doubts"]["would_do"].get<double>() / 10.0));
  CHECK(armhole(first, "after_mm") > armhole(first, "before_mm") + 10.0);
  // The girth is told as a tape has it, to a millimetre.
  CHECK(armhole(again, "before_mm") == Approx(armhole(first, "after_mm")).margin(1.5));
}

TEST_CASE("A correction so large that no tape would do in its place is applied all the same") {
  MemoryFiles files = files_here();
  // 18.6 cm and twice 4.5 cm more: farther apart than any that are drafted.
  const Json report = done(adding("widen bust_points 4.5 per_half"), files);
  CHECK(report["corrections"][0]["doubts"]["would_do"] == 276.0);
}

TEST_CASE("A pattern that the corrections make smaller than she is is warned of") {
  const auto said_of = [](const std::string& words) {
    MemoryFiles files = files_here();
    std::string said;
    for (const Problem& problem : run_fit(adding(words), files).problems) {
      if (problem.code == "fit.below_body") said += to_text(problem) + "\n";
    }
    return said;
  };
  // The waist is drafted with 2.5 cm of ease over 74: 1.0 on each half leaves 74.5, 1.5
  // leaves 73.5.
  CHECK(said_of("take_in centre_back 1.0 per_half").empty());
  const std::string said = said_of("take_in centre_back 1.5 per_half");
  CHECK_THAT(said,
             Catch::Contains("with take in centre back the waist has 73.5 cm, and she has 74 cm"));
  CHECK(std::ranges::count(said, '\n') == 1);
  // 37 round the neck base, and 2.5 for the tape: narrowed by as much.
  CHECK_THAT(said_of("narrow side_neck 1.3"), Catch::Contains("the neckline has"));
}

TEST_CASE("A dart that grew too wide names the corrections, in the words that are typed") {
  MemoryFiles files = files_here();
  std::string said;
  for (const Problem& problem : run_fit(adding("fuller bust 1.5 per_half"), files).problems) {
    if (problem.code == "fit.limit") said += to_text(problem) + "\n";
  }
  CHECK_THAT(said, Catch::Contains("front.shoulder: fuller bust: the dart grew from"));
}

TEST_CASE("fit leaves what the draft gave way in to draft, unless a correction doubts it") {
  MemoryFiles files;
  files.files["verity.json"] =
      blockwright_tests::read_bytes(BLOCKWRIGHT_SOURCE_DIR "/examples/wardrobe/ondine-marsh.json");
  const auto adjusted = [&](const std::string& words) {
    MemoryFiles fresh;
    fresh.files = files.files;
    std::vector<std::string> where;
    FitJob job = adding(words);
    job.date = "2026-11-29";
    job.toile = 9;
    const JobResult result = run_fit(job, fresh);
    CHECK(result.exit_code == 0);
    for (const Problem& problem : result.problems) {
      if (problem.code == "draft.adjusted") where.push_back(problem.where);
    }
    return where;
  };
  Job job;
  job.client = "verity.json";
  job.out = "out";
  job.write = {OutputKind::Svg};
  std::vector<std::string> drafted;
  for (const Problem& problem : run_job(job, files).problems) {
    if (problem.code == "draft.adjusted") drafted.push_back(problem.where);
  }
  REQUIRE(std::ranges::count(drafted, "across_back") == 1);
  CHECK(adjusted("lower front_neck 0.6").empty());
  CHECK(adjusted("widen across_back 0.6 per_half") == std::vector<std::string>{"across_back"});
}

TEST_CASE("A dart that a correction left too narrow to sew is told with its answer") {
  MemoryFiles files = files_here();
  std::string said;
  for (const Problem& problem :
       run_fit(adding("let_out back_shoulder_dart 0.5 per_half"), files).problems) {
    if (problem.code == "dart.narrow") said += to_text(problem) + "\n";
  }
  CHECK_THAT(said,
             Catch::Contains("back.shoulder") && Catch::Contains("ease so much into the seam"));
}

TEST_CASE("draft applies corrections and tells them; --toile draws an older version") {
  MemoryFiles files = files_here();
  done(adding("lower front_neck 1.0"), files);
  Job job;
  job.client = "verity.json";
  job.out = "out";
  job.report = ReportKind::Json;
  job.cut = CutStyle::Card;
  job.write = {OutputKind::Svg};
  const Json report = Json::parse(run_job(job, files).output);
  CHECK(report["corrections"].size() == 1);
  REQUIRE(report["stages"].size() >= 2);
  const Json &drafted = report["stages"][0], &fitted = report["stages"][1];
  CHECK(fitted["name"] == "fitted");
  CHECK(fitted["lengths"]["front.centre_front"].get<double>() ==
        Approx(drafted["lengths"]["front.centre_front"].get<double>() - 10.0).margin(0.01));
  REQUIRE(fitted["moved"].size() == 1);
  CHECK(fitted["moved"][0]["did"] == "lower front neck 1.0 cm");
  CHECK_FALSE(fitted["moved"][0]["lengths"].empty());
  const std::string& card = files.files["out/verity-card.svg"];
  CHECK(card.find("version 2, toile 1 of 2026-01-20") != std::string::npos);
  CHECK(card.find("corrected: lower front neck 1.0 cm") != std::string::npos);
  job.toile = 1;
  CHECK_FALSE(Json::parse(run_job(job, files).output).contains("corrections"));
}

TEST_CASE("A correction that cannot be is refused and the file is not touched") {
  CHECK(refused(adding("lower front_neck")).find("--add") != std::string::npos);
  CHECK(refused(adding("lower moon 1.0")).find("moon") != std::string::npos);
  CHECK(refused(adding("sink front_neck 1.0")).find("sink") != std::string::npos);
  CHECK(refused(adding("lower front_neck 0")).find("[client.") != std::string::npos);
  CHECK(refused(adding("take in waist 2")).find("as") != std::string::npos);
  FitJob no_date = adding("lower front_neck 1.0");
  no_date.date = "";
  CHECK(refused(no_date).find("--date") != std::string::npos);
  FitJob undo = fit_job();
  undo.undo = {7};
  CHECK(refused(undo).find("7") != std::string::npos);
  // Ten centimetres out of the shoulder leave no strap.
  CHECK(refused(adding("shorten shoulder 10")).find("fit.") != std::string::npos);
}

namespace {

// Taped anew half a year after the fitting.
MemoryFiles taped_anew() {
  MemoryFiles files = files_here();
  done(adding("lower front_neck 1.0"), files);
  std::string& text = files.files["verity.json"];
  text.insert(text.find("\n  ]"),
              R"(,
    { "date": "2026-09-12", "tape": { "bust_girth": 94.0, "waist_girth": 72.0 } })");
  return files;
}

std::string refusal_in(MemoryFiles& files, const FitJob& job) {
  const auto before = files.files;
  const JobResult result = run_fit(job, files);
  CHECK(result.exit_code == 2);
  CHECK(files.files == before);
  return result.problems.empty() ? "" : to_text(result.problems.front());
}

}  // namespace

TEST_CASE(
    "A correction without a date is not filed under a toile that was sewn from an older tape") {
  MemoryFiles files = taped_anew();
  FitJob job = adding("take in waist 1.0 per_half");
  job.date.clear();
  for (const std::optional<int> toile :
       {std::optional<int>(), std::optional(1), std::optional(4)}) {
    job.toile = toile;
    const std::string refusal = refusal_in(files, job);
    CHECK_THAT(refusal, Catch::Contains("--date: a tape session, of 2026-09-12, came after the "
                                        "last fitting, toile 1 of 2026-01-20"));
    CHECK_THAT(refusal, Catch::Contains("--date YEAR-MONTH-DAY --toile 2 for a new toile, or "
                                        "--date 2026-01-20 --toile 1"));
  }
  job.toile = std::nullopt;
  job.date = "2026-09-20";
  CHECK_THAT(refusal_in(files, job),
             Catch::Contains("--toile: a tape session, of 2026-09-12, came"));
  job.toile = 2;
  done(job, files);
  CHECK_THAT(files.files["verity.json"], Catch::Contains(R"("date": "2026-09-20")"));
  // Now the newest fitting is of the newest tape, and is meant again.
  job.date.clear();
  job.toile = std::nullopt;
  CHECK(done(job, files)["corrections"].size() == 3);
}

TEST_CASE(
    "A tape of the day of the last fitting is newer than its toile: to which does this belong?") {
  MemoryFiles files = taped_anew();
  std::string& text = files.files["verity.json"];
  text.replace(text.find("2026-09-12"), 10, "2026-01-20");
  FitJob job = adding("take in waist 1.0 per_half");
  job.toile = std::nullopt;
  job.date = "2026-03-01";
  CHECK_THAT(refusal_in(files, job), Catch::Contains("which toile was it?"));
  job.date = "2026-01-20";
  CHECK(done(job, files)["fittings"].size() == 1);
}

TEST_CASE("A day of the file names its toile, and a day before the new tape that of the old one") {
  for (const char* date : {"2026-01-20", "2026-02-03"}) {
    MemoryFiles files = taped_anew();
    FitJob job = adding("lower underarm 0.6");
    job.date = date;
    job.toile = std::nullopt;
    const Json report = done(job, files);
    CHECK(report["corrections"].size() == 2);
    for (const Json& correction : report["corrections"]) CHECK(correction["toile"] == 1);
  }
}

TEST_CASE("A toile without a date is that of the file; a new one needs its date") {
  MemoryFiles files = files_here();
  done(adding("lower front_neck 1.0"), files);
  FitJob second = adding("lower underarm 0.6");
  second.date = "2026-02-20";
  second.toile = 2;
  done(second, files);
  FitJob job = adding("raise back_neck 0.5");
  job.date.clear();
  job.toile = 3;
  CHECK_THAT(refusal_in(files, job), Catch::Contains("the file has no fitting of toile 3"));
  job.toile = 1;
  const Json report = done(job, files);
  const Json& first = report["fittings"][0];
  CHECK(first["date"] == "2026-01-20");
  CHECK(first["corrections"].size() == 2);
}

TEST_CASE("No fitting is before the first tape session, nor of a toile 0") {
  FitJob job = adding("lower front_neck 1.0");
  job.date = "2026-01-09";
  CHECK_THAT(refused(job), Catch::Contains("before the first tape session, of 2026-01-10"));
  job.date = "2026-01-10";
  job.toile = 0;
  CHECK_THAT(refused(job), Catch::Contains("--toile: 0 is out of range"));
  job.toile = 1;
  MemoryFiles files = files_here();
  done(job, files);
}

TEST_CASE("A note needs no correction; what belongs to a correction does") {
  MemoryFiles files = files_here();
  FitJob job = fit_job();
  job.date = "2026-01-20";
  job.toile = 1;
  CHECK_THAT(refused(job), Catch::Contains("nothing is given to be kept with it"));
  job.note = "fits well";
  job.by = "Ann";
  done(job, files);
  CHECK_THAT(files.files["verity.json"], Catch::Contains("\"note\": \"fits well\""));
  CHECK_THAT(files.files["verity.json"], Catch::Contains("\"by\": \"Ann\""));
  CHECK(files.files["verity.json.bak"] == kClient);
  for (const auto& give : {+[](FitJob& one) { one.seen = {"loose"}; },
                           +[](FitJob& one) { one.as = {AmountAs::PerHalf}; },
                           +[](FitJob& one) { one.side = {BodySide::Left}; }}) {
    FitJob alone = fit_job();
    give(alone);
    CHECK_THAT(refused(alone), Catch::Contains("it belongs to a correction, and none is added"));
  }
}

TEST_CASE("The JSON report tells the fittings toile by toile, and which tapes to take again") {
  MemoryFiles files = files_here();
  FitJob job = adding("shorten shoulder 0.6");
  job.seen = {"slips off"};
  job.by = "Ann";
  done(job, files);
  FitJob second = adding("lower underarm 0.6");
  second.date = "2026-02-20";
  second.toile = 2;
  second.note = "better";
  done(second, files);
  FitJob undo = fit_job();
  undo.undo = {2};
  const Json report = done(undo, files);
  REQUIRE(report["fittings"].size() == 2);
  const Json &first = report["fittings"][0], &last = report["fittings"][1];
  CHECK(first["toile"] == 1);
  CHECK(first["date"] == "2026-01-20");
  CHECK(first["by"] == "Ann");
  CHECK_FALSE(first.contains("note"));
  CHECK(first["corrections"][0] ==
        Json{{"number", 1}, {"seen", "slips off"}, {"did", "shorten shoulder 0.6 cm"}});
  CHECK_FALSE(first["look_at_first"].empty());
  CHECK(last["note"] == "better");
  CHECK(last["corrections"][0]["number"] == 2);
  CHECK(last["corrections"][0]["withdrawn"] == true);
  CHECK(report["take_again"] == Json::array({"shoulder_length"}));
}

TEST_CASE("Words that are no correction are answered with the nearest, or with an example") {
  CHECK_THAT(
      refused(adding("take in side seams 1 per seam")),
      Catch::Contains("'take in side seams 1 per seam' is not an action, a place and an "
                      "amount (perhaps you mean \"take_in side 1 per_seam\"; `blockwright fit "
                      "verity.json --ask` finds the words by what is seen)"));
  CHECK_THAT(refused(adding("waist in 1")),
             Catch::Contains("perhaps you mean \"take_in waist 1\""));
  CHECK_THAT(refused(adding("waist loose 1")), Catch::Contains("perhaps you mean \"take_in waist"));
  CHECK_THAT(refused(adding("shorten 3")), Catch::Contains("write for example \"lower front_neck"));
  CHECK_THAT(refused(adding("lower front_neck")),
             Catch::Contains("'lower front_neck' has no amount"));
}

TEST_CASE("A correction by its name is the same as by its words") {
  MemoryFiles files = files_here();
  done(adding("front neck lower 0.6"), files);
  CHECK_THAT(files.files["verity.json"], Catch::Contains(R"("lower": "front_neck", "by": 0.6)"));
}

TEST_CASE("A needless --undo or --redo says that it was so already") {
  MemoryFiles files = files_here();
  done(adding("lower front_neck 1.0"), files);
  const auto told = [&files](const FitJob& job) {
    const Json report = done(job, files);
    for (const Json& problem : report["problems"]) {
      if (problem["code"] == "fit.already") return problem["message"].get<std::string>();
    }
    return std::string();
  };
  FitJob undo = fit_job(), redo = fit_job();
  undo.undo = redo.redo = {1};
  CHECK(told(redo) == "it was not withdrawn; nothing is changed");
  CHECK(told(undo).empty());
  CHECK(told(undo) == "it was withdrawn already; nothing is changed");
  CHECK(told(redo).empty());
}

TEST_CASE("Where there is no correction it is said how to find one") {
  MemoryFiles files = files_here();
  FitJob job = fit_job();
  job.report = ReportKind::Text;
  const std::string command = "blockwright fit verity.json --ask\n";
  CHECK_THAT(run_fit(job, files).output, Catch::Contains(command));
  job.list = true;
  CHECK_THAT(run_fit(job, files).output, Catch::Contains(command));
}

TEST_CASE("If the client file cannot be written, the old one stays") {
  MemoryFiles files = files_here();
  files.refuses_writing = true;
  const JobResult result = run_fit(adding("lower front_neck 1.0"), files);
  CHECK(result.exit_code == 1);
  CHECK(files.files["verity.json"] == kClient);
}

TEST_CASE("compare tells what differs between toiles, and draws both") {
  MemoryFiles files = files_here();
  done(adding("lower front_neck 1.0"), files);
  CompareJob job;
  job.client = "verity.json";
  job.toiles = {1, 2};
  job.out = "out";
  job.report = ReportKind::Json;
  job.write = {OutputKind::Svg};
  const JobResult result = run_compare(job, files);
  REQUIRE(result.exit_code == 0);
  const Json report = Json::parse(result.output);
  bool neck_seen = false;
  for (const Json& point : each(report["points"])) {
    const bool neck = point["name"] == "front.front_neck_point";
    CHECK(point["x_mm"].get<double>() == Approx(0.0).margin(1e-9));
    CHECK(point["y_mm"].get<double>() == Approx(neck ? -10.0 : 0.0).margin(0.01));
    neck_seen = neck_seen || neck;
  }
  CHECK(neck_seen);
  const std::string& svg = files.files["out/verity-compare.svg"];
  CHECK(svg.find("class=\"previous\"") != std::string::npos);
  CHECK(svg.find("display=\"none\"") == std::string::npos);
  CHECK(svg.find(">1 cm<") != std::string::npos);
  CHECK(svg.find("Front laid together") != std::string::npos);
  CHECK(svg.find("Back laid together") != std::string::npos);
  // One arrow, shaft and head, and nothing that is cut by.
  std::size_t arrows = 0;
  for (std::size_t at = svg.find("class=\"arrow\""); at != std::string::npos;
       at = svg.find("class=\"arrow\"", at + 1)) {
    ++arrows;
  }
  CHECK(arrows == 2);
  for (const char* words : {"cut-line", "notch", "grain", "fold", "cut 1", "cut 2"}) {
    INFO(words);
    CHECK(svg.find(words) == std::string::npos);
  }
}

TEST_CASE("compare draws each toile from the tape that it was cut from") {
  MemoryFiles files = files_here();
  done(adding("lower front_neck 1.0"), files);
  // Taped half a year later: 2 cm more waist.
  std::string& verity = files.files["verity.json"];
  const std::size_t begin = verity.find("{", verity.find("\"sessions\""));
  const std::size_t end = verity.find("\n  ]", begin);
  std::string newest = verity.substr(begin, end - begin);
  newest.replace(newest.find("2026-01-10"), 10, "2026-07-12");
  newest.replace(newest.find("74.00"), 5, "76.00");
  verity.insert(end, ",\n    " + newest);
  CompareJob job;
  job.client = "verity.json";
  job.report = ReportKind::Json;
  job.write = {OutputKind::Svg};
  const auto versions = [&] {
    const Json report = Json::parse(run_compare(job, files).output);
    return report["before"].get<std::string>() + " / " + report["after"].get<std::string>();
  };
  const std::string first = "Verity Lark, session 2026-01-10, no corrections / Verity Lark, ";
  job.toiles = {1, 2};
  // Toile 2 is still to be sewn, and is cut from the newest tape.
  CHECK(versions() == first + "session 2026-07-12, 1 correction");
  FitJob again = adding("raise front_neck 0.5");
  again.toile = 2;
  again.date = "2026-04-02";
  done(again, files);
  CHECK(versions() == first + "session 2026-01-10, 1 correction");
  job.toiles = {1, 0};
  CHECK(versions() == first + "session 2026-07-12, 2 corrections");
  // A session that is named is drawn, whatever the toile was cut from.
  job.toiles = {1, 2};
  job.sessions = {"2026-07-12", "2026-07-12"};
  CHECK(versions() ==
        "Verity Lark, session 2026-07-12, no corrections / Verity Lark, session "
        "2026-07-12, 1 correction");
}

TEST_CASE("compare tells of a lowered hem that the hem moved, and nothing else") {
  MemoryFiles files = files_here();
  done(adding("lower front_hem 1.0"), files);
  CompareJob job;
  job.client = "verity.json";
  job.toiles = {1, 2};
  job.write = {OutputKind::Pdf};
  const JobResult result = run_compare(job, files);
  REQUIRE(result.exit_code == 0);
  const std::string points =
      result.output.substr(result.output.find("\nPoints that moved by more than 1 mm\n"));
  CHECK_THAT(points, Catch::Contains("front centre waist                 0.0 out,    1.0 down\n"));
  CHECK(std::ranges::count(points.substr(0, points.find("\nWritten")), '\n') == 3);
  // Asked for, the waist lies on itself, and all that lies above it has moved.
  job.align = Alignment::Waist;
  CHECK_THAT(run_compare(job, files).output, Catch::Contains("front bust point"));
}

TEST_CASE("Without names neither compare nor fit tells one, on paper or in the report") {
  MemoryFiles files = files_here();
  FitJob fit = adding("lower front_neck 1.0");
  fit.anonymous = true;
  CHECK(run_fit(fit, files).output.find("Verity Lark") == std::string::npos);
  CHECK(files.files["verity.json"].find("Verity Lark") != std::string::npos);
  CompareJob job;
  job.client = "verity.json";
  job.toiles = {1, 2};
  job.write = {OutputKind::Svg};
  job.anonymous = true;
  const JobResult result = run_compare(job, files);
  REQUIRE(result.exit_code == 0);
  CHECK(result.output.find("Verity Lark") == std::string::npos);
  CHECK(files.files.at(result.files[0]).find("Verity Lark") == std::string::npos);
}

TEST_CASE("Two clients are compared in the order named, each by its newest session") {
  MemoryFiles files = files_here();
  std::string other = kClient;
  const auto put = [&](const std::string& what, const std::string& by) {
    other.replace(other.find(what), what.size(), by);
  };
  put("Verity Lark", "Merle Finch");
  put("2026-01-10", "2026-03-10");
  files.files["merle.json"] = other;
  // Verity taped half a year later: her newest waist is 2 cm wider.
  const std::string sessions = "  \"sessions\": [\n";
  std::string& verity = files.files["verity.json"];
  std::string newest = verity.substr(verity.find(sessions) + sessions.size());
  newest.erase(newest.rfind("\n  ]"));
  verity.insert(verity.rfind("\n  ]"), ",\n" + newest);
  verity.replace(verity.rfind("2026-01-10"), 10, "2026-07-12");
  verity.replace(verity.rfind("74.00"), 5, "76.00");
  CompareJob job;
  job.client = "verity.json";
  job.other = "merle.json";
  job.report = ReportKind::Json;
  job.write = {OutputKind::Svg};
  const JobResult result = run_compare(job, files);
  REQUIRE(result.exit_code == 0);
  const Json report = Json::parse(result.output);
  CHECK(report["before"] == "Verity Lark, session 2026-07-12, no corrections");
  CHECK(report["after"] == "Merle Finch, session 2026-03-10, no corrections");
  for (const Json& row : report["measurements"]) {
    const bool waist = row["name"] == "waist_girth";
    CHECK(row["before"].get<double>() - row["after"].get<double>() == Approx(waist ? 20.0 : 0.0));
  }
  CHECK(result.files == std::vector<std::string>{"verity-and-merle-compare.svg"});
  // Of one client alone it is the session before that the newest is laid over.
  job.other.clear();
  const Json alone = Json::parse(run_compare(job, files).output);
  CHECK(alone["before"] == "Verity Lark, session 2026-01-10, no corrections");
  CHECK(alone["after"] == "Verity Lark, session 2026-07-12, no corrections");
}

TEST_CASE("compare aligns on the neck or the bust line when asked, and refuses one version") {
  MemoryFiles files = files_here();
  done(adding("lower front_neck 1.0"), files);
  CompareJob job;
  job.client = "verity.json";
  job.toiles = {1, 2};
  job.report = ReportKind::Json;
  job.write = {OutputKind::Svg};
  job.align = Alignment::Neck;
  const Json report = Json::parse(run_compare(job, files).output);
  for (const Json& point : each(report["points"])) {
    if (point["name"] == "front.front_neck_point") CHECK(point["y_mm"] == 0.0);
    if (point["name"] == "front.bust_point") {
      CHECK(point["y_mm"].get<double>() == Approx(10.0).margin(0.01));
    }
  }
  CompareJob one;
  one.client = "verity.json";
  const JobResult alone = run_compare(one, files);
  CHECK(alone.exit_code == 2);
  CHECK(alone.problems.front().message.plain().find("only one version") != std::string::npos);
}

TEST_CASE("compare refuses a toile that there is not, and says which there are") {
  const auto said_to = [](std::vector<int> toiles, bool fitted) {
    MemoryFiles files = files_here();
    if (fitted) done(adding("lower front_neck 1.0"), files);
    CompareJob job;
    job.client = "verity.json";
    job.toiles = std::move(toiles);
    const JobResult result = run_compare(job, files);
    CHECK(result.exit_code == (result.problems.empty() ? 0 : 2));
    return result.problems.empty() ? "" : to_text(result.problems.front());
  };
  CHECK(said_to({1}, true).empty());
  CHECK(said_to({1, 2}, true).empty());
  CHECK(said_to({9}, true) ==
        "error [job.value] --toile: there is no toile 9: the file has toile 1 alone (give 1 to 2, "
        "the toile that is sewn next; or 0, with all corrections)");
  CHECK_THAT(said_to({1, 3}, true), Catch::Contains("there is no toile 3"));
  CHECK_THAT(said_to({2, 1}, false), Catch::Contains("the file has no fitting yet (give 1, the"));
}

TEST_CASE("A usual amount is not warned of, in cm or on an inch tape") {
  const auto warned = [](const std::string& words) {
    MemoryFiles files = files_here();
    std::string said;
    const JobResult result = run_fit(adding(words), files);
    CHECK(result.exit_code == 0);
    for (const Problem& problem : result.problems) {
      const bool of_dart = problem.where.find('.') != std::string::npos;
      const bool of_amount = problem.code == "fit.limit" && !of_dart;
      if (of_amount) said += to_text(problem) + "\n";
    }
    return said;
  };
  for (const char* words :
       each({"fuller bust 1/2 in per half", "fuller bust 1.25 per_half",
             "smaller bust 1/4 in per half", "raise bust_point 1/2 in",
             "widen bust_points 1/4 in per half", "widen across_back 1/4 in per half",
             "lengthen below_bust 1/2 in", "let_out side_at_bust 1/2 in per half"})) {
    CHECK(warned(words).empty());
  }
  CHECK_THAT(warned("fuller bust 5/8 in per half"), Catch::Contains("[fit.limit] fuller bust"));
}

TEST_CASE("No limit is told whose two numbers look alike") {
  // 2.58 cm of girth, over 2.5 cm: both are 1 in on a tape.
  MemoryFiles files = files_here();
  FitJob job = adding("fuller bust 1.29 per_half");
  const auto is_told = [&](Unit unit) {
    job.unit = unit;
    MemoryFiles one = files;
    const Problems problems = run_fit(job, one).problems;
    return std::ranges::any_of(problems, [](const Problem& problem) {
      return problem.code == "fit.limit" && problem.where == "fuller bust";
    });
  };
  CHECK(is_told(Unit::Cm));
  CHECK_FALSE(is_told(Unit::Inch));
}

TEST_CASE("A dart that is wider than usual by less than a tape shows is not warned of") {
  int warned = 0;
  for (int hundredths = 50; hundredths <= 130; hundredths += 5) {
    Json client = Json::parse(kClient);
    client["fittings"] = {{{"date", "2026-01-20"}, {"toile", 1}}};
    client["fittings"][0]["corrections"] = {
        {{"take_in", "front_waist_dart"}, {"by", hundredths / 100.0}, {"as", "per_half"}}};
    MemoryFiles files(std::map<std::string, std::string>{{"verity.json", client.dump()}});
    FitJob job = fit_job();
    for (const Unit unit : {Unit::Cm, Unit::Inch}) {
      job.unit = unit;
      for (const Problem& problem : run_fit(job, files).problems) {
        const std::string said = problem.message.plain();
        const std::size_t to = said.find(" to "), about = said.find("; about ");
        if (problem.code != "fit.limit" || about == std::string::npos) continue;
        INFO(hundredths << " " << said);
        const std::string mouth = said.substr(to + 4, about - to - 4);
        CHECK_FALSE(said.substr(about + 8).starts_with(mouth + " is usual"));
        ++warned;
      }
    }
  }
  CHECK(warned > 0);
  CHECK(warned < 34);
}

TEST_CASE("A place on a piece is told in words, on the page as on the screen") {
  MemoryFiles files = files_here();
  FitJob job = adding("");
  job.add = {"fuller bust 2.0 per_half", "take_in front_neck_edge 1.0 per_half"};
  job.report = ReportKind::Text;
  const std::string said = run_fit(job, files).output;
  INFO(said);
  CHECK(said.find("front waist dart: several corrections pull on it") != std::string::npos);
  for (const std::string& text : {said, files.files.at("verity-fit.svg")}) {
    CHECK(text.find("front.") == std::string::npos);
  }
}

}  // namespace fit_test
