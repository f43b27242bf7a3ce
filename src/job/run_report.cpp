#include "block_pass.hpp"
#include "blockwright/base/version.hpp"
#include "blockwright/garment/making.hpp"
#include "blockwright/measure/correction_table.hpp"
#include "cloth_lines.hpp"

#include <algorithm>
#include <set>
#include <utility>

namespace blockwright {
namespace {

LengthChange change_of(const MovedLength& moved) {
  LengthChange change{moved.name,  Length::mm(moved.before), Length::mm(moved.after), {}, {}, {},
                      moved.sample};
  if (const auto forecast = forecast_of(moved)) change.predicted = Length::mm(*forecast);
  return change;
}

Stage fitted_stage(const BlockRun& run) {
  Stage stage = stage_of("fitted", run.fitted.pattern);
  for (const Effect& effect : run.fitted.effects) stage.moved.push_back(change_of(run, effect));
  return stage;
}

Stage stage_after(std::string name, const Pattern& block, const std::vector<StepDone>& steps) {
  Stage stage = stage_of(std::move(name), steps.back().after);
  const Pattern* before = &block;
  for (const StepDone& step : steps) {
    stage.moved.push_back(change_between(*before, step.after));
    stage.moved.back().did = step.words;
    stage.moved.back().remarks = step.remarks;
    before = &step.after;
  }
  return stage;
}

Stage worn_stage(const BlockRun& run) {
  Stage stage = stage_of("worn", run.worn.pattern);
  stage.moved.push_back(change_between(run.fitted.pattern, run.worn.pattern));
  stage.moved.back().did = worn_words(run);
  stage.moved.back().remarks = run.worn.remarks;
  return stage;
}

std::vector<std::string> worded_lines(const std::vector<Wording>& lines, Unit unit) {
  std::vector<std::string> words;
  words.reserve(lines.size());
  for (const Wording& line : lines) words.push_back(worded(line, unit));
  return words;
}

Making making_in(const BlockRun& run) {
  const MakingOf making = making_of(run.printed);
  std::vector<std::string> to_buy = cloth_lines(run.printed, run.unit);
  for (const Wording& line : making.to_buy) to_buy.push_back(worded(line, run.unit));
  return {worded_lines(making.to_cut, run.unit), to_buy, worded_lines(making.to_sew, run.unit)};
}

const Effect* effect_of(const BlockRun& run, std::size_t correction) {
  for (const Effect& effect : run.fitted.effects) {
    const auto& all = effect.corrections;
    if (std::find(all.begin(), all.end(), correction) != all.end()) return &effect;
  }
  return nullptr;
}

FittingLine line_of(const BlockRun& run, const OrderedCorrection& ordered) {
  FittingLine line{run.corrections[ordered.correction], ordered, {}, 0, {}, {}};
  for (const std::size_t other : ordered.voids) line.voids.push_back(run.corrections[other]);
  const Effect* effect = effect_of(run, ordered.correction);
  if (effect == nullptr) return line;
  line.change = change_of(run, *effect);
  line.doubt = doubt_of(run, *effect);
  const std::size_t first = effect->corrections.front();
  if (first != ordered.correction) line.counted_with = run.corrections[first].number;
  return line;
}

/// Because of the corrections of the newest fitting that this toile has.
std::vector<std::string> looked_at_first(const Report& report) {
  std::vector<Correction> newest;
  for (const NumberedCorrection& one : report.corrections) {
    const NumberedCorrection& last = report.corrections.back();
    if (one.toile == last.toile && one.date == last.date) newest.push_back(one.correction);
  }
  return look_first(newest);
}

std::vector<std::string> next_toile(const std::vector<FittingLine>& lines) {
  std::set<CorrectionRow> rows;
  for (const FittingLine& line : lines) {
    rows.insert(line.order.look_at.begin(), line.order.look_at.end());
  }
  std::vector<std::string> texts;
  texts.reserve(rows.size());
  for (const CorrectionRow row : rows) {
    texts.push_back(std::string(fitting_row(row).name) + ": " + std::string(fitting_row(row).seen));
  }
  return texts;
}

/// The active corrections that a newer tape has left nothing of.
std::vector<NumberedCorrection> in_the_tape(const BlockRun& run) {
  std::vector<NumberedCorrection> left_out = active_corrections(run.client, run.before_toile);
  std::erase_if(left_out, [&](const NumberedCorrection& one) {
    return std::ranges::find(run.corrections, one.number, &NumberedCorrection::number) !=
           run.corrections.end();
  });
  return left_out;
}

}  // namespace

Change change_of(const BlockRun& run, const Effect& effect) {
  Change change;
  for (const std::size_t i : effect.corrections) {
    change.did += change.did.empty() ? "" : ", and ";
    change.did += correction_text(run.corrections[i].correction, run.unit);
  }
  for (const MovedLength& moved : effect.moved) change.lengths.push_back(change_of(moved));
  return change;
}

Report report_of(const BlockRun& run, CutStyle cut) {
  Report report{run.client.name,
                run.session.date,
                run.garment,
                std::string(cut_style_name(cut)),
                run.unit,
                run.body,
                run.checks.measure_back,
                run.corrections,
                {{"drafted", run.checks.lengths, run.checks.darts, {}}},
                run.blended,
                worded(run.problems, run.unit),
                {}};
  if (run.bands) {
    report.bands = run.bands;
    report.toile_allowance = toile_allowance(*run.bands, run.block.pattern);
  }
  if (!run.corrections.empty()) report.stages.push_back(fitted_stage(run));
  if (run.ease) report.stages.push_back(worn_stage(run));
  report.finished = finished_girths(run);
  if (!run.division.empty()) {
    report.stages.push_back(stage_after("divided", run.worn.pattern, run.division));
  }
  if (!run.steps.empty()) report.stages.push_back(stage_after("styled", run.divided, run.steps));
  if (cut == CutStyle::Garment) report.making = making_in(run);
  return report;
}

std::vector<EdgeNote> edge_notes_of(const BlockRun& run) {
  std::vector<EdgeNote> notes;
  for (const EdgeWords& one : making_of(run.printed).edges) {
    notes.push_back({one.edge.piece, one.edge.edge, worded(one.words, run.unit)});
  }
  return notes;
}

SheetNotes notes_of(const Report& report) {
  SheetNotes notes;
  notes.client = report.client;
  notes.garment = report.garment;
  notes.session = report.session;
  notes.version = version();
  notes.ease = ease_lines(report);
  notes.estimated = estimated_lines(report);
  notes.fitted = version_line(report);
  for (const NumberedCorrection& numbered : report.corrections) {
    const bool is_one = report.corrections.size() == 1;
    notes.corrections.push_back((is_one ? "" : std::to_string(numbered.number) + ". ") +
                                correction_text(numbered.correction, report.unit));
  }
  if (report.cut == cut_style_name(CutStyle::Toile)) notes.look_first = looked_at_first(report);
  notes.made = made_lines(report);
  notes.to_cut = report.making.to_cut;
  notes.to_buy = report.making.to_buy;
  notes.to_sew = report.making.to_sew;
  notes.cautions = caution_lines(report);
  notes.unit = report.unit;
  return notes;
}

FittingReport fitting_report_of(const BlockRun& run) {
  FittingReport report{run.client.name,
                       run.session.date,
                       run.unit,
                       {},
                       run.client.fittings,
                       {},
                       {},
                       {},
                       worded(run.problems, run.unit)};
  std::vector<Correction> corrections;
  for (const NumberedCorrection& one : run.corrections) corrections.push_back(one.correction);
  for (const OrderedCorrection& ordered : order_corrections(corrections)) {
    report.lines.push_back(line_of(run, ordered));
  }
  report.next_toile = next_toile(report.lines);
  for (const NumberedCorrection& one : numbered_corrections(run.client)) {
    if (one.correction.withdrawn) report.withdrawn.push_back(one);
  }
  report.in_the_tape = in_the_tape(run);
  return report;
}

}  // namespace blockwright
