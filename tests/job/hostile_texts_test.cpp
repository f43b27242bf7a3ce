// 500 hostile names and texts through every command, with files in memory: what is said is
// printable, and no name makes a line of its own.
#include "support/hostile_texts.hpp"

#include "blockwright/base/error.hpp"
#include "blockwright/job/job.hpp"
#include "blockwright/job/options.hpp"
#include "blockwright/style/style.hpp"
#include "support/each.hpp"
#include "support/memory_files.hpp"
#include "support/read_job.hpp"
#include "support/sanitized.hpp"

#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>

#include <algorithm>
#include <array>
#include <functional>
#include <sstream>

namespace hostile_texts_test {

using namespace blockwright;

namespace {

using Json = nlohmann::json;

constexpr std::size_t kLongestLine = 12'000;  // two paths of 4096 bytes, a message and its cure

const std::string kClient =
    R"({"format": "blockwright-client-1", "name": "Ann", "unit": "cm",
 "sessions": [{"date": "2026-03-14", "tape": {"bust_girth": 92}}]})";
const std::string kStyle = R"({"format": "blockwright-style-1", "name": "vest", "steps": []})";

/// All of them, or under the sanitizers every fifth.
std::vector<std::string> tried_texts() {
  std::vector<std::string> texts = hostile_texts();
  REQUIRE(texts.size() == 500);
  if (!kSanitized) return texts;
  std::vector<std::string> few;
  for (std::size_t i = 0; i < texts.size(); i += 5) few.push_back(texts[i]);
  return few;
}

std::string as_json(const std::string& text) {
  return Json(text).dump(-1, ' ', true, Json::error_handler_t::replace);
}

std::vector<std::string> lines_of(const std::string& text) {
  std::vector<std::string> lines;
  std::istringstream in(text);
  for (std::string line; std::getline(in, line);) lines.push_back(line);
  return lines;
}

void check_sent(const std::string& text) {
  const auto harm = harm_in(text);
  INFO(harm.value_or(""));
  CHECK_FALSE(harm);
}

void check_lines(const std::string& text) {
  check_sent(text);
  for (const std::string& line : lines_of(text)) CHECK(line.size() < kLongestLine);
}

void check_json(const std::string& text) {
  check_sent(text);
  CHECK(Json::accept(text));
}

void check_problem(const Problem& problem) {
  const std::string line = to_text(problem);
  check_lines(line);
  CHECK(line.find('\n') == std::string::npos);
}

void check_result(const JobResult& result, ReportKind report) {
  for (const Problem& problem : result.problems) check_problem(problem);
  report == ReportKind::Json ? check_json(result.output) : check_lines(result.output);
}

/// Runs one job, with one kind of report.
template <class AnyJob, class Run>
void check_run(AnyJob job, FileStore& files, const Run& run, ReportKind report) {
  job.report = report;
  check_result(run(job, files), report);
}

/// With both.
template <class AnyJob, class Run>
void check_run(const AnyJob& job, FileStore& files, const Run& run) {
  check_run(job, files, run, ReportKind::Text);
  check_run(job, files, run, ReportKind::Json);
}

/// What needs a draft is run once for each text: with one report after the other, and with one of
/// several places of the text after the other.
class Turns {
 public:
  [[nodiscard]] std::size_t of(std::size_t count) const { return turn_ % count; }
  [[nodiscard]] ReportKind report() const {
    return turn_ % 2 == 0 ? ReportKind::Text : ReportKind::Json;
  }
  void next() { ++turn_; }

 private:
  std::size_t turn_ = 0;
};

/// What it throws is said on one printable line.
void check_refusal(const std::function<void()>& work) {
  try {
    work();
  } catch (const Error& error) {
    check_problem(error.problem());
    CHECK(error.what() == to_text(error.problem()));
  }
}

template <class AnyJob = Job>
AnyJob job_of(const std::string& client) {
  AnyJob job;
  job.client = client;
  return job;
}

Job draft_of(const std::string& client) {
  Job job = job_of(client);
  job.out = "out";
  job.write = {OutputKind::Json};
  return job;
}

Job adapt_of(const std::string& style) {
  Job job = draft_of("ann.json");
  job.command = Command::Adapt;
  job.style = style;
  return job;
}

std::string client_named(const std::string& text) {
  return R"({"format": "blockwright-client-1", "name": )" + as_json(text) +
         R"(, "unit": "cm", "sessions": [{"date": "2026-03-14", "by": )" + as_json(text) +
         R"(, "tape": {"bust_girth": 92}}]})";
}

struct StyleTexts {
  std::string name = "vest";
  std::string step = "pivot";
  std::string dart = "front.shoulder";
};

std::string style_with(const StyleTexts& texts) {
  return R"({"format": "blockwright-style-1", "name": )" + as_json(texts.name) +
         R"(, "steps": [{)" + as_json(texts.step) + R"(: {"dart": )" + as_json(texts.dart) +
         R"(, "to": "front.side"}}]})";
}

MemoryFiles files_here() { return MemoryFiles({{"ann.json", kClient}, {"vest.json", kStyle}}); }

BatchJob batch_of(ReportKind report) {
  BatchJob batch;
  batch.folder = "people";
  batch.jobs = 2;
  batch.each = draft_of("");
  batch.each.report = report;
  return batch;
}

std::string told_by(const BatchJob& batch, FileStore& files) {
  std::string text;
  BatchWatch watch;
  watch.say = [&](std::string_view more) { text += more; };
  check_result(run_batch(batch, files, watch), ReportKind::Text);
  return text;
}

bool begins_a_client(const std::string& line) {
  constexpr std::array<std::string_view, 4> states = {"done      ", "warned    ", "unchanged ",
                                                      "failed    "};
  return std::ranges::any_of(states, [&](std::string_view s) { return line.starts_with(s); });
}

/// Lines of the clients, then of those that are gone, then the counts: no name made one of its own.
void check_summary(const std::string& text, std::size_t clients) {
  check_lines(text);
  const std::vector<std::string> lines = lines_of(text);
  CHECK(std::ranges::count_if(lines, begins_a_client) == static_cast<long>(clients));
  REQUIRE_FALSE(lines.empty());
  for (std::size_t i = 0; i + 1 < lines.size(); ++i) {
    INFO(lines[i]);
    CHECK((begins_a_client(lines[i]) || lines[i].starts_with("          ") ||
           lines[i].starts_with("gone      ")));
  }
  CHECK(
      lines.back().starts_with(std::to_string(clients) + (clients == 1 ? " client" : " clients")));
}

MemoryFiles folder_of(const std::vector<std::string>& names) {
  MemoryFiles files;
  for (std::size_t i = 0; i < names.size(); ++i) {
    files.files["people/" + std::to_string(i) + names[i] + ".json"] = kClient;
  }
  return files;
}

}  // namespace

TEST_CASE("Hostile names of client files make no line of a batch, nor anything else harmful") {
  const std::vector<std::string> names = tried_texts();
  MemoryFiles files = folder_of(names);
  check_summary(told_by(batch_of(ReportKind::Text), files), names.size());
  check_summary(told_by(batch_of(ReportKind::Text), files), names.size());  // nothing has changed
  const std::string json = told_by(batch_of(ReportKind::Json), files);
  check_json(json);
  CHECK(Json::parse(json).at("clients").size() == names.size());
  int written = 0;
  for (const auto& [path, bytes] : files.files) {
    if (!path.starts_with("out/")) continue;
    check_json(bytes);
    ++written;
  }
  CHECK(written >= static_cast<int>(names.size()));
  std::erase_if(files.files, [](const auto& file) {
    return file.first.starts_with("people/") &&
           file.first != "people/0" + hostile_texts()[0] + ".json";
  });
  const std::string gone = told_by(batch_of(ReportKind::Text), files);
  CHECK(gone.find("\ngone      ") != std::string::npos);
  check_summary(gone, 1);
  check_json(told_by(batch_of(ReportKind::Json), files));
}

TEST_CASE("A stream of clients with hostile texts: a line of JSON for each, as it was given") {
  const std::vector<std::string> texts = tried_texts();
  std::string lines;
  for (const std::string& text : texts) lines += client_named(text) + "\n";
  std::istringstream in(lines);
  std::string told;
  BatchWatch watch;
  watch.say = [&](std::string_view more) { told += more; };
  BatchJob stream;
  MemoryFiles files;
  stream.each.out = "";
  check_result(run_stream(stream, in, files, watch), ReportKind::Text);
  check_sent(told);
  std::size_t count = 0;
  for (const std::string& line : lines_of(told)) {
    CHECK(Json::parse(line).at("line") == ++count);
  }
  CHECK(count == texts.size());
}

TEST_CASE("Hostile names of client, style and job files and of folders are shown escaped") {
  MemoryFiles drawn_before = files_here();
  const std::size_t lines = lines_of(run_job(draft_of("ann.json"), drawn_before).output).size();
  Turns turns;
  for (const std::string& text : each(tried_texts())) {
    MemoryFiles files = files_here();
    check_run(draft_of(text), files, run_job);
    check_run(adapt_of(text), files, run_job, turns.report());
    check_run(job_of<FitJob>(text), files, run_fit);
    CompareJob compare = job_of<CompareJob>("ann.json");
    compare.other = text;
    check_run(compare, files, run_compare);
    BatchJob batch = batch_of(ReportKind::Text);
    batch.folder = text;
    check_lines(told_by(batch, files));
    // Now there is a file of that name, and it is no client, style or job.
    files.files[text] = text;
    check_run(draft_of(text), files, run_job);
    check_refusal([&] { (void)read_style(text, text); });
    check_refusal([&] { (void)read_job(text, text, Job()); });
    Job drawn = draft_of("ann.json");  // into a folder of that name
    drawn.out = text;
    const JobResult result = run_job(drawn, files);
    check_result(result, ReportKind::Text);
    CHECK(lines_of(result.output).size() == lines);
    turns.next();
  }
}

TEST_CASE("Hostile texts of client, style and job files are refused on one printable line") {
  Turns turns;
  for (const std::string& text : each(tried_texts())) {
    MemoryFiles files = files_here();
    files.files["named.json"] = client_named(text);
    files.files["key.json"] = R"({"format": "blockwright-client-1", )" + as_json(text) + ": 1}";
    check_run(draft_of("named.json"), files, run_job);
    check_run(draft_of("key.json"), files, run_job);
    const std::array styles = {style_with({.name = text}), style_with({.step = text}),
                               style_with({.dart = text}), "{\"format\": \"" + text + "\"}"};
    for (const std::string& style : styles) {
      check_refusal([&] { (void)read_style(style, "style.json"); });
    }
    files.files["style.json"] = styles.at(turns.of(styles.size()));
    check_run(adapt_of("style.json"), files, run_job, turns.report());
    const std::string format = R"({"format": "blockwright-job-1", )";
    check_refusal([&] { (void)read_job(format + as_json(text) + ": 1}", "j.json", Job()); });
    check_refusal(
        [&] { (void)read_job(format + R"("write": [)" + as_json(text) + "]}", "j.json", Job()); });
    turns.next();
  }
}

TEST_CASE("Hostile words at the command line are shown escaped, and cut") {
  Job job;
  BatchJob batch;
  FitJob fit;
  CompareJob compare;
  const std::array commands = {JobOptions(job), JobOptions(batch), JobOptions(fit),
                               JobOptions(compare)};
  for (const std::string& text : each(tried_texts())) {
    for (const JobOptions& options : commands) {
      for (const Option& option : options.options) {
        check_refusal([&] { put_typed(option, {text}, options.parts); });
      }
    }
    check_refusal([&] { (void)schema_named(text); });
    check_refusal([&] { (void)explanation_of(text); });
  }
}

TEST_CASE("Hostile darts, places, dates and papers are shown escaped") {
  Turns turns;
  for (const std::string& text : each(tried_texts())) {
    MemoryFiles files = files_here();
    Job pivot = draft_of("ann.json");
    pivot.command = Command::Pivot;
    const std::size_t place = turns.of(3);
    if (place == 0) pivot.split = {"front.shoulder:" + text};
    if (place == 1) pivot.dart = {text};
    if (place == 2) pivot.dart = {"front.shoulder"};
    if (place > 0) pivot.to = {"front." + text};
    check_run(pivot, files, run_job, turns.report());
    Job paper = draft_of("ann.json");
    paper.paper = text;
    check_run(paper, files, run_job);
    CompareJob compare = job_of<CompareJob>("ann.json");
    compare.sessions = {text, text};
    check_run(compare, files, run_compare);
    turns.next();
  }
}

TEST_CASE("Hostile corrections, dates and notes of a fitting are shown escaped") {
  Turns turns;
  for (const std::string& text : each(tried_texts())) {
    MemoryFiles files = files_here();
    FitJob fit = job_of<FitJob>("ann.json");
    fit.add = {text};
    fit.date = "2026-03-21";
    check_run(fit, files, run_fit);
    fit.add = {"lower front_neck 1.0"};
    FitJob seen = fit;
    seen.seen = {text};
    check_run(seen, files, run_fit, turns.report());
    FitJob asked = fit;
    asked.add = {};
    asked.ask = text;
    check_run(asked, files, run_fit, turns.report());
    for (const auto member : {&FitJob::by, &FitJob::note, &FitJob::date}) {
      FitJob noted = fit;
      noted.*member = text;
      check_run(noted, files, run_fit, turns.report());
    }
    check_json(files.files["ann.json"]);
    turns.next();
  }
}

}  // namespace hostile_texts_test
