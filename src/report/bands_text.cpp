#include "blockwright/base/number_text.hpp"
#include "blockwright/report/report.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace blockwright {
namespace {

std::string band_row(const LengthBand& edge, Unit unit) {
  return fmt::format("  {:<26}{:>10}{:>14}{:>16}\n", name_text(edge.piece + "." + edge.edge),
                     number_text(edge.length, unit), number_text(edge.off, unit),
                     number_text(edge.aside, unit));
}

/// "the waist girth, which was estimated".
std::string taken(const Retake& retake) {
  return "the " + words_of(retake.name) +
         (retake.taped ? " once more, on another day" : ", which was estimated");
}

std::string percent(double share) { return fixed(100.0 * share, 0) + " %"; }

/// Less than this is not worth the way to the person. Ours.
constexpr double kWorthTaking = 0.02;

/// Up to the next half centimetre or quarter inch.
Length round_up(Length length, Unit unit) {
  const Length step = unit == Unit::Inch ? Length::inches(0.25) : Length::mm(5.0);
  return std::ceil(length / step) * step;
}

/// More than this at a seam, and letting out is guessing. Ours.
constexpr Length kWideSeam = Length::mm(40.0);

std::string what_to_leave(const Report& report) {
  const Unit unit = report.unit;
  const Length leave = round_up(report.toile_allowance, unit);
  if (leave <= report.allowance) {
    return fmt::format("The {} at the toile's seams are enough to let it out that far.\n",
                       length_text(report.allowance, unit));
  }
  if (leave > kWideSeam) {
    return "That is more than the seams of a toile can take up: take more measurements before you "
           "cut one.\n";
  }
  return fmt::format(
      "So that the toile can be let out that far, leave {} at side, shoulder and opening: "
      "--allowance {}\n",
      length_text(leave, unit), trimmed(leave.mm(), 2));
}

}  // namespace

std::string take_first_text(const std::vector<Retake>& retakes) {
  std::string text;
  for (const Retake& retake : retakes) {
    if (retake.narrows < kWorthTaking) break;
    text += text.empty() ? "Take first " + taken(retake) + ": the lines would then be " +
                               percent(retake.narrows) + " surer.\n"
                         : "Then " + taken(retake) + ": " + percent(retake.narrows) + " more.\n";
  }
  return text.empty() ? "No single measurement would make the lines much surer.\n" : text;
}

std::string bands_text(const Report& report) {
  const Unit unit = report.unit;
  std::string text = fmt::format(
      "\nHow far the lines could be off, 19 times of 20, in {}\n  {:<26}{:>10}{:>14}{:>16}\n",
      unit_word(unit), "", "long", "give or take", "to either side");
  for (const LengthBand& edge : report.bands->lengths) {
    text += band_row(edge, unit);
  }
  return text + take_first_text(report.bands->take_first) + what_to_leave(report);
}

}  // namespace blockwright
