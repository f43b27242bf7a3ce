#include "block_run.hpp"
#include "blockwright/base/error.hpp"
#include "blockwright/job/job.hpp"
#include "blockwright/write/writers.hpp"
#include "notes.hpp"
#include "report_json.hpp"
#include "report_text.hpp"
#include "safe_name.hpp"
#include "steps_text.hpp"
#include "wishes.hpp"

#include <algorithm>
#include <sstream>
#include <utility>

namespace blockwright {
namespace {

void add(Problems& problems, const Problems& more) {
  problems.insert(problems.end(), more.begin(), more.end());
}

void errors_first(Problems& problems) {
  std::stable_sort(problems.begin(), problems.end(), [](const auto& a, const auto& b) {
    return static_cast<int>(a.severity) > static_cast<int>(b.severity);
  });
}

double cup_of(const Body& body) {
  return body[MeasurementName::BustGirth] - body[MeasurementName::UnderbustGirth];
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
BlockRun checked_block(const Job& job, const Wishes& wishes, FileStore& files) {
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
  add(run.problems, run.checks.problems);
  errors_first(run.problems);
  name_contradictions(run);
  return run;
}

/// What a step said of a dart is told in the end only if the dart is still there.
Problems lasting(const Problems& remarks, const Pattern& pattern) {
  Problems kept;
  for (const Problem& remark : remarks) {
    bool stays = remark.code != "dart.wide" && remark.code != "dart.narrow";
    for (const DartMeasure& dart : measured_darts(pattern)) {
      stays = stays || remark.where == dart.piece + "." + dart.name;
    }
    if (stays) kept.push_back(remark);
  }
  return kept;
}

bool moves_darts(const Job& job) { return job.command != Command::Draft; }

/// The style steps on the block, and what must hold of the pieces after them; then the last step
/// before printing, trueing the darts.
void make_pieces(const Job& job, FileStore& files, BlockRun& run) {
  run.made = run.block.pattern;
  if (moves_darts(job)) {
    const Style style = job.command == Command::Pivot ? style_of_moves(job)
                                                      : read_style(files.read(job.style), job.style);
    run.garment = style.name;
    StyledPattern styled = apply_style(run.block.pattern, style, cup_of(run.body),
                                       job.command == Command::Adapt ? job.style : "");
    run.made = std::move(styled.pattern);
    run.steps = std::move(styled.steps);
    for (const StepDone& step : run.steps) add(run.problems, lasting(step.remarks, run.made));
    add(run.problems, check_pattern(run.made));
    errors_first(run.problems);
  }
  TruedPattern trued = true_darts(run.made);
  run.printed = std::move(trued.pattern);
  run.faired = std::move(trued.faired);
  add(run.problems, check_pattern(run.printed));
}

struct OutputFile {
  std::string path;
  std::string bytes;
};

bool on_one_page(const Paper& paper) { return paper.is_roll() || paper.name == "a0"; }

/// "out/ondine-marsh", "out/ondine-marsh-pivot", "out/ondine-marsh-side-dart-bodice".
std::string stem_of(const Job& job) {
  std::string stem = joined_path(job.out, safe_stem(job.client));
  if (job.command == Command::Pivot) stem += "-pivot";
  if (job.command == Command::Adapt) stem += "-" + safe_stem(job.style);
  return stem;
}

void add_drawings(const std::string& stem, const Wishes& wishes, const BlockRun& run,
                  const Sheet& sheet, std::vector<OutputFile>& outputs) {
  const SheetNotes notes = notes_of(run, wishes.print);
  if (wishes.svg) {
    std::ostringstream svg;
    write_svg(svg, sheet, title_of(run, wishes.print));
    outputs.push_back({stem + ".svg", std::move(svg).str()});
  }
  if (wishes.pdf) {
    PrintPlan plan = on_one_page(wishes.print.paper)
                         ? one_page(sheet, wishes.print, notes, run.printed)
                         : tile(sheet, wishes.print, notes, run.printed);
    plan.title = title_of(run, wishes.print);
    std::ostringstream pdf;
    write_pdf(pdf, plan);
    outputs.push_back({stem + ".pdf", std::move(pdf).str()});
  }
}

/// The finished files, complete in memory.
std::vector<OutputFile> drawn_files(const Job& job, const Wishes& wishes, const BlockRun& run) {
  const SheetNotes notes = notes_of(run, wishes.print);
  std::vector<OutputFile> outputs;
  add_drawings(stem_of(job) + "-" + job.cut, wishes, run,
               lay_out(run.printed, wishes.print, notes), outputs);
  if (job.overlay) {
    Wishes over = wishes;
    over.print.cut = CutStyle::Net;
    const Pattern before = true_darts(run.block.pattern).pattern;
    add_drawings(stem_of(job) + "-overlay", over, run,
                 lay_out(run.printed, over.print, notes, &before), outputs);
  }
  if (wishes.json) {
    std::ostringstream json;
    write_pattern_json(json, run.printed);
    outputs.push_back({stem_of(job) + "-pattern.json", std::move(json).str()});
  }
  return outputs;
}

JobResult done(const Job& job, FileStore& files) {
  const Wishes wishes = wishes_of(job);
  BlockRun run = checked_block(job, wishes, files);
  if (!has_errors(run.problems)) make_pieces(job, files, run);
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

JobResult failed(const Job& job, const Problem& problem, int exit_code) {
  JobResult result;
  result.exit_code = exit_code;
  result.problems = {problem};
  if (job.report == "json") result.output = problems_json(job.client, result.problems);
  return result;
}

}  // namespace

JobResult run_job(const Job& job, FileStore& files) {
  try {
    return done(job, files);
  } catch (const UsageError& error) {
    return failed(job, error.problem(), 2);
  } catch (const FileError& error) {
    return failed(job, error.problem(), error.problem().code == "file.read" ? 2 : 1);
  } catch (const Error& error) {
    return failed(job, error.problem(), 1);
  }
}

}  // namespace blockwright
