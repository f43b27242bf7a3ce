#include "blockwright/base/number_text.hpp"
#include "blockwright/report/report.hpp"
#include "blockwright/report/tape_report.hpp"

#include <fmt/format.h>

#include <cmath>

namespace blockwright {
namespace {

// An adjustment of less is not worth a remark, in mm or degrees.
constexpr double kGaveWay = 0.5;

std::string cell(Measure value, Unit unit) {
  return value.is_angle() ? angle_text(value.angle()) : number_text(value.length(), unit);
}

Measure printed(Measure value, Unit unit) {
  constexpr double tenths = 10.0;
  if (!value.is_angle()) return as_printed(value.length(), unit);
  return Measure::degrees(std::round(value.number() * tenths) / tenths);
}

std::string remark_of(const Report& report, const MeasureBack& m) {
  std::vector<std::string> remarks;
  if (m.source == Source::Estimated) {
    const BodyMeasurement& estimate = *report.body.measurements[m.name];
    remarks.push_back("estimated ± " + cell(estimate.doubt, report.unit) +
                      (estimate.extrapolated ? ", beyond the survey" : ""));
  }
  if (m.name == MeasurementName::SideLength) remarks.emplace_back("its ease is the underarm drop");
  if (std::abs(m.adjustment.number()) >= kGaveWay) remarks.emplace_back("gave way, see below");
  return remarks.empty() ? "" : fmt::format("  {}", fmt::join(remarks, "; "));
}

std::string measure_back_table(const Report& report) {
  std::string text = fmt::format("  {:<26}{:>10}{:>10}{:>10}{:>12}\n",
                                 fmt::format("in {}", unit_word(report.unit)), "body", "ease",
                                 "pattern", "difference");
  for (const MeasureBack& m : report.measure_back) {
    const auto number = [&](Measure value) { return cell(value, report.unit); };
    Measure pattern = printed(m.body, report.unit);  // as the columns before it add up
    for (const Measure part : {m.ease, m.residual()}) {
      pattern += printed(part, report.unit);
    }
    text +=
        fmt::format("  {:<26}{:>10}{:>10}{:>10}{:>12}{}\n", words_of(m.name), number(m.body),
                    number(m.ease), number(pattern), number(m.residual()), remark_of(report, m));
  }
  return text;
}

std::string dart_name(const DartMeasure& dart) { return name_text(dart.piece + "." + dart.name); }

std::string dart_table(const Report& report, const Stage& stage) {
  std::string text = "\nDarts\n";
  for (const DartMeasure& dart : stage.darts) {
    text += fmt::format("  {:<26}{:>10} degrees{:>10} {} wide\n", dart_name(dart),
                        fixed(dart.angle.degrees(), 1),
                        number_text(Length::mm(dart.intake), report.unit), unit_name(report.unit));
  }
  return text;
}

/// A whole length that two pieces make is what their printed lengths add up to: "armhole" of
/// "front.armhole" and "back.armhole", "neckline" of both halves of the body.
Length printed_length(const std::vector<NamedLength>& lengths, const NamedLength& whole,
                      Unit unit) {
  double sum = 0.0;
  Length shown;
  for (const NamedLength& part : lengths) {
    if (!part.name.ends_with("." + whole.name)) continue;
    sum += part.mm;
    shown += as_printed(Length::mm(part.mm), unit);
  }
  return sum > 0.0 ? std::round(whole.mm / sum) * shown : Length::mm(whole.mm);
}

std::string length_table(const Report& report, const Stage& stage, const std::string& title) {
  std::string text = fmt::format("\n{}, darts closed, {}\n", title, unit_name(report.unit));
  for (const NamedLength& length : stage.lengths) {
    const Length shown = printed_length(stage.lengths, length, report.unit);
    text +=
        fmt::format("  {:<26}{:>10}\n", name_text(length.name), number_text(shown, report.unit));
  }
  return text;
}

/// "16.8°, 4.4 wide, leg 15.0".
std::string dart_line(const DartMeasure& dart, Unit unit) {
  return fmt::format("{}, {} wide, leg {}", angle_text(dart.angle, 2),
                     number_text(Length::mm(dart.intake), unit),
                     number_text(Length::mm(dart.leg), unit));
}

std::string change_line(const DartChange& change, Unit unit) {
  return fmt::format("    {:<28}{} -> {}\n",
                     dart_name(change.before ? *change.before : *change.after),
                     change.before ? dart_line(*change.before, unit) : "none",
                     change.after ? dart_line(*change.after, unit) : "closed");
}

std::string change_line(const LengthChange& change, Unit unit) {
  const auto number = [&](Length length) { return number_text(length, unit); };
  const std::string name = name_text(change.name);
  if (!change.before) {
    return fmt::format("    {:<28}new, cut {}, sewn {}\n", name, number(*change.cut_after),
                       number(*change.after));
  }
  return fmt::format("    {:<28}cut {} -> {}, sewn {} -> {}\n", name, number(*change.cut_before),
                     number(*change.cut_after), number(*change.before), number(*change.after));
}

/// What the steps of a stage did; empty where there is no such stage.
std::string step_list(const Report& report, std::string_view name) {
  std::string text;
  const Stage* stage = find_named(report.stages, name);
  if (stage == nullptr) return text;
  for (const Change& step : stage->moved) {
    text += fmt::format("\n{} ({})\n", worded(step.did, report.unit), unit_name(report.unit));
    for (const DartChange& change : step.darts) text += change_line(change, report.unit);
    for (const LengthChange& change : step.lengths) text += change_line(change, report.unit);
  }
  return text;
}

std::string correction_list(const Report& report, const Stage& fitted) {
  std::string text = "\nCorrections applied (`blockwright fit` shows what each does)\n";
  for (const NumberedCorrection& numbered : report.corrections) {
    text += "  " + numbered_text(numbered, report.unit) + "\n";
  }
  return text + length_table(report, fitted, "Lengths after them");
}

/// What the girths are made up of; they add up as printed. Empty without an ease of the style's.
std::string finished_table(const Report& report) {
  if (report.finished.empty()) return "";
  std::string text = fmt::format("\nFinished girths\n  {:<26}{:>10}{:>10}{:>13}{:>10}\n",
                                 fmt::format("in {}", unit_word(report.unit)), "body", "ease",
                                 "corrections", "finished");
  for (const FinishedGirth& girth : report.finished) {
    const Length ease = girth.ease + girth.own_ease;
    Length finished;
    for (const Length part : {girth.body, ease, girth.corrections}) {
      finished += as_printed(part, report.unit);
    }
    const auto number = [&](Length length) { return number_text(length, report.unit); };
    const bool own = number(girth.own_ease) != number(Length());
    text += fmt::format(
        "  {:<26}{:>10}{:>10}{:>13}{:>10}{}\n", words_of(girth.name), number(girth.body),
        number(ease), number(girth.corrections), number(finished),
        own ? "  her own ease is " + change_text(girth.own_ease, report.unit) + " of it" : "");
  }
  return text;
}

/// The pieces as drafted and fitted, or where a style was made of them, what its steps did.
std::string stage_texts(const Report& report) {
  std::string steps = finished_table(report);
  for (const char* stage : {"worn", "divided", "styled"}) steps += step_list(report, stage);
  if (find_named(report.stages, "styled") != nullptr) return steps;
  const Stage& drafted = report.stages.front();
  std::string text = "\n" + measure_back_table(report) + dart_table(report, drafted) +
                     length_table(report, drafted, "Lengths on the pieces");
  const Stage* fitted = find_named(report.stages, "fitted");
  if (fitted != nullptr) text += correction_list(report, *fitted);
  return text + steps;
}

std::string blended_list(const Report& report) {
  std::string text = report.blended.empty() ? "" : "\nBlended across the closed darts\n";
  for (const BlendedEdge& seam : report.blended) {
    text += fmt::format("  {:<26}a turn of {} smoothed, the line moved {} at most\n",
                        name_text(seam.piece + "." + seam.edge),
                        angle_text(seam.kink < Angle() ? -seam.kink : seam.kink),
                        length_text(Length::mm(seam.moved), report.unit));
  }
  return text;
}

std::string making_list(const std::string& heading, const std::vector<std::string>& lines) {
  std::string text = lines.empty() ? "" : "\n" + heading + "\n";
  for (const std::string& line : lines) text += "  " + line + "\n";
  return text;
}

std::string making_lists(const Report& report) {
  const Making& making = report.making;
  std::vector<std::string> steps;
  for (const std::string& line : making.to_sew) {
    steps.push_back(fmt::format("{:>2}. {}", steps.size() + 1, line));
  }
  return making_list("To cut", making.to_cut) + making_list("To buy", making.to_buy) +
         making_list("To sew", steps);
}

std::string closing(const Report& report) {
  if (report.files.empty()) return written_text(report.files);
  return written_text(report.files) +
         fmt::format("\nBefore cutting\n  {}\n", fmt::join(caution_lines(report), "\n  "));
}

}  // namespace

std::string report_text(const Report& report) {
  return title_of(report) + "\n" + counts_text(counts_of(report.body)) + "\n" +
         stage_texts(report) + blended_list(report) + making_lists(report) +
         (report.bands ? bands_text(report) : "") + problem_list(report.problems) + closing(report);
}

}  // namespace blockwright
