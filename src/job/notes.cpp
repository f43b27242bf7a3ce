#include "notes.hpp"

#include "blockwright/base/number_text.hpp"
#include "blockwright/base/version.hpp"
#include "fit_report.hpp"

#include <algorithm>

namespace blockwright {
namespace {

/// Common practice, no source.
const std::vector<std::string>& cautions() {
  static const std::vector<std::string> lines = {
      "Print at 100 %, no scaling. Measure both test squares before you cut anything.",
      "Sew a toile and fit it on the body before you cut good cloth.",
      "The fitter's eye on the body is right where it disagrees with this paper.",
  };
  return lines;
}

/// What the checks warn of, so that it does not stay behind on the screen.
std::vector<std::string> warning_lines(const BlockRun& run) {
  std::vector<std::string> lines;
  for (const Problem& problem : run.problems) {
    if (problem.severity != Severity::Warning) continue;
    std::string where = problem.where;
    std::replace(where.begin(), where.end(), '_', ' ');
    lines.push_back("Look first: " + where + ": " + problem.message + ".");
  }
  return lines;
}

/// Each fitting that left corrections makes a new version of the block; the first has none.
std::string fitted_line(const BlockRun& run) {
  if (run.corrections.empty()) return "";
  int version = 1;
  std::string last;
  for (const NumberedCorrection& numbered : run.corrections) {
    const std::string fitting = "toile " + std::to_string(numbered.toile) + " of " + numbered.date;
    if (fitting != last) ++version;
    last = fitting;
  }
  return "version " + std::to_string(version) + ", " + last;
}

/// The style's name, its steps, and what each of them asks of the sewer.
std::vector<std::string> made_lines(const BlockRun& run) {
  std::vector<std::string> lines;
  if (run.steps.empty()) return lines;
  lines.push_back(run.garment + ":");
  for (const StepDone& step : run.steps) {
    lines.push_back(step.words);
    for (const Problem& remark : step.remarks) {
      if (remark.severity != Severity::Note) continue;
      lines.push_back("  " + remark.where + ": " + remark.message +
                      (remark.hint.empty() ? "" : "; " + remark.hint));
    }
  }
  for (std::string& line : lines) std::replace(line.begin(), line.end(), '_', ' ');
  return lines;
}

std::vector<std::string> ease_lines(const BlockRun& run) {
  std::vector<std::string> lines;
  for (const MeasureBack& row : run.checks.measure_back) {
    if (row.ease == 0.0 || row.name == MeasurementName::SideLength) continue;
    const std::string sign = row.ease > 0.0 ? "+" : "";
    lines.push_back(words_of(row.name) + " " + sign + value_text(row.name, row.ease, run.unit));
  }
  return lines;
}

std::vector<std::string> estimated_lines(const BlockRun& run) {
  std::vector<std::string> lines;
  for (const MeasureBack& row : run.checks.measure_back) {
    if (row.source != Source::Estimated) continue;
    const double doubt = run.body.measurements[row.name]->doubt;
    lines.push_back(words_of(row.name) + " " + value_text(row.name, row.body, run.unit) + " ± " +
                    value_text(row.name, doubt, run.unit));
  }
  return lines;
}

}  // namespace

std::string unit_name(Unit unit) { return unit == Unit::Cm ? "cm" : "in"; }

std::string in_unit(double mm, Unit unit) {
  return unit == Unit::Cm ? fixed(mm / 10.0, 1) : inch_fraction(mm / 25.4);
}

std::string as_words(std::string name) {
  for (char& c : name) c = c == '.' || c == '_' ? ' ' : c;
  return name;
}

std::string words_of(MeasurementName name) {
  std::string words(info(name).key);
  std::replace(words.begin(), words.end(), '_', ' ');
  return words;
}

std::string value_text(MeasurementName name, double value, Unit unit) {
  if (info(name).kind == MeasurementKind::Angle) return fixed(value, 1) + "°";
  return in_unit(value, unit) + " " + unit_name(unit);
}

std::string title_of(const BlockRun& run, const PrintOptions& print) {
  return run.client.name + ", " + run.garment + ", " + std::string(cut_style_name(print.cut)) +
         ", " + run.session.date;
}

SheetNotes notes_of(const BlockRun& run, const PrintOptions&) {
  SheetNotes notes;
  notes.client = run.client.name;
  notes.garment = run.garment;
  notes.session = run.session.date;
  notes.version = version();
  notes.ease = ease_lines(run);
  notes.estimated = estimated_lines(run);
  notes.fitted = fitted_line(run);
  for (const NumberedCorrection& numbered : run.corrections) {
    notes.corrections.push_back(correction_text(numbered.correction, run.unit));
  }
  notes.made = made_lines(run);
  notes.cautions = warning_lines(run);
  notes.cautions.insert(notes.cautions.end(), cautions().begin(), cautions().end());
  notes.unit = run.unit == Unit::Inch ? PaperUnit::Inch : PaperUnit::Cm;
  return notes;
}

}  // namespace blockwright
