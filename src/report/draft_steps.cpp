#include "blockwright/report/draft_steps.hpp"

#include <fmt/format.h>

namespace blockwright {

std::string draft_steps_text(const std::string& whose, Unit unit,
                             const std::vector<DraftInstruction>& steps) {
  std::string text = fmt::format(
      "The draft with pencil, ruler and compass: {}\nPositions: distance out from the "
      "centre line and up from the centre waist, in {}.\n",
      whose, unit_word(unit));
  std::string piece;
  int number = 0;
  for (const DraftInstruction& step : steps) {
    if (step.piece != piece) text += "\nHalf " + step.piece + "\n";
    piece = step.piece;
    text += fmt::format("{:>3}. {} (out {}, up {}): {}. [{}]\n", ++number, step.point,
                        number_text(step.out, unit), number_text(step.up, unit),
                        worded(step.rule, unit), step.closed_by);
  }
  return text + "\n";
}

}  // namespace blockwright
