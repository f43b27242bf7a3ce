#include "report_text.hpp"

#include "blockwright/base/number_text.hpp"
#include "fit_report.hpp"
#include "notes.hpp"

#include <fmt/format.h>

#include <cmath>

namespace blockwright {
namespace {

std::string number(MeasurementName name, double value, Unit unit) {
  if (info(name).kind == MeasurementKind::Angle) return fixed(value, 1) + "°";
  return in_unit(value, unit);
}

// Changes below this are not told, in mm.
constexpr double kSameLength = 1e-6;

/// Display width: fmt counts a degree sign as one column, which is right here.
std::string row(const std::string& name, const std::string& body, const std::string& ease,
                const std::string& pattern, const std::string& difference,
                const std::string& remark) {
  std::string line =
      fmt::format("  {:<26}{:>10}{:>10}{:>10}{:>12}", name, body, ease, pattern, difference);
  if (!remark.empty()) line += "  " + remark;
  return line + "\n";
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

/// "16.8°, 4.4 wide, leg 15.0".
std::string dart_line(const DartMeasure& dart, Unit unit) {
  return fixed(dart.angle.degrees(), 2) + "°, " + in_unit(dart.intake, unit) + " wide, leg " +
         in_unit(dart.leg, unit);
}

const DartMeasure* find(const std::vector<DartMeasure>& darts, const DartMeasure& like) {
  for (const DartMeasure& dart : darts) {
    if (dart.piece == like.piece && dart.name == like.name) return &dart;
  }
  return nullptr;
}

bool same(const DartMeasure& a, const DartMeasure& b) {
  return std::abs(a.intake - b.intake) < kSameLength && std::abs(a.leg - b.leg) < kSameLength;
}

/// Darts that a step changed, made or took away.
std::string dart_changes(const Pattern& before, const Pattern& after, Unit unit) {
  const auto was = measured_darts(before), is = measured_darts(after);
  std::string text;
  const auto line = [&](const DartMeasure& dart, const std::string& old, const std::string& now) {
    text += fmt::format("    {:<28}{} -> {}\n", as_words(dart.piece + " " + dart.name), old, now);
  };
  for (const DartMeasure& dart : was) {
    const DartMeasure* now = find(is, dart);
    if (now != nullptr && same(dart, *now)) continue;
    line(dart, dart_line(dart, unit), now == nullptr ? "closed" : dart_line(*now, unit));
  }
  for (const DartMeasure& dart : is) {
    if (find(was, dart) == nullptr) line(dart, "none", dart_line(dart, unit));
  }
  return text;
}

/// Edges that a step changed: cut along the open darts, and sewn with them closed.
std::string edge_changes(const Pattern& before, const Pattern& after, Unit unit) {
  std::string text;
  for (const Piece& piece : after.pieces) {
    for (const Edge& edge : piece.edges) {
      const double sewn = sewn_length(piece, edge), cut = length(edge.path);
      double was_cut = -1.0, was_sewn = -1.0;
      for (const Piece& old : before.pieces) {
        for (const Edge& one : old.edges) {
          if (old.name != piece.name || one.name != edge.name) continue;
          was_cut = length(one.path);
          was_sewn = sewn_length(old, one);
        }
      }
      if (std::abs(was_cut - cut) < kSameLength && std::abs(was_sewn - sewn) < kSameLength)
        continue;
      const std::string name = as_words(piece.name + " " + edge.name);
      if (was_cut < 0.0) {
        text += fmt::format("    {:<28}new, cut {}, sewn {}\n", name, in_unit(cut, unit),
                            in_unit(sewn, unit));
      } else {
        text += fmt::format("    {:<28}cut {} -> {}, sewn {} -> {}\n", name, in_unit(was_cut, unit),
                            in_unit(cut, unit), in_unit(was_sewn, unit), in_unit(sewn, unit));
      }
    }
  }
  return text;
}

std::string step_list(const BlockRun& run) {
  std::string text;
  const Pattern* before = &run.fitted.pattern;
  for (const StepDone& step : run.steps) {
    text += "\n" + step.words + " (" + unit_name(run.unit) + ")\n";
    text += dart_changes(*before, step.after, run.unit);
    text += edge_changes(*before, step.after, run.unit);
    before = &step.after;
  }
  return text;
}

std::string correction_list(const BlockRun& run) {
  if (run.corrections.empty()) return "";
  std::string text = "\nCorrections applied (`blockwright fit` tells what each does)\n";
  for (const NumberedCorrection& numbered : run.corrections) {
    text +=
        fmt::format("  {:>2}. {} ({}, toile {})\n", numbered.number,
                    correction_text(numbered.correction, run.unit), numbered.date, numbered.toile);
  }
  text += "\nLengths after them, darts closed, " + unit_name(run.unit) + "\n";
  for (const NamedLength& length : measured_edges(run.fitted.pattern)) {
    text += fmt::format("  {:<26}{:>10}\n", as_words(length.name), in_unit(length.mm, run.unit));
  }
  return text;
}

std::string faired_list(const BlockRun& run) {
  if (run.blended.empty()) return "";
  std::string text = "\nFaired across the closed darts\n";
  for (const BlendedEdge& f : run.blended) {
    text += fmt::format("  {:<26}a turn of {}° smoothed, the line moved {} mm at most\n",
                        as_words(f.piece + " " + f.edge), fixed(std::abs(f.kink.degrees()), 1),
                        fixed(f.moved, 1));
  }
  return text;
}

}  // namespace

std::string report_text(const BlockRun& run, const PrintOptions& print) {
  const std::string title = title_of(run, print) + "\n";
  const std::string end = faired_list(run) + problem_list(run) + closing(run, print);
  if (!run.steps.empty()) return title + step_list(run) + end;
  return title + "\n" + measure_back_table(run) + dart_table(run) + length_table(run) +
         correction_list(run) + end;
}

}  // namespace blockwright
