#include "block_pass.hpp"
#include "blockwright/text/units.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>

namespace blockwright {
namespace {

/// A girth of the pattern that a body must fit into, by the name that a fitting gives it.
struct GirthOfBody {
  std::string_view length;
  std::string_view words;
  MeasurementName name;
};
constexpr std::array kGirths = {
    GirthOfBody{"bust_line", "bust line", MeasurementName::BustGirth},
    GirthOfBody{"waist", "waist", MeasurementName::WaistGirth},
    GirthOfBody{"neckline", "neckline", MeasurementName::NeckBaseGirth}};

/// Less is what a tape errs by, in mm. Ours.
constexpr double kSameGirth = 1.0;

/// "with take in waist and take in side": the corrections that made it smaller, as they are typed.
std::string made_smaller_by(const BlockRun& run, const GirthOfBody& girth) {
  std::vector<std::string> names;
  for (const Effect& effect : run.fitted.effects) {
    const auto moved = std::ranges::find(effect.moved, girth.length, &MovedLength::name);
    if (moved == effect.moved.end() || moved->change() >= -kSameGirth) continue;
    for (const std::size_t index : effect.corrections) {
      const Correction& correction = run.corrections[index].correction;
      const std::string name = name_text(correction.action + " " + correction.place);
      if (std::ranges::count(names, name) == 0) names.push_back(name);
    }
  }
  if (names.empty()) return "with the corrections";
  return fmt::format("with {}", fmt::join(names, " and "));
}

}  // namespace

Problems less_than_the_body(const BlockRun& run) {
  Problems problems;
  const auto& lengths = run.fitted.right_lengths;
  for (const GirthOfBody& girth : kGirths) {
    const auto found = std::ranges::find(lengths, girth.length, &MovedLength::name);
    if (found == lengths.end() || !run.body.has(girth.name)) continue;
    const double hers = run.body[girth.name].number();
    const bool was_less = found->before < hers - kSameGirth;
    if (was_less || found->after >= hers - kSameGirth) continue;
    const bool taped = run.body.taped(girth.name);
    problems.push_back({Severity::Warning, "fit.below_body", std::string(girth.length),
                        made_smaller_by(run, girth) + " the " + std::string(girth.words) + " has " +
                            Length::mm(found->after) + ", and she has " + (taped ? "" : "about ") +
                            Length::mm(hers),
                        "take less out, or take that girth again; only cloth that stretches may be "
                        "smaller than she is"});
  }
  return problems;
}

}  // namespace blockwright
