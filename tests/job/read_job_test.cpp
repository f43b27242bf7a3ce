// Job files: one key for each option, everything else refused with a cure.
#include "support/read_job.hpp"

#include "blockwright/base/error.hpp"
#include "blockwright/job/options.hpp"
#include "support/memory_files.hpp"

#include <catch2/catch.hpp>

using namespace blockwright;

namespace {

template <class AnyJob = Job>
Problem refusal_of(const std::string& text) {
  try {
    (void)read_job(text, "job.json", AnyJob());
  } catch (const Error& error) {
    CHECK(error.problem().where.find("job.json") == 0);
    CHECK_FALSE(error.problem().hint.empty());
    return error.problem();
  }
  return {};
}

std::string code_of(const std::string& text) { return refusal_of(text).code; }

/// The code of a job file with one key beside its format.
std::string code_of_key(const std::string& key) {
  return code_of(R"({"format": "blockwright-job-1", )" + key + "}");
}

}  // namespace

TEST_CASE("Every option can stand in a job file") {
  const Job job = read_job(R"({"format": "blockwright-job-1", "client": "a.json",
    "session": "2026-01-01", "toile": 2, "out": "o", "write": ["json"], "paper": "letter",
    "cut": "card", "unit": "in", "report": "json", "allowance": 15, "margin": 12, "overlap": 8,
    "anonymous": true, "steps": true})",
                           "job.json", {});
  CHECK(job.client == "a.json");
  CHECK(job.session == "2026-01-01");
  CHECK(job.toile == 2);
  CHECK(job.out == "o");
  CHECK(job.write == std::vector{OutputKind::Json});
  CHECK(job.paper == "letter");
  CHECK(job.cut == CutStyle::Card);
  CHECK(job.unit == Unit::Inch);
  CHECK(job.report == ReportKind::Json);
  CHECK(job.allowance == Length::mm(15.0));
  CHECK(job.margin == Length::mm(12.0));
  CHECK(job.overlap == Length::mm(8.0));
  CHECK(job.anonymous);
  CHECK(job.steps);
}

TEST_CASE("Options of pivot, adapt, fit and compare can stand in their job files") {
  Job job;
  job.command = Command::Pivot;
  job = read_job(R"({"format": "blockwright-job-1", "dart": ["front.waist"], "to": ["front.side"],
    "part": [0.5], "angle": [5], "split": ["front.side:2"], "hold_back": 20, "overlay": true})",
                 "job.json", job);
  CHECK(job.command == Command::Pivot);
  CHECK(job.dart == std::vector<std::string>{"front.waist"});
  CHECK(job.part == std::vector<double>{0.5});
  CHECK(job.angle == std::vector{Angle::degrees(5.0)});
  CHECK(job.hold_back == Length::mm(20.0));
  CHECK(job.overlay);
  const auto fit = read_job<FitJob>(R"({"format": "blockwright-job-1", "client": "a.json",
    "add": ["lower front_neck 1.0", "raise underarm 0.5"], "as": "length", "side": "left",
    "seen": "folds", "date": "2026-03-21", "toile": 2, "by": "Ada", "note": "standing",
    "undo": [3], "redo": [1, 2], "session": "2026-01-01", "unit": "in", "report": "json",
    "anonymous": true, "list": false, "ask": true})",
                                    "job.json", {});
  CHECK(fit.client == "a.json");
  CHECK(fit.add == std::vector<std::string>{"lower front_neck 1.0", "raise underarm 0.5"});
  CHECK(fit.as == std::vector<std::optional<AmountAs>>{AmountAs::Length});
  CHECK(fit.side == std::vector<std::optional<BodySide>>{BodySide::Left});
  CHECK(fit.seen == std::vector<std::string>{"folds"});
  CHECK(fit.date == "2026-03-21");
  CHECK(fit.toile == 2);
  CHECK(fit.by == "Ada");
  CHECK(fit.note == "standing");
  CHECK(fit.undo == std::vector<int>{3});
  CHECK(fit.redo == std::vector<int>{1, 2});
  CHECK(fit.session == "2026-01-01");
  CHECK(fit.unit == Unit::Inch);
  CHECK(fit.report == ReportKind::Json);
  CHECK(fit.anonymous);
  CHECK_FALSE(fit.list);
  CHECK(fit.ask == "");
  const auto compare = read_job<CompareJob>(R"({"format": "blockwright-job-1", "client": "a.json",
    "other": "b.json", "session": ["2026-01-01", "2026-06-01"], "toile": [1, 2], "align": "neck",
    "out": "o", "write": ["svg"], "paper": "a0", "unit": "in", "report": "json", "margin": 12,
    "overlap": 8, "anonymous": true})",
                                            "job.json", {});
  CHECK(compare.client == "a.json");
  CHECK(compare.other == "b.json");
  CHECK(compare.sessions == std::vector<std::string>{"2026-01-01", "2026-06-01"});
  CHECK(compare.toiles == std::vector<int>{1, 2});
  CHECK(compare.align == Alignment::Neck);
  CHECK(compare.out == "o");
  CHECK(compare.write == std::vector{OutputKind::Svg});
  CHECK(compare.paper == "a0");
  CHECK(compare.margin == Length::mm(12.0));
  CHECK(compare.overlap == Length::mm(8.0));
  CHECK(compare.anonymous);
  const auto batch = read_job<BatchJob>(R"({"format": "blockwright-job-1", "folder": "people",
    "style": "s.json", "jobs": 2, "toile": 1, "anonymous": true, "quiet": true})",
                                        "job.json", {});
  CHECK(batch.folder == "people");
  CHECK(batch.styles == std::vector<std::string>{"s.json"});
  CHECK(batch.each.toile == 1);
  CHECK(batch.each.anonymous);
  CHECK(batch.quiet);
}

TEST_CASE("What a job file does not say stays as it was") {
  FitJob job;
  job.client = "a.json";
  job.toile = 4;
  const FitJob read = read_job(R"({"format": "blockwright-job-1", "by": "Ada"})", "j", job);
  CHECK(read.client == "a.json");
  CHECK(read.toile == 4);
  CHECK(read.by == "Ada");
  CHECK_FALSE(read_job(R"({"format": "blockwright-job-1", "unit": ""})", "j", Job{}).unit);
}

TEST_CASE("A key of another command is refused, and the message lists those of this one") {
  const std::string dart = R"({"format": "blockwright-job-1", "zigzag": ["front.waist"]})";
  const auto hint = [&](const Problem& problem) {
    CHECK(problem.code == "job.key");
    return problem.hint.plain();
  };
  const std::string draft = hint(refusal_of(dart)), fit = hint(refusal_of<FitJob>(dart)),
                    compare = hint(refusal_of<CompareJob>(dart));
  CHECK(draft.find("steps") != std::string::npos);
  CHECK(draft.find("hold_back") == std::string::npos);
  CHECK(fit.find("undo") != std::string::npos);
  CHECK(fit.find("hold_back") == std::string::npos);
  CHECK(compare.find("align") != std::string::npos);
  CHECK(compare.find("undo") == std::string::npos);
  CHECK(code_of_key(R"("dart": ["front.waist"])") == "job.key");
}

TEST_CASE("What is not a job file is refused") {
  CHECK(code_of("{") == "job.syntax");
  CHECK(code_of("[]") == "job.type");
  CHECK(code_of("{}") == "job.missing");
  CHECK(code_of(R"({"format": "blockwright-client-1"})") == "job.format");
  CHECK(code_of_key(R"("papers": "a4")") == "job.key");
  CHECK(code_of_key(R"("paper": 4)") == "job.type");
  CHECK(code_of_key(R"("write": "svg")") == "job.type");
  CHECK(code_of_key(R"("steps": 1)") == "job.type");
  CHECK(code_of_key(R"("toile": 1.5)") == "job.type");
  CHECK(code_of_key(R"("toile": 99999999999)") == "job.type");
  CHECK(code_of_key(R"("write": ["svg", 1])") == "job.type");
  CHECK(code_of_key(R"("paper": "a4", "paper": "a3")") == "job.duplicate");
  CHECK(code_of(std::string(100000, '[')) == "job.size");
  CHECK(refusal_of("{\n \"paper\": A4}").where == "job.json:2:11 paper");
}

TEST_CASE("A word that an option does not know is refused with its place and those it knows") {
  const Problem cut = refusal_of("{\"format\": \"blockwright-job-1\",\n \"cut\": \"lace\"}");
  CHECK(cut.code == "job.value");
  CHECK(cut.where == "job.json:2:9 cut");
  CHECK(cut.message.plain().find("\"lace\"") != std::string::npos);
  for (const char* word : {"toile", "card", "net"}) {
    INFO(word);
    CHECK(cut.hint.plain().find(word) != std::string::npos);
  }
  CHECK(code_of_key(R"("unit": "m")") == "job.value");
  CHECK(code_of_key(R"("write": ["svg", "doc"])") == "job.value");
  CHECK(code_of_key(R"("report": "html")") == "job.value");
  const Problem as = refusal_of<FitJob>(R"({"format": "blockwright-job-1", "as": "by_eye"})");
  CHECK(as.hint.plain().find("tuck_depth") != std::string::npos);
}

TEST_CASE("A value of a job file that is out of range is refused with its line") {
  MemoryFiles files(std::map<std::string, std::string>{
      {"a.json", R"({"format": "blockwright-client-1", "name": "A", "unit": "cm",
        "sessions": [{"date": "2026-03-14", "tape": {"bust_girth": 92}}]})"},
      {"b.json", R"({"format": "blockwright-client-1", "name": "B", "unit": "cm",
        "sessions": [{"date": "2026-03-14", "tape": {"bust_girth": 9}}]})"}});
  const auto where = [&](const JobResult& result) {
    REQUIRE_FALSE(result.problems.empty());
    return result.problems.front().code + " " + result.problems.front().where;
  };
  const auto text = [](const std::string& keys) {
    return "{\"format\": \"blockwright-job-1\", \"client\": \"a.json\",\n" + keys + "}";
  };
  const auto drafted = [&](const std::string& keys) {
    return where(run_job(read_job(text(keys), "job.json", Job()), files));
  };
  CHECK(drafted(R"("margin": 1e308)") == "job.value job.json:2:11 margin");
  CHECK(drafted(R"("write": [])") == "job.value job.json:2:10 write");
  CHECK(drafted(R"("paper": "papyrus")") == "paper.unknown job.json:2:10 paper");
  CHECK(drafted(R"("paper": "100x100", "margin": 40)") == "paper.too_small job.json:2:10 paper");
  CHECK(drafted(R"("session": "2020-01-01")") == "client.session job.json:2:12 session: a.json");

  Job pivot;
  pivot.command = Command::Pivot;
  const auto pivoted = [&](const std::string& keys) {
    return where(run_job(read_job(text(keys), "job.json", pivot), files));
  };
  CHECK(pivoted("\"dart\": [\"front.shoulder\"],\n\"to\": []") == "job.value job.json:3:7 to");
  CHECK(pivoted("\"dart\": [\"front.shoulder\"], \"to\": [\"front.side\"],\n\"part\": [\n7]") ==
        "job.value job.json:4:1 part[0]");
  CHECK(pivoted("\"dart\": [\"front.shoulder\"],\n\"to\": [\n\"front.hem\"]") ==
        "dart.unknown job.json:4:1 to[0]: front.hem");
  CHECK(pivoted("\"dart\": [\"front.shoulder\"], \"to\": [\"front.side\"],\n\"angle\": [\n170]") ==
        "dart.part job.json:4:1 angle[0]: front.shoulder");
  CHECK(pivoted("\"split\": [\"front.waist\",\n\"front.waist:9\"]") ==
        "job.value job.json:3:1 split[1]");

  const auto fitted = [&](const std::string& keys) {
    return where(run_fit(read_job<FitJob>(text(keys), "job.json", {}), files));
  };
  CHECK(fitted("\"undo\": [1,\n0]") == "job.value job.json:3:1 undo[1]");
  CHECK(fitted("\"add\": [\n\"lower it\"], \"date\": \"2026-03-21\"") ==
        "job.value job.json:3:1 add[0]");
  CHECK(fitted("\"add\": [\"lower front_neck 1\",\n\"lower moon 1\"], \"date\": \"2026-03-21\"") ==
        "job.value job.json:3:1 add[1]");
  CHECK(fitted("\"add\": [\"lower front_neck 1\"],\n\"date\": \"2020-01-01\"") ==
        "job.value job.json:3:9 date");
  CHECK(fitted("\"date\": \"2026-03-21\",\n\"note\": \"\\u001b\"") ==
        "client.text job.json:3:9 note: a.json note to be added");
  // What the client file cannot have is of the job file, too.
  CHECK(fitted("\"add\": [\n\"lower front_neck 99\"], \"date\": \"2026-03-21\"") ==
        "client.range job.json:3:1 add[0]");
  CHECK(fitted("\"add\": [\"lower front_neck 1\"],\n\"date\": \"2026-13-21\"") ==
        "client.date job.json:3:9 date: a.json date to be added");
  CHECK(fitted("\"undo\": [\n7]") == "client.correction job.json:3:1 undo[0]: a.json");
  CHECK(fitted("\"redo\": [\n7]") == "client.correction job.json:3:1 redo[0]: a.json");
  // What is wrong with the client file itself is not.
  FitJob broken = read_job<FitJob>(text("\"undo\": [7]"), "job.json", {});
  broken.client = "b.json";
  CHECK(where(run_fit(broken, files)).starts_with("client.range b.json:2:"));

  const auto batched = [&](const std::string& keys) {
    return where(run_batch(
        read_job<BatchJob>("{\"format\": \"blockwright-job-1\",\n" + keys + "}", "job.json", {}),
        files, {}));
  };
  CHECK(batched(R"("clients": ["a.json"], "shard": "9/8")") == "job.value job.json:2:33 shard");
  CHECK(batched(R"("clients": ["a.json"], "jobs": 1000)") == "job.value job.json:2:32 jobs");

  const auto compared = [&](const std::string& keys) {
    return where(run_compare(read_job<CompareJob>(text(keys), "job.json", {}), files));
  };
  CHECK(compared("\"session\": [\"2026-03-14\",\n\"2020-01-01\"]") ==
        "client.session job.json:3:1 session[1]: a.json");
  CHECK(compared(R"("toile": [1, 2, 3])") == "job.value job.json:2:10 toile");
}
