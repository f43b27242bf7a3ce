#include "run_report.hpp"

#include "blockwright/base/version.hpp"
#include "blockwright/report/words.hpp"

#include <utility>

namespace blockwright {
namespace {

LengthChange change_of(const MovedLength& moved) {
  LengthChange change{moved.name,  Length::mm(moved.before), Length::mm(moved.after), {}, {}, {},
                      moved.sample};
  if (moved.predicted) change.predicted = Length::mm(*moved.predicted);
  return change;
}

Stage fitted_stage(const BlockRun& run) {
  Stage stage = stage_of("fitted", run.fitted.pattern);
  for (const Effect& effect : run.fitted.effects) stage.moved.push_back(change_of(run, effect));
  return stage;
}

Stage styled_stage(const BlockRun& run) {
  Stage stage = stage_of("styled", run.made);
  const Pattern* before = &run.fitted.pattern;
  for (const StepDone& step : run.steps) {
    stage.moved.push_back(change_between(*before, step.after));
    stage.moved.back().did = step.words;
    stage.moved.back().remarks = step.remarks;
    before = &step.after;
  }
  return stage;
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
  if (!run.corrections.empty()) report.stages.push_back(fitted_stage(run));
  if (!run.steps.empty()) report.stages.push_back(styled_stage(run));
  return report;
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
    notes.corrections.push_back(correction_text(numbered.correction, report.unit));
  }
  notes.made = made_lines(report);
  notes.cautions = caution_lines(report);
  notes.unit = report.unit;
  return notes;
}

}  // namespace blockwright
