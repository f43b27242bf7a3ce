#include "blockwright/report/report.hpp"

#include <fmt/format.h>

#include <algorithm>

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

}  // namespace

std::vector<std::string> ease_lines(const Report& report) {
  std::vector<std::string> lines;
  for (const MeasureBack& row : report.measure_back) {
    if (row.ease.number() == 0.0 || row.name == MeasurementName::SideLength) continue;
    lines.push_back(words_of(row.name) + (row.ease.number() > 0.0 ? " +" : " ") +
                    value_text(row.ease, report.unit));
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
    if (!styled && stage.name != "divided") continue;
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
    lines.push_back("Look first: " + name_text(problem.where) + ": " +
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
