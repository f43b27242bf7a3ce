#include "block_run.hpp"
#include "blockwright/base/error.hpp"
#include "blockwright/base/number_text.hpp"
#include "blockwright/job/draft_job.hpp"
#include "blockwright/layout/print_plan.hpp"
#include "blockwright/write/writers.hpp"
#include "notes.hpp"
#include "report_json.hpp"
#include "report_text.hpp"
#include "safe_name.hpp"
#include "steps_text.hpp"

#include <algorithm>
#include <cmath>
#include <sstream>
#include <utility>

namespace blockwright {
namespace {

/// The job's words, judged.
struct Wishes {
  PrintOptions print;
  bool svg = false, pdf = false, json = false;
  std::optional<Unit> unit;
  bool report_json = false;
};

[[noreturn]] void refuse(const char* key, const std::string& value, const char* allowed) {
  throw UsageError({Severity::Error, "job.value", std::string("--") + key,
                    "'" + value + "' is not known", std::string("use ") + allowed});
}

CutStyle cut_named(const std::string& name) {
  if (name == "toile") return CutStyle::Toile;
  if (name == "card") return CutStyle::Card;
  if (name == "net") return CutStyle::Net;
  refuse("cut", name, "toile, card or net");
}

std::optional<Unit> unit_named(const std::string& name) {
  if (name.empty()) return std::nullopt;
  if (name == "cm") return Unit::Cm;
  if (name == "in") return Unit::Inch;
  refuse("unit", name, "cm or in");
}

void wish(Wishes& w, const std::string& kind) {
  if (kind == "svg") {
    w.svg = true;
  } else if (kind == "pdf") {
    w.pdf = true;
  } else if (kind == "json") {
    w.json = true;
  } else {
    refuse("write", kind, "svg, pdf, json, or several with commas between");
  }
}

double in_range(const char* key, double value, double least, double most) {
  if (value >= least && value <= most) return value;
  const std::string found = std::isfinite(value) ? trimmed(value, 3) + " mm" : "no number";
  const std::string allowed = "a number of mm from " + std::to_string(static_cast<int>(least)) +
                              " to " + std::to_string(static_cast<int>(most));
  throw UsageError({Severity::Error, "job.value", std::string("--") + key,
                    found + " is out of range", "use " + allowed});
}

Wishes wishes_of(const DraftJob& job) {
  Wishes w;
  w.print.cut = cut_named(job.cut);
  w.print.paper = paper_named(job.paper);
  w.print.allowance = in_range("allowance", job.allowance, 0.0, 60.0);
  w.print.margin = in_range("margin", job.margin, 7.0, 40.0);
  w.print.overlap = in_range("overlap", job.overlap, 0.0, 40.0);
  if (job.write.empty()) refuse("write", "", "svg, pdf, json, or several with commas between");
  for (const std::string& kind : job.write) wish(w, kind);
  w.unit = unit_named(job.unit);
  if (job.report != "text" && job.report != "json") refuse("report", job.report, "text or json");
  w.report_json = job.report == "json";
  return w;
}

/// A taped set that no rule could reconcile shows as faults of the pieces. The maker needs to know
/// what to take again: the measurements that were judged doubtful, else those that a bound changed.
void name_contradictions(BlockRun& run) {
  const auto is_fault = [](const Problem& p) {
    return p.severity == Severity::Error && p.code != "check.armhole" && p.code != "draft.limited";
  };
  if (std::none_of(run.problems.begin(), run.problems.end(), is_fault)) return;
  std::string names;
  const auto add = [&](const std::string& name) {
    if (names.find(name) == std::string::npos) names += (names.empty() ? "" : ", ") + name;
  };
  for (const Problem& p : run.problems) {
    if (p.code.rfind("measure.", 0) == 0) add(p.where);
  }
  for (const Adjustment& a : run.block.adjustments) add(std::string(info(a.name).key));
  for (const MeasureBack& row : run.checks.measure_back) {
    if (names.empty() && row.source == Source::Taped) add(std::string(info(row.name).key));
  }
  run.problems.insert(run.problems.begin(),
                      {Severity::Error, "draft.contradiction", names,
                       "no sound bodice can be drawn from these measurements together",
                       "take them again, and look at the eases; if they stay, please report the "
                       "client file"});
}

/// The passes up to a checked block, in running order.
BlockRun checked_block(const DraftJob& job, const Wishes& wishes, FileStore& files) {
  BlockRun run;
  run.file = job.client;
  std::istringstream text(files.read(job.client));
  run.client = read_client(text, job.client);
  run.session = session_of(run.client, job.session, job.client);
  run.unit = wishes.unit.value_or(run.client.unit);
  run.body = fill_in(run.session);
  run.block = draft_block(run.body, Ease::of(run.client));
  run.checks =
      check_block({run.block.pattern, run.body, run.block.ease, run.block.adjustments, run.unit});
  run.problems = judge(run.session, run.body, run.unit);
  run.problems.insert(run.problems.end(), run.checks.problems.begin(), run.checks.problems.end());
  std::stable_sort(run.problems.begin(), run.problems.end(), [](const auto& a, const auto& b) {
    return static_cast<int>(a.severity) > static_cast<int>(b.severity);
  });
  name_contradictions(run);
  return run;
}

struct OutputFile {
  std::string path;
  std::string bytes;
};

bool on_one_page(const Paper& paper) { return paper.is_roll() || paper.name == "a0"; }

/// The finished files, complete in memory.
std::vector<OutputFile> drawn_files(const DraftJob& job, const Wishes& wishes,
                                    const BlockRun& run) {
  const SheetNotes notes = notes_of(run, wishes.print);
  const Sheet sheet = lay_out(run.block.pattern, wishes.print, notes);
  const std::string stem = joined_path(job.out, safe_stem(job.client) + "-" + job.cut);
  std::vector<OutputFile> outputs;
  if (wishes.svg) {
    std::ostringstream svg;
    write_svg(svg, sheet, title_of(run, wishes.print));
    outputs.push_back({stem + ".svg", std::move(svg).str()});
  }
  if (wishes.pdf) {
    PrintPlan plan = on_one_page(wishes.print.paper)
                         ? one_page(sheet, wishes.print, notes, run.block.pattern)
                         : tile(sheet, wishes.print, notes, run.block.pattern);
    plan.title = title_of(run, wishes.print);
    std::ostringstream pdf;
    write_pdf(pdf, plan);
    outputs.push_back({stem + ".pdf", std::move(pdf).str()});
  }
  if (wishes.json) {
    std::ostringstream json;
    write_pattern_json(json, run.block.pattern);
    outputs.push_back(
        {joined_path(job.out, safe_stem(job.client) + "-pattern.json"), std::move(json).str()});
  }
  return outputs;
}

JobResult drafted(const DraftJob& job, FileStore& files) {
  const Wishes wishes = wishes_of(job);
  BlockRun run = checked_block(job, wishes, files);
  JobResult result;
  if (has_errors(run.problems)) {
    result.exit_code = 1;
  } else {
    const std::vector<OutputFile> outputs = drawn_files(job, wishes, run);
    for (const OutputFile& output : outputs) {
      files.write(output.path, output.bytes);
      run.files.push_back(output.path);
    }
  }
  if (wishes.report_json) {
    result.output = report_json(run);
  } else {
    result.output = (job.steps ? steps_text(run) : "") + report_text(run, wishes.print);
  }
  result.problems = run.problems;
  result.files = run.files;
  return result;
}

JobResult failed(const DraftJob& job, const Problem& problem, int exit_code) {
  JobResult result;
  result.exit_code = exit_code;
  result.problems = {problem};
  if (job.report == "json") result.output = problems_json(job.client, result.problems);
  return result;
}

}  // namespace

JobResult run_draft(const DraftJob& job, FileStore& files) {
  try {
    return drafted(job, files);
  } catch (const UsageError& error) {
    return failed(job, error.problem(), 2);
  } catch (const FileError& error) {
    return failed(job, error.problem(), error.problem().code == "file.read" ? 2 : 1);
  } catch (const Error& error) {
    return failed(job, error.problem(), 1);
  }
}

}  // namespace blockwright
