#include "blockwright/report/words.hpp"

#include <fmt/format.h>

namespace blockwright {
namespace {

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

std::string draft_steps_text(const std::string& whose, Unit unit, const DraftLog& log) {
  std::string text = fmt::format(
      "The draft with pencil, ruler and compass: {}\nPositions: distance out from the "
      "centre line and up from the centre waist, in {}.\n",
      whose, unit_word(unit));
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
