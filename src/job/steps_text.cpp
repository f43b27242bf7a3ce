#include "steps_text.hpp"

#include "notes.hpp"

#include <fmt/format.h>

namespace blockwright {
namespace {

std::string told_in(const DraftStep& step, Unit unit) {
  std::string text = step.rule;
  for (std::size_t i = 0; i < step.lengths.size(); ++i) {
    const std::string mark = "{" + std::to_string(i) + "}";
    const std::size_t at = text.find(mark);
    if (at == std::string::npos) continue;
    text.replace(at, mark.size(), in_unit(step.lengths[i], unit) + " " + unit_name(unit));
  }
  return text;
}

}  // namespace

std::string steps_text(const BlockRun& run) {
  std::string text = "The draft with pencil, ruler and compass: " + run.client.name + ", " +
                     run.session.date + "\nPlaces are told as out from the centre line, up from " +
                     "the centre waist, in " + std::string(run.unit == Unit::Cm ? "cm" : "inches") +
                     ".\n";
  std::string piece;
  int number = 0;
  for (const DraftStep& step : run.block.log) {
    if (step.piece != piece) text += "\nHalf " + step.piece + "\n";
    piece = step.piece;
    text += fmt::format("{:>3}. {} (out {}, up {}): {}. [{}]\n", ++number, step.point,
                        in_unit(step.at.x, run.unit), in_unit(step.at.y, run.unit),
                        told_in(step, run.unit), step.closed_by);
  }
  return text + "\n";
}

}  // namespace blockwright
