#include "blockwright/measure/correction_table.hpp"

#include "blockwright/base/error.hpp"

namespace blockwright {
namespace {

constexpr std::array<std::string_view, kOneSideStage + 1> kStageNames{
    "set-up",  "lengths and balance",       "shoulder and neck base", "bust and blade", "widths",
    "armhole", "neck edge and style edges", "waist seam and hem",     "one side alone"};

constexpr auto kWaysOfKind = [] {
  using enum AmountAs;
  return std::array<ShortList<AmountAs, 4>, 12>{{
      {Length},                                   // Mark
      {Length, TuckDepth},                        // Fold
      {Length, TuckDepth, PerSeam},               // SeamFold
      {TuckDepth, PerHalf, WholeGirth},           // NeckEdge
      {TuckDepth, PerHalf},                       // Edge
      {TuckDepth, PerHalf, WholeGirth},           // Dart
      {TuckDepth, PerSeam, PerHalf, WholeGirth},  // Pinned
      {PerSeam, PerHalf, WholeGirth},             // LetOut
      {PerHalf, WholeGirth},                      // Width
      {TuckDepth, PerHalf, WholeGirth},           // PinnedWidth
      {PerHalf},                                  // OneHalf
      {Length, WholeGirth},                       // EachSide
  }};
}();

std::vector<CorrectionWords> all_words() {
  std::vector<CorrectionWords> all;
  for (const FittingRow& row : kCorrections) {
    for (const RowWords& words : row.words) {
      const auto& ways = kWaysOfKind[static_cast<std::size_t>(words.kind)];
      std::vector<AmountAs> readings(ways.begin(), ways.end());
      const bool may_leave_out =
          words.kind == AmountKind::SeamFold || words.kind == AmountKind::EachSide;
      const bool must_say = readings.size() > 1 && !may_leave_out;
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
    {"forward", "back"}, {"scoop", "fill"},   {"fuller", "smaller"},  {"take_up", "let_down"},
};

}  // namespace

const FittingRow& fitting_row(CorrectionRow row) {
  const int number = number_of(row);
  require(number >= 1 && number <= static_cast<int>(kCorrectionCount),
          "the fitting catalogue has no such row");
  return kCorrections[static_cast<std::size_t>(number) - 1];
}

const Watched& watched_at(CorrectionRow row, std::string_view place) {
  const FittingRow& entry = fitting_row(row);
  const std::string_view here = place.empty() ? entry.traits.usual_place : place;
  const auto* const found = std::ranges::find_if(entry.watched, [&](const Watched& watched) {
    return watched.place.empty() || watched.place == here;
  });
  return found == entry.watched.end() ? *entry.watched.begin() : *found;
}

std::string_view row_name(CorrectionRow row, int sign) {
  return sign < 0 ? fitting_row(row).reverse_name : fitting_row(row).name;
}

std::string_view stage_name(int stage) {
  require(stage >= 0 && stage <= kOneSideStage, "no such stage");
  return kStageNames[static_cast<std::size_t>(stage)];
}

Measure redraft_limit(MeasurementName name) {
  // An inch and half an inch, and what an amount in a file may be rounded by.
  constexpr ByKind limit{
      .girth = Length::mm(25.45), .length = Length::mm(13), .angle = Measure::degrees(4)};
  return limit.of(name);
}

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
