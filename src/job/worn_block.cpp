#include "block_pass.hpp"
#include "blockwright/base/error.hpp"

#include <cmath>
#include <utility>

namespace blockwright {
namespace {

using enum MeasurementName;

/// What she wears at a girth more than others do, by the eases of her file.
Length own_ease(const BlockRun& run, LengthName name) {
  return Ease::of(run.client).length(name) - Ease::of_toile().length(name);
}

double girth_to_wear(const BlockRun& run, LengthName name) {
  return (run.body.length(name) + own_ease(run, name)).mm();
}

std::vector<Correction> corrections_of(const BlockRun& run) {
  std::vector<Correction> corrections;
  for (const NumberedCorrection& one : run.corrections) corrections.push_back(one.correction);
  return corrections;
}

/// Where the value of "wearing_ease.bust" stands, or the word that it comes from.
std::string placed(const std::string& where, const StepPlace& place) {
  const auto key = place.keys.find(where.substr(where.find('.') + 1));
  const std::string& at = key == place.keys.end() ? place.step : key->second;
  return at.empty() ? where : at;
}

}  // namespace

void wear(BlockRun& run, const Style& style) {
  run.ease = style.wearing_ease;
  run.worn.pattern = run.fitted.pattern;
  if (!run.ease) return;
  try {
    run.worn = with_wearing_ease(run.block.pattern, corrections_of(run), *run.ease,
                                 {girth_to_wear(run, BustGirth), girth_to_wear(run, WaistGirth)});
  } catch (const InputError& error) {
    Problem problem = worded(error.problem(), run.unit);
    problem.where = placed(problem.where, style.wearing_ease_place);
    throw InputError(problem);
  }
  run.worn.remarks = without_unseen(std::move(run.worn.remarks), run.unit);
  add(run.problems, run.worn.remarks);
}

Wording worn_words(const BlockRun& run) {
  if (!run.ease) return {};
  const WearingEase& ease = *run.ease;
  const auto girth = [](double mm) {
    return Length::mm(std::abs(mm)) + (mm < 0.0 ? " less" : " more");
  };
  Wording words = "worn " + std::string(ease.name) + (ease.name.empty() ? "with " : ": ") +
                  "bust " + girth(ease.bust) + " and waist " + girth(ease.waist) + " than the body";
  if (ease.raise_underarm > 0.0) words += ", underarm higher by " + Length::mm(ease.raise_underarm);
  if (ease.shoulder_in > 0.0) words += ", shoulder shorter by " + Length::mm(ease.shoulder_in);
  return words;
}

std::vector<FinishedGirth> finished_girths(const BlockRun& run) {
  if (!run.ease) return {};
  const auto girth = [&](LengthName name, double WearingEase::*ease, double WornGirths::*of) {
    return FinishedGirth{name,
                         run.body.length(name),
                         Length::mm(*run.ease.*ease),
                         own_ease(run, name),
                         Length::mm(run.worn.fitted.*of - run.worn.drafted.*of),
                         Length::mm(run.worn.worn.*of)};
  };
  return {girth(BustGirth, &WearingEase::bust, &WornGirths::bust),
          girth(WaistGirth, &WearingEase::waist, &WornGirths::waist)};
}

}  // namespace blockwright
