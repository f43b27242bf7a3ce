#include "blockwright/report/report.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <optional>

namespace blockwright {
namespace {

std::string spaced(std::string text) {
  std::replace(text.begin(), text.end(), '_', ' ');
  return text;
}

/// What a step's note asks of the sewer: "  front waist: ease it in there".
std::string remark_line(const Problem& remark, Unit unit) {
  const std::string hint = worded(remark.hint, unit);
  return "  " + name_text(remark.where) + ": " + worded(remark.message, unit) +
         (hint.empty() ? "" : "; " + hint);
}

/// Of a garment with an ease of its own the block's is no longer true of what that moves.
bool is_moved_by_ease(MeasurementName name) {
  using enum MeasurementName;
  return name == UpperChestGirth || name == ArmscyeGirth || name == FrontBustWidth;
}

/// The ease of a measurement on the paper; nothing where there is none to be told.
std::optional<Measure> ease_on_paper(const Report& report, const MeasureBack& row) {
  const auto girth = std::ranges::find(report.finished, row.name, &FinishedGirth::name);
  if (girth != report.finished.end()) return Measure(girth->ease + girth->own_ease);
  if (!report.finished.empty() && is_moved_by_ease(row.name)) return std::nullopt;
  return row.ease;
}

}  // namespace

std::vector<std::string> ease_lines(const Report& report) {
  std::vector<std::string> lines;
  for (const MeasureBack& row : report.measure_back) {
    const std::optional<Measure> ease = ease_on_paper(report, row);
    if (!ease || ease->number() == 0.0 || row.name == MeasurementName::SideLength) continue;
    lines.push_back(words_of(row.name) + (ease->number() > 0.0 ? " +" : " ") +
                    value_text(*ease, report.unit));
  }
  return lines;
}

std::vector<std::string> estimated_lines(const Report& report) {
  std::vector<std::string> lines;
  for (const MeasureBack& row : report.measure_back) {
    if (row.source != Source::Estimated) continue;
    const BodyMeasurement& estimate = *report.body.measurements[row.name];
    lines.push_back(words_of(row.name) + " " + value_text(row.body, report.unit) + " ± " +
                    value_text(estimate.doubt, report.unit) +
                    (estimate.extrapolated ? " (beyond the survey)" : ""));
  }
  return lines;
}

std::string version_line(const Report& report) {
  int version = 1;
  std::string last;
  for (const NumberedCorrection& numbered : report.corrections) {
    const std::string fitting = fmt::format("toile {} of {}", numbered.toile, numbered.date);
    if (fitting != last) ++version;
    last = fitting;
  }
  return last.empty() ? "" : fmt::format("version {}, {}", version, last);
}

std::vector<std::string> made_lines(const Report& report) {
  std::vector<std::string> lines;
  for (const Stage& stage : report.stages) {
    const bool styled = stage.name == "styled";
    if (!styled && stage.name != "worn" && stage.name != "divided") continue;
    if (styled) lines.push_back(report.garment + ":");
    for (const Change& step : stage.moved) {
      lines.push_back(spaced(worded(step.did, report.unit)));
      for (const Problem& remark : step.remarks) {
        if (remark.severity == Severity::Note) lines.push_back(remark_line(remark, report.unit));
      }
    }
  }
  return lines;
}

std::vector<std::string> caution_lines(const Report& report) {
  std::vector<std::string> lines;
  for (const Problem& problem : report.problems) {
    if (problem.severity != Severity::Warning) continue;
    lines.push_back("Look first: " + place_text(problem.where) + ": " +
                    worded(problem.message, report.unit) + ".");
  }
  // Common practice, no source.
  for (const char* line :
       {"Print at 100 %, no scaling. Measure both test squares before you cut anything.",
        "Sew a toile and fit it on the body before you cut good cloth.",
        "The fitter's eye on the body is right where it disagrees with this paper."}) {
    lines.emplace_back(line);
  }
  return lines;
}

}  // namespace blockwright
