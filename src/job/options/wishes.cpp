#include "blockwright/base/number_text.hpp"
#include "blockwright/base/printable.hpp"
#include "drawings.hpp"
#include "option_words.hpp"

#include <fmt/format.h>

namespace blockwright {
namespace {

/// "front.waist:2" is two equal darts; without a number it is two as well. `where`: of the words.
SplitMove split_named(const std::string& words, const std::string& where) {
  const std::size_t colon = words.find(':');
  SplitMove move;
  move.dart = words.substr(0, colon);
  if (colon == std::string::npos) return move;
  const auto darts = number_in<int>(words.substr(colon + 1));
  if (!darts || *darts < 2 || *darts > 6) {
    refuse_option(where, "'" + shown(words) + "' does not say into how many darts",
                  "write for example front.waist:2; 2 to 6 darts");
  }
  move.shares.assign(static_cast<std::size_t>(*darts), 1.0 / *darts);
  return move;
}

void require_pairs(const Job& job) {
  const std::size_t darts = job.dart.size(), parts = job.part.size(), angles = job.angle.size();
  if (darts == 0 && job.split.empty()) {
    refuse_option("--dart", "no dart was named to move",
                  "name one with --dart and its new place with --to, or one to --split");
  }
  if (darts != job.to.size()) {
    refuse_option("--to", fmt::format("{} darts and {} places were named", darts, job.to.size()),
                  "give each --dart its --to");
  }
  if (parts != 0 && parts != darts) {
    refuse_option("--part", fmt::format("{} darts and {} parts were named", darts, parts),
                  "give each --dart its --part, or none of them");
  }
  if (angles != 0 && (angles != darts || parts != 0)) {
    refuse_option("--angle",
                  fmt::format("{} darts, {} angles and {} parts were named", darts, angles, parts),
                  "give each --dart its --angle or each its --part, not both");
  }
}

/// Where the options of the i-th move or split stand in a job file, under the names of a step's
/// keys. The dart stands for the whole step; nothing does where it was typed.
StepPlace step_place(const Job& job, std::size_t i, const std::string& dart_option) {
  StepPlace place;
  const auto add = [&](const char* key, const std::string& option) {
    if (job.places.contains(option)) place.keys[key] = place_of(option, job.places, i);
  };
  add("dart", dart_option);
  if (dart_option == "--dart") {
    for (const char* key : {"to", "part", "angle"}) add(key, std::string("--") + key);
    add("hold_back", "--hold-back");
  }
  if (place.keys.contains("dart")) place.step = place.keys["dart"];
  return place;
}

}  // namespace

PrintOptions print_of(const DrawingJob& job) {
  return {.cut = CutStyle::Net,
          .paper = paper_named(job.paper),
          .margin = job.margin,
          .overlap = job.overlap};
}

PrintOptions print_of(const Job& job) {
  PrintOptions print = print_of(static_cast<const DrawingJob&>(job));
  print.allowance = job.allowance.value_or(print.allowance);
  return print;
}

Style style_of_moves(const Job& job) {
  require_pairs(job);
  Style style;
  style.name = "bodice block, darts moved";
  for (std::size_t i = 0; i < job.dart.size(); ++i) {
    PivotMove move{job.dart[i], job.to[i], 1.0, std::nullopt, std::nullopt};
    if (!job.part.empty()) move.part = job.part[i];
    if (!job.angle.empty()) move.angle = job.angle[i];
    if (job.hold_back) move.hold_back = job.hold_back->mm();
    style.steps.emplace_back(move);
    style.places.push_back(step_place(job, i, "--dart"));
  }
  for (std::size_t i = 0; i < job.split.size(); ++i) {
    style.steps.emplace_back(split_named(job.split[i], place_of("--split", job.places, i)));
    style.places.push_back(step_place(job, i, "--split"));
  }
  return style;
}

}  // namespace blockwright
