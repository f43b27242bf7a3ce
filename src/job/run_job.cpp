#include "block_pass.hpp"
#include "blockwright/base/number_text.hpp"
#include "blockwright/job/options.hpp"
#include "blockwright/report/report.hpp"
#include "drawings.hpp"
#include "guarded.hpp"

#include <algorithm>
#include <utility>

namespace blockwright {
namespace {

/// What a step said of a dart is told in the end only if the dart is still there.
Problems lasting(Problems remarks, const Pattern& pattern) {
  const std::vector<DartMeasure> darts = measured_darts(pattern);
  std::erase_if(remarks, [&](const Problem& remark) {
    const bool of_dart = remark.code == "dart.wide" || remark.code == "dart.narrow";
    return of_dart && std::ranges::none_of(darts, [&](const DartMeasure& dart) {
             return remark.where == dart.piece + "." + dart.name;
           });
  });
  return remarks;
}

/// A refusal of a step is in the person's unit.
StyledPattern styled(const Job& job, const Style& style, const BlockRun& run) {
  try {
    return apply_style(run.fitted.pattern, style, cup_of(run.body),
                       job.command == Command::Adapt ? job.style : "");
  } catch (const InputError& error) {
    throw InputError(worded(error.problem(), run.unit));
  }
}

/// The style steps on the block, and what must hold of the pieces after them; then the last step
/// before printing, trueing the darts.
void make_pieces(const Job& job, FileStore& files, BlockRun& run) {
  run.made = run.fitted.pattern;
  if (job.command != Command::Draft) {
    const Style style = job.command == Command::Pivot
                            ? style_of_moves(job)
                            : read_style(files.read(job.style), job.style);
    run.garment = style.name;
    StyledPattern pieces = styled(job, style, run);
    run.made = std::move(pieces.pattern);
    run.steps = std::move(pieces.steps);
    for (const StepDone& step : run.steps) add(run.problems, lasting(step.remarks, run.made));
    add(run.problems, check_pattern(run.made));
    errors_first(run.problems);
  }
  TruedPattern trued = true_darts(run.made);
  run.printed = std::move(trued.pattern);
  run.blended = std::move(trued.blended);
  add(run.problems, check_pattern(run.printed));
  errors_first(run.problems);
}

/// The pieces, and with an overlay the net pieces over the block. Gives back the pages of the
/// pieces' PDF.
int add_sheets(const Job& job, const PrintOptions& print, const BlockRun& run, const Report& report,
               TextFonts& fonts, std::vector<NewFile>& outputs) {
  const SheetNotes notes = notes_of(report);
  const int pages = add_outputs(
      cut_stem(job), OutputOf::Sheet, job,
      {title_of(report), lay_out(run.printed, print, notes), run.printed, fonts}, outputs);
  if (!job.overlay) return pages;
  PrintOptions net = print;
  net.cut = CutStyle::Net;
  const PreviousVersion before{true_darts(run.fitted.pattern).pattern};
  add_outputs(output_stem(job) + "-overlay", OutputOf::Sheet, job,
              {title_of(report_of(run, net.cut)), lay_out(run.printed, net, notes, &before),
               run.printed, fonts},
              outputs);
  return pages;
}

RunSummary summary_of(const BlockRun& run) {
  RunSummary summary;
  summary.name = run.client.name;
  summary.unit = run.unit;
  for (const DartMeasure& dart : run.checks.darts) {
    summary.darts += (summary.darts.empty() ? "" : ", ") + name_text(dart.piece + "." + dart.name) +
                     " " + angle_text(dart.angle);
  }
  for (const MeasureBack& row : run.checks.measure_back) {
    const Measure off = abs(row.residual() - row.adjustment);
    if (!off.is_angle()) summary.residual = std::max(summary.residual, off.length());
  }
  return summary;
}

std::string steps_of(const Job& job, const BlockRun& run) {
  if (!job.steps) return "";
  return draft_steps_text(run.client.name + ", " + run.session.date, run.unit, run.block.log);
}

/// Writes the drawings; gives the pages of the PDF.
int write_drawings(const Job& job, const PrintOptions& print, const BlockRun& run, FileStore& files,
                   Report& report) {
  std::vector<NewFile> outputs;
  TextFonts fonts;
  const bool sheets = writes(job, OutputOf::Sheet);
  const int pages = sheets ? add_sheets(job, print, run, report, fonts, outputs) : 0;
  add_outputs(output_stem(job) + "-pattern", OutputOf::Pattern, job, {"", {}, run.printed, fonts},
              outputs);
  report.files = write_outputs(outputs, files);
  return pages;
}

JobResult done(const Job& job, FileStore& files) {
  judge(job);
  PrintOptions print = print_of(job);
  BlockRun run = fitted_block(block_source(job, files));
  if (!job.allowance && run.unit == Unit::Inch) print.allowance = kInchAllowance;
  if (!has_errors(run.problems)) make_pieces(job, files, run);
  Report report = report_of(run, print.cut);
  JobResult result;
  result.summary = summary_of(run);
  if (has_errors(run.problems)) {
    result.exit_code = 1;
  } else {
    result.summary.pages = write_drawings(job, print, run, files, report);
  }
  result.output = job.report == ReportKind::Json ? report_json(report)
                                                 : steps_of(job, run) + report_text(report);
  result.problems = report.problems;
  result.files = report.files;
  return result;
}

}  // namespace

JobResult run_job(const Job& job, FileStore& files) {
  return guarded(job.client, job.report, [&] { return done(job, files); });
}

}  // namespace blockwright
