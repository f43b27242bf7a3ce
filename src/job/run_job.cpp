#include "block_pass.hpp"
#include "blockwright/base/error.hpp"
#include "blockwright/base/number_text.hpp"
#include "blockwright/files/safe_name.hpp"
#include "blockwright/job/options.hpp"
#include "blockwright/report/words.hpp"
#include "drawings.hpp"
#include "guarded.hpp"
#include "output_stem.hpp"
#include "run_report.hpp"
#include "wishes.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

namespace blockwright {
namespace {

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
  if (moves_darts(job)) {
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

/// The pieces, and with an overlay the net pieces over the block.
void add_sheets(const Job& job, const PrintOptions& print, const BlockRun& run,
                const Report& report, std::vector<OutputFile>& outputs) {
  const SheetNotes notes = notes_of(report);
  TextFonts fonts;
  add_outputs(cut_stem(job), OutputOf::Sheet, job,
              {title_of(report), lay_out(run.printed, print, notes), run.printed, fonts}, outputs);
  if (!job.overlay) return;
  PrintOptions net = print;
  net.cut = CutStyle::Net;
  const PreviousVersion before{true_darts(run.fitted.pattern).pattern};
  add_outputs(output_stem(job) + "-overlay", OutputOf::Sheet, job,
              {title_of(report_of(run, net.cut)), lay_out(run.printed, net, notes, &before),
               run.printed, fonts},
              outputs);
}

/// The finished files, complete in memory.
std::vector<OutputFile> drawn_files(const Job& job, const PrintOptions& print, const BlockRun& run,
                                    const Report& report) {
  std::vector<OutputFile> outputs;
  if (writes(job, OutputOf::Sheet)) add_sheets(job, print, run, report, outputs);
  TextFonts fonts;
  add_outputs(output_stem(job) + "-pattern", OutputOf::Pattern, job, {"", {}, run.printed, fonts},
              outputs);
  return outputs;
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
    summary.residual = std::max(summary.residual, std::abs(row.residual() - row.adjustment));
  }
  return summary;
}

/// What a person who works in inches leaves round a toile where she asked for nothing: a round
/// fraction near 20 mm. Ours.
constexpr Length kInchAllowance = Length::inches(0.75);

/// Writes the drawings; gives the pages of the PDF.
int write_drawings(const Job& job, const PrintOptions& print, const BlockRun& run, FileStore& files,
                   Report& report) {
  std::vector<OutputFile> outputs = drawn_files(job, print, run, report);
  int pages = 0;
  for (const OutputFile& output : outputs) pages = pages == 0 ? output.pages : pages;
  report.files = write_outputs(std::move(outputs), files);
  return pages;
}

JobResult done(const Job& job, FileStore& files) {
  judge(job);
  PrintOptions print = print_of(job);
  BlockRun run = fitted_block(job, files);
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
  result.output = job.report == ReportKind::Json
                      ? report_json(report)
                      : (job.steps ? draft_steps_of(run) : "") + report_text(report);
  result.problems = report.problems;
  result.files = report.files;
  return result;
}

}  // namespace

JobResult run_job(const Job& job, FileStore& files) {
  return guarded(job.client, job.report, [&] { return done(job, files); });
}

}  // namespace blockwright
