#include "wishes.hpp"

#include "option_words.hpp"

#include <charconv>

namespace blockwright {
namespace {

/// "front.waist:2" is two equal darts; without a number it is two as well.
SplitMove split_named(const std::string& words) {
  const std::size_t colon = words.find(':');
  SplitMove move;
  move.dart = words.substr(0, colon);
  if (colon == std::string::npos) return move;
  const std::string count = words.substr(colon + 1);
  int darts = 0;
  const auto [end, error] = std::from_chars(count.data(), count.data() + count.size(), darts);
  if (error != std::errc() || end != count.data() + count.size() || darts < 2 || darts > 6) {
    refuse_option("--split", "'" + words + "' does not say into how many darts",
                  "write for example front.waist:2; 2 to 6 darts");
  }
  move.shares.assign(static_cast<std::size_t>(darts), 1.0 / darts);
  return move;
}

void require_pairs(const Job& job) {
  if (job.dart.empty() && job.split.empty()) {
    refuse_option("--dart", "no dart was named to move",
                  "name one with --dart and its new place with --to, or one to --split");
  }
  if (job.dart.size() != job.to.size()) {
    refuse_option("--to",
                  std::to_string(job.dart.size()) + " darts and " + std::to_string(job.to.size()) +
                      " places were named",
                  "give each --dart its --to");
  }
  if (!job.part.empty() && job.part.size() != job.dart.size()) {
    refuse_option("--part",
                  std::to_string(job.dart.size()) + " darts and " +
                      std::to_string(job.part.size()) + " parts were named",
                  "give each --dart its --part, or none of them");
  }
  if (!job.angle.empty() && (job.angle.size() != job.dart.size() || !job.part.empty())) {
    refuse_option("--angle",
                  std::to_string(job.dart.size()) + " darts, " + std::to_string(job.angle.size()) +
                      " angles and " + std::to_string(job.part.size()) + " parts were named",
                  "give each --dart its --angle or each its --part, not both");
  }
}

}  // namespace

PrintOptions print_of(const DrawingJob& job) {
  PrintOptions print;
  print.cut = CutStyle::Net;
  print.paper = paper_named(job.paper);
  print.margin = job.margin;
  print.overlap = job.overlap;
  return print;
}

PrintOptions print_of(const Job& job) {
  PrintOptions print = print_of(static_cast<const DrawingJob&>(job));
  print.cut = job.cut;
  if (job.allowance) print.allowance = *job.allowance;
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
  }
  for (const std::string& words : job.split) style.steps.emplace_back(split_named(words));
  return style;
}

}  // namespace blockwright
