#include "report_text.hpp"

#include "blockwright/base/number_text.hpp"
#include "notes.hpp"

#include <fmt/format.h>

#include <cmath>

namespace blockwright {
namespace {

std::string number(MeasurementName name, double value, Unit unit) {
  if (info(name).kind == MeasurementKind::Angle) return fixed(value, 1) + "°";
  return in_unit(value, unit);
}

/// Display width: fmt counts a degree sign as one column, which is right here.
std::string row(const std::string& name, const std::string& body, const std::string& ease,
                const std::string& pattern, const std::string& difference,
                const std::string& remark) {
  std::string line =
      fmt::format("  {:<26}{:>10}{:>10}{:>10}{:>12}", name, body, ease, pattern, difference);
  if (!remark.empty()) line += "  " + remark;
  return line + "\n";
}

/// "back.waist_outer" as "back waist outer".
std::string as_words(std::string name) {
  for (char& c : name) c = c == '.' || c == '_' ? ' ' : c;
  return name;
}

std::string remark_of(const BlockRun& run, const MeasureBack& m) {
  std::string remark;
  if (m.source == Source::Estimated) {
    remark = "estimated ± " + number(m.name, run.body.measurements[m.name]->doubt, run.unit);
  }
  if (m.name == MeasurementName::SideLength) {
    remark += remark.empty() ? "" : "; ";
    remark += "its ease is the underarm drop";
  }
  if (std::abs(m.adjustment) >= 0.5) {
    remark += remark.empty() ? "" : "; ";
    remark += "gave way, see below";
  }
  return remark;
}

std::string measure_back_table(const BlockRun& run) {
  std::string text = row(run.unit == Unit::Cm ? "in cm" : "in inches", "body", "ease", "pattern",
                         "difference", "");
  for (const MeasureBack& m : run.checks.measure_back) {
    text += row(words_of(m.name), number(m.name, m.body, run.unit),
                number(m.name, m.ease, run.unit), number(m.name, m.pattern, run.unit),
                number(m.name, m.residual(), run.unit), remark_of(run, m));
  }
  return text;
}

std::string dart_table(const BlockRun& run) {
  std::string text = "\nDarts\n";
  for (const DartMeasure& dart : run.checks.darts) {
    text += fmt::format("  {:<26}{:>10} degrees{:>10} {} wide\n",
                        as_words(dart.piece + " " + dart.name), fixed(dart.angle.degrees(), 1),
                        in_unit(dart.intake, run.unit), unit_name(run.unit));
  }
  return text;
}

std::string length_table(const BlockRun& run) {
  std::string text = "\nLengths on the pieces, darts closed, " + unit_name(run.unit) + "\n";
  for (const NamedLength& length : run.checks.lengths) {
    text += fmt::format("  {:<26}{:>10}\n", as_words(length.name), in_unit(length.mm, run.unit));
  }
  return text;
}

std::string problem_list(const BlockRun& run) {
  if (run.problems.empty()) return "";
  std::string text = "\nWhat to look at\n";
  for (const Problem& problem : run.problems) text += "  " + to_text(problem) + "\n";
  return text;
}

std::string closing(const BlockRun& run, const PrintOptions& print) {
  if (run.files.empty()) return "\nNothing was written.\n";
  std::string text = "\nWritten\n";
  for (const std::string& file : run.files) text += "  " + file + "\n";
  text += "\nBefore cutting\n";
  for (const std::string& caution : notes_of(run, print).cautions) text += "  " + caution + "\n";
  return text;
}

}  // namespace

std::string report_text(const BlockRun& run, const PrintOptions& print) {
  return title_of(run, print) + "\n\n" + measure_back_table(run) + dart_table(run) +
         length_table(run) + problem_list(run) + closing(run, print);
}

}  // namespace blockwright
