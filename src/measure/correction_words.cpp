#include "blockwright/measure/correction_table.hpp"

#include <algorithm>

namespace blockwright {
namespace {

std::vector<AmountAs> readings_of(AmountKind kind) {
  using enum AmountAs;
  switch (kind) {
    case AmountKind::Mark:
      return {Length};
    case AmountKind::Fold:
      return {Length, TuckDepth};
    case AmountKind::NeckEdge:
    case AmountKind::Dart:
    case AmountKind::PinnedWidth:
      return {TuckDepth, PerHalf, WholeGirth};
    case AmountKind::Edge:
      return {TuckDepth, PerHalf};
    case AmountKind::Pinned:
      return {TuckDepth, PerSeam, PerHalf, WholeGirth};
    case AmountKind::LetOut:
      return {PerSeam, PerHalf, WholeGirth};
    case AmountKind::Width:
      return {PerHalf, WholeGirth};
    case AmountKind::OneHalf:
      return {PerHalf};
  }
  return {Length};
}

std::vector<CorrectionWords> all_words() {
  std::vector<CorrectionWords> all;
  for (const FittingRow& row : kCorrections) {
    for (const RowWords& words : row.words) {
      std::vector<AmountAs> readings = readings_of(words.kind);
      const bool must_say = readings.size() > 1;
      all.push_back({words.action, words.place, row.row, words.sign, std::move(readings), must_say,
                     row.stage == kOneSideStage});
    }
  }
  return all;
}

// Each word once, in the order of its first row.
std::vector<std::string_view> each_once(std::string_view CorrectionWords::*word) {
  std::vector<std::string_view> words;
  for (const CorrectionWords& pair : correction_words()) {
    if (std::ranges::find(words, pair.*word) == words.end()) words.push_back(pair.*word);
  }
  return words;
}

struct Opposites {
  std::string_view one;
  std::string_view other;
};
constexpr Opposites kOpposites[] = {
    {"lower", "raise"},  {"widen", "narrow"}, {"take_in", "let_out"}, {"shorten", "lengthen"},
    {"forward", "back"}, {"scoop", "fill"},   {"fuller", "smaller"},
};

}  // namespace

const std::vector<CorrectionWords>& correction_words() {
  static const std::vector<CorrectionWords> words = all_words();
  return words;
}

const CorrectionWords* find_correction_words(std::string_view action, std::string_view place) {
  const auto& words = correction_words();
  const auto found = std::ranges::find_if(words, [&](const CorrectionWords& pair) {
    return pair.action == action && pair.place == place;
  });
  return found == words.end() ? nullptr : &*found;
}

std::span<const std::string_view> correction_actions() {
  static const std::vector<std::string_view> actions = each_once(&CorrectionWords::action);
  return actions;
}

std::span<const std::string_view> correction_places() {
  static const std::vector<std::string_view> places = each_once(&CorrectionWords::place);
  return places;
}

std::string_view opposite_action(std::string_view action) {
  for (const Opposites& pair : kOpposites) {
    if (pair.one == action) return pair.other;
    if (pair.other == action) return pair.one;
  }
  return {};
}

}  // namespace blockwright
