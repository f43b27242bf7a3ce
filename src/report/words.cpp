#include "blockwright/base/number_text.hpp"
#include "blockwright/base/printable.hpp"
#include "blockwright/measure/typed_correction.hpp"
#include "blockwright/report/report.hpp"

#include <fmt/format.h>

namespace blockwright {
namespace {

bool is_of_a_piece(std::string_view where) {
  const std::string_view piece = where.substr(0, where.find('.'));
  return piece.size() < where.size() && (piece.starts_with("front") || piece.starts_with("back")) &&
         where.find_first_not_of("abcdefghijklmnopqrstuvwxyz_. ") == std::string_view::npos;
}

/// "{0}", "{1}" ... of the rule are its lengths.
Wording rule_of(const DraftStep& step) {
  Wording rule;
  std::string rest = step.rule;
  for (std::size_t i = 0; i < step.lengths.size(); ++i) {
    const std::string mark = "{" + std::to_string(i) + "}";
    const std::size_t at = rest.find(mark);
    if (at == std::string::npos) continue;
    rule += rest.substr(0, at) + Length::mm(step.lengths[i]);
    rest.erase(0, at + mark.size());
  }
  return rule + rest;
}

}  // namespace

std::string title_of(const Report& report) {
  return printable(report.client + ", " + report.garment + ", " + report.cut + ", " +
                   report.session);
}

std::string words_of(MeasurementName name) { return name_text(info(name).key); }

std::string value_text(Measure value, Unit unit) {
  if (value.is_angle()) return angle_text(value.angle());
  return fmt::format("{} {}", number_text(value.length(), unit), unit_name(unit));
}

std::string amount_text(Length amount, Unit unit) {
  return unit == Unit::Cm ? trimmed(amount.cm(), 2) + " cm" : length_text(amount, unit);
}

std::vector<std::string> amount_lines(const Correction& correction, Unit unit) {
  std::vector<std::string> lines = {correction.given.empty() ? amount_text(correction.by, unit)
                                                             : correction.given};
  if (correction.as != AmountAs::Length) {
    lines.push_back(
        way_text(*find_correction_words(correction.action, correction.place), correction.as));
  }
  return lines;
}

std::string correction_text(const Correction& correction, Unit unit) {
  const std::vector<std::string> amount = amount_lines(correction, unit);
  std::string text = fmt::format("{} {} {}", name_text(correction.action),
                                 name_text(correction.place), amount.front());
  if (amount.size() > 1) text += " (" + amount.back() + ")";
  if (correction.side != BodySide::Both) {
    text += fmt::format(", {} side", side_word(correction.side));
  }
  return text;
}

std::string numbered_text(const NumberedCorrection& numbered, Unit unit) {
  const std::string before = numbered.before_new_tape
                                 ? fmt::format(", was {} until the newer tape",
                                               amount_text(*numbered.before_new_tape, unit))
                                 : "";
  return fmt::format("{:>2}. {} ({}, toile {}{})", numbered.number,
                     correction_text(numbered.correction, unit), numbered.date, numbered.toile,
                     before);
}

std::string written_text(const std::vector<std::string>& files) {
  if (files.empty()) return "\nNothing was written.\n";
  std::string text = "\nWritten\n";
  for (const std::string& file : files) text += "  " + shown_place(file) + "\n";
  return text;
}

std::string place_text(const std::string& where) {
  const bool is_name =
      where.find_first_not_of("abcdefghijklmnopqrstuvwxyz0123456789_.") == std::string::npos;
  return is_name || is_of_a_piece(where) ? name_text(where) : where;
}

std::string problem_text(Problem problem) {
  problem.where = place_text(problem.where);
  return to_text(problem);
}

std::string problem_list(const Problems& problems) {
  std::string text = problems.empty() ? "" : "\nWhat to look at\n";
  for (const Problem& problem : problems) text += "  " + problem_text(problem) + "\n";
  return text;
}

std::string draft_steps_text(const std::string& whose, Unit unit, const DraftLog& log) {
  std::string text = fmt::format(
      "The draft with pencil, ruler and compass: {}\nPositions: distance out from the "
      "centre line and up from the centre waist, in {}.\n",
      printable(whose), unit_word(unit));
  std::string piece;
  int number = 0;
  for (const DraftStep& step : log) {
    if (step.piece != piece) text += "\nHalf " + step.piece + "\n";
    piece = step.piece;
    text += fmt::format("{:>3}. {} (out {}, up {}): {}. [{}]\n", ++number, step.point,
                        number_text(Length::mm(step.at.x), unit),
                        number_text(Length::mm(step.at.y), unit), worded(rule_of(step), unit),
                        step.closed_by);
  }
  return text + "\n";
}

}  // namespace blockwright
