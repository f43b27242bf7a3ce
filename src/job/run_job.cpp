#include "block_pass.hpp"
#include "blockwright/base/number_text.hpp"
#include "blockwright/block/kinds.hpp"
#include "blockwright/garment/allowances.hpp"
#include "blockwright/garment/opening.hpp"
#include "blockwright/geometry/path.hpp"
#include "blockwright/job/options.hpp"
#include "blockwright/report/report.hpp"
#include "blockwright/report/tape_report.hpp"
#include "blockwright/style/bust_dart.hpp"
#include "drawings.hpp"
#include "file_in_words.hpp"
#include "guarded.hpp"
#include "run_client.hpp"
#include "toile_number.hpp"

#include <algorithm>
#include <utility>

namespace blockwright {
namespace {

/// What moves said of the darts as they were then; the passes end with what they are.
Problems without_dart_widths(Problems remarks) {
  std::erase_if(remarks, [](const Problem& remark) {
    return remark.code == "dart.wide" || remark.code == "dart.narrow";
  });
  return remarks;
}

/// None for a draft.
Style style_of(const Job& job, FileStore& files) {
  if (job.command == Command::Draft) return {};
  return job.command == Command::Pivot ? style_of_moves(job)
                                       : read_style(files.read(job.style), job.style);
}

/// A refusal of a step is in the person's unit.
StyledPattern stepped(const Pattern& pattern, const Style& style, BlockRun& run) {
  try {
    const SidePlaces sides = side_places({run.block.pattern, run.worn.pattern});
    StyledPattern pieces = apply_style(pattern, style, cup_of(run.body), sides);
    for (StepDone& step : pieces.steps) {
      step.remarks = without_unseen(std::move(step.remarks), run.unit);
      add(run.problems, without_dart_widths(step.remarks));
    }
    return pieces;
  } catch (const InputError& error) {
    throw InputError(worded(error.problem(), run.unit));
  }
}

Problem divided(const Pattern& block, const PivotMove& move) {
  const std::string piece = move.dart.substr(0, move.dart.find('.'));
  const Dart& whole = dart_on(block.piece(piece), BlockEdge::Shoulder);
  return {Severity::Note, "dart.divided", move.dart,
          "it is " + angle_text(whole.angle()) + " and " + Length::mm(whole.intake()) +
              " at the mouth, too wide to sew in one: " + angle_text(*move.angle) +
              " of it go to the side seam",
          "for one dart draft with --one-bust-dart, or move it where you like with pivot"};
}

/// A bust dart too wide to sew in one becomes two. Where the side has no room it stays one, and
/// hard_to_sew() says so.
void divide_bust_dart(BlockRun& run) {
  try {
    const Style division = bust_dart_division({run.block.pattern, run.worn.pattern});
    StyledPattern pieces = stepped(run.worn.pattern, division, run);
    run.divided = std::move(pieces.pattern);
    run.division = std::move(pieces.steps);
    for (const StyleStep& step : division.steps) {
      if (const auto* move = std::get_if<PivotMove>(&step)) {
        run.problems.push_back(divided(run.worn.pattern, *move));
      }
    }
  } catch (const InputError&) {
    return;
  }
}

WearerSize wearer_of(const Body& body) {
  using enum MeasurementName;
  return {body.length(BustGirth).mm(), body.length(HipGirth).mm()};
}

/// The ease that the style is worn with, a wide bust dart made two, the style's steps on the block,
/// and what must hold of the pieces after them; then the last step before printing, trueing the
/// darts.
void make_pieces(const Job& job, FileStore& files, BlockRun& run) {
  const Style style = style_of(job, files);
  if (!style.name.empty()) run.garment = style.name;
  wear(run, style);
  run.divided = run.worn.pattern;
  if (!job.one_bust_dart && !moves_bust_dart(style)) divide_bust_dart(run);
  StyledPattern pieces = stepped(run.divided, style, run);
  run.made = std::move(pieces.pattern);
  run.steps = std::move(pieces.steps);
  add(run.problems, without_unseen(hard_to_sew(run.made), run.unit));
  add(run.problems, getting_in(run.made, wearer_of(run.body)));
  true_for_paper(run);
}

/// The pieces, and with an overlay the net pieces over the block. Gives back the pages of the
/// pieces' PDF.
int add_sheets(const Job& job, const PrintOptions& print, const BlockRun& run, const Report& report,
               TextFonts& fonts, std::vector<NewFile>& outputs) {
  SheetNotes notes = notes_of(report);
  notes.edge_notes = edge_notes_of(run);
  const int pages = add_outputs(
      cut_stem(job, print.cut), OutputOf::Sheet, job,
      {title_of(report), lay_out(run.printed, print, notes), run.printed, fonts}, outputs);
  if (!job.overlay) return pages;
  PrintOptions net = print;
  net.cut = CutStyle::Net;
  const PreviousVersion before{true_darts(run.divided).pattern};
  add_outputs(output_stem(job) + "-overlay", OutputOf::Sheet, job,
              {title_of(report_of(run, net.cut)), lay_out(run.printed, net, notes, &before),
               run.printed, fonts},
              outputs);
  return pages;
}

BlockBands bands_of(const BlockRun& run) {
  return block_bands(run.body, spread_of(run.body), Ease::of(run.client), run.block);
}

/// The block as drafted, with the bands of its lines. It is no piece to cut.
void add_bands(const Job& job, const PrintOptions& print, const BlockRun& run, const Report& report,
               TextFonts& fonts, std::vector<NewFile>& outputs) {
  PrintOptions net = print;
  net.cut = CutStyle::Net;
  SheetNotes notes = notes_of(report);
  notes.to_look_at = "how far the lines could be off, not for cutting";
  notes.versions = {"black: the block as drafted",
                    "between the grey dotted lines: 19 times of 20 her own line lies there"};
  notes.corrections = notes.made = {};
  notes.fitted = "";
  const Pattern block = true_darts(run.block.pattern).pattern;
  add_outputs(
      output_stem(job) + "-bands", OutputOf::Sheet, job,
      {title_of(report), lay_out(block, net, notes, nullptr, run.bands->edges), block, fonts},
      outputs);
}

RunSummary summary_of(const BlockRun& run) {
  RunSummary summary;
  summary.name = run.client.name;
  summary.unit = run.unit;
  const TapeCounts counts = counts_of(run.body);
  summary.taken = counts.taken;
  summary.estimated = counts.estimated;
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

/// How a drafter divides the bust dart, with shears; empty where it is one.
std::string dividing_text(const Piece& piece, Unit unit) {
  const Dart* shoulder = find_dart_on(piece, BlockEdge::Shoulder);
  const Dart* at_side = find_dart_on(piece, BlockEdge::Side);
  if (!is_a(piece, kBodiceFront) || shoulder == nullptr || at_side == nullptr) return "";
  const Edge& side = part_of(piece, BlockEdge::Side);
  const double mouth = closed_from_cut(piece, side, nearest(side.path, at_side->legs[0]).along);
  const Wording text =
      "At last, on the " + name_text(piece.name) + ": cut from the side seam, " +
      Length::mm(sewn_length(piece, side) - mouth) +
      " below the underarm, to the bust point, and close the shoulder dart until its mouth is " +
      Length::mm(shoulder->intake()) + " wide. The side opens by " + Length::mm(at_side->intake()) +
      ".\n\n";
  return worded(text, unit);
}

std::string steps_of(const Job& job, const BlockRun& run) {
  if (!job.steps) return "";
  std::string text = draft_steps_text(run.client.name + ", " + run.session.date, run.unit,
                                      draft_steps(run.body, Ease::of(run.client)));
  for (const Piece& piece : run.made.pieces) text += dividing_text(piece, run.unit);
  return text;
}

/// Writes the drawings; gives the pages of the PDF.
int write_drawings(const Job& job, const PrintOptions& print, const BlockRun& run, FileStore& files,
                   Report& report) {
  std::vector<NewFile> outputs;
  TextFonts fonts;
  const bool sheets = writes(job, OutputOf::Sheet);
  const int pages = sheets ? add_sheets(job, print, run, report, fonts, outputs) : 0;
  if (sheets && run.bands) add_bands(job, print, run, report, fonts, outputs);
  add_outputs(output_stem(job) + "-pattern", OutputOf::Pattern, job, {"", {}, run.printed, fonts},
              outputs);
  report.files = write_outputs(outputs, files);
  return pages;
}

JobResult done(const Job& job, FileStore& files) {
  judge(job);
  PrintOptions print = print_of(job);
  const std::vector<Preparation> writers = prepare_writers(job);
  BlockRun run = fitted_block(block_source(job, files));
  if (!job.allowance && run.unit == Unit::Inch) print.allowance = kInchAllowance;
  if (!has_errors(run.problems)) make_pieces(job, files, run);
  if (!has_errors(run.problems)) print.cut = cut_of(job, is_finished(run.printed));
  if (!has_errors(run.problems) && job.bands) run.bands = bands_of(run);
  Report report = report_of(run, print.cut);
  report.allowance = print.allowance;
  JobResult result;
  result.summary = summary_of(run);
  if (has_errors(run.problems)) {
    result.exit_code = 1;
  } else {
    result.summary.pages = write_drawings(job, print, run, files, report);
  }
  if (job.report == ReportKind::Text) report.problems = with_file(report.problems, job.client);
  result.output = job.report == ReportKind::Json ? report_json(report)
                                                 : steps_of(job, run) + report_text(report);
  result.problems = report.problems;
  result.files = report.files;
  return result;
}

}  // namespace

JobResult run_client(const Job& job, FileStore& files) {
  return guarded(job.client, job.report, job.places, [&] { return done(job, files); });
}

JobResult run_job(const Job& job, FileStore& files) {
  return guarded(job.client, job.report, job.places, [&] {
    judge(job);
    if (job.toile > 0) {
      judge_toile(job.toile, client_in(files.read(job.client), job), "--toile");
    }
    return done(job, files);
  });
}

}  // namespace blockwright
