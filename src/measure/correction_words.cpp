#include "blockwright/measure/fitting.hpp"

#include <algorithm>

namespace blockwright {
namespace {

// How the amount of a pair can be read. A chalk mark, or a line that is to lie elsewhere, is a
// length and nothing else. Whatever is pinned out or let in could be counted in more than one way
// (a tuck of depth p takes out 2 p; a seam pinned p beyond its line takes p from each piece; both
// halves of the body take twice that), so that the way must be said. Common practice, no source.
enum class Read {
  Mark,         // how far something is to move
  Fold,         // cloth folded out across a piece: its depth, or the length it takes away
  NeckEdge,     // a gaping neck edge, pinned: one half, or both together
  Edge,         // a gaping armhole edge, pinned
  Dart,         // how much deeper or less deep a dart is stitched, or the cloth of it
  Pinned,       // a seam pinned in
  LetOut,       // a seam let out: nothing is pinned
  Width,        // a width: of one half, or whole
  PinnedWidth,  // the same, or the depth of a tuck on each half
  OneHalf,      // cloth on one half, and nothing else
};

struct Entry {
  int row;
  int sign;
  std::string_view action;
  std::string_view place;
  Read read = Read::Mark;
  bool one_sided = false;
};

// The rows are those of the fitting catalogue (docs/fitting.md), which says what is seen on the
// body, what is done to the pieces and by how much. Where a row has two directions, the second has
// sign -1. Front and back waist and hem are the block's lower edge.
constexpr Entry kEntries[] = {
    // Neck
    {1, 1, "lower", "front_neck"},
    {2, 1, "raise", "front_neck"},
    {3, 1, "widen", "neck"},
    {4, 1, "narrow", "neck"},
    {5, 1, "take_in", "front_neck_edge", Read::NeckEdge},
    {6, 1, "take_in", "back_neck_edge", Read::NeckEdge},
    {7, 1, "lower", "back_neck"},
    {7, -1, "raise", "back_neck"},
    {8, 1, "widen", "side_neck"},
    {8, -1, "narrow", "side_neck"},
    // Shoulder
    {9, 1, "shorten", "shoulder"},
    {10, 1, "lengthen", "shoulder"},
    {11, 1, "raise", "shoulder_point"},
    {12, 1, "lower", "shoulder_point"},
    {13, 1, "forward", "shoulder_point"},
    {13, -1, "back", "shoulder_point"},
    {14, 1, "forward", "shoulder_seam"},
    {14, -1, "back", "shoulder_seam"},
    {15, 1, "shorten", "front_shoulder_neck_end", Read::Fold},
    {15, -1, "lengthen", "front_shoulder_neck_end"},
    {16, 1, "shorten", "back_shoulder_neck_end", Read::Fold},
    {16, -1, "lengthen", "back_shoulder_neck_end"},
    {17, 1, "take_in", "back_shoulder_dart", Read::Dart},
    {17, -1, "let_out", "back_shoulder_dart", Read::Dart},
    {18, 1, "take_in", "upper_chest", Read::Fold},
    // Armhole
    {19, 1, "lower", "underarm"},
    {20, 1, "raise", "underarm"},
    {21, 1, "scoop", "front_armhole"},
    {21, -1, "fill", "front_armhole"},
    {21, 1, "narrow", "across_front", Read::PinnedWidth},
    {21, -1, "widen", "across_front", Read::Width},
    {22, 1, "fill", "back_armhole"},
    {22, -1, "scoop", "back_armhole"},
    {23, 1, "take_in", "front_armhole_edge", Read::Edge},
    {24, 1, "take_in", "back_armhole_edge", Read::Edge},
    {25, 1, "widen", "armhole"},
    {25, -1, "narrow", "armhole"},
    // Bust
    {26, 1, "raise", "bust_point"},
    {26, -1, "lower", "bust_point"},
    {27, 1, "fuller", "bust", Read::Width},
    {28, 1, "smaller", "bust", Read::PinnedWidth},
    {29, 1, "shorten", "front_shoulder_dart"},
    {29, -1, "lengthen", "front_shoulder_dart"},
    {29, 1, "shorten", "front_waist_dart"},
    {29, -1, "lengthen", "front_waist_dart"},
    {29, 1, "shorten", "back_shoulder_dart"},
    {29, -1, "lengthen", "back_shoulder_dart"},
    {29, 1, "shorten", "back_waist_dart"},
    {29, -1, "lengthen", "back_waist_dart"},
    {30, 1, "take_in", "front_shoulder_dart", Read::Dart},
    {30, -1, "let_out", "front_shoulder_dart", Read::Dart},
    {30, 1, "take_in", "front_waist_dart", Read::Dart},
    {30, -1, "let_out", "front_waist_dart", Read::Dart},
    {30, 1, "take_in", "back_waist_dart", Read::Dart},
    {30, -1, "let_out", "back_waist_dart", Read::Dart},
    {31, 1, "widen", "bust_points", Read::Width},
    {31, -1, "narrow", "bust_points", Read::PinnedWidth},  // one tuck, at centre front
    {32, 1, "take_in", "under_bust", Read::Dart},
    // Back
    {33, 1, "widen", "across_back", Read::Width},
    {34, 1, "narrow", "across_back", Read::PinnedWidth},
    {35, 1, "lengthen", "upper_back"},
    {36, 1, "lengthen", "below_nape"},
    {37, 1, "shorten", "upper_back", Read::Fold},
    {38, 1, "shorten", "back_waist", Read::Fold},
    {38, -1, "lengthen", "back_waist"},
    {38, 1, "raise", "back_hem"},
    {38, -1, "lower", "back_hem"},
    // Lengths, sides, waist, centre seams
    {39, 1, "lengthen", "below_bust"},
    {39, -1, "shorten", "below_bust", Read::Fold},
    {40, 1, "lengthen", "above_bust"},
    {40, -1, "shorten", "above_bust", Read::Fold},
    {41, 1, "lengthen", "front_waist"},
    {41, -1, "shorten", "front_waist", Read::Fold},
    {41, 1, "lower", "front_hem"},
    {41, -1, "raise", "front_hem"},
    {42, 1, "forward", "side_seam"},
    {43, 1, "back", "side_seam"},
    {44, 1, "take_in", "waist", Read::Width},
    {44, -1, "let_out", "waist", Read::Width},
    {44, 1, "take_in", "side_at_waist", Read::Pinned},
    {44, -1, "let_out", "side_at_waist", Read::LetOut},
    {45, 1, "take_in", "centre_back", Read::Pinned},
    {45, -1, "let_out", "centre_back", Read::LetOut},
    {45, 1, "take_in", "centre_front", Read::Pinned},
    {45, -1, "let_out", "centre_front", Read::LetOut},
    // One side
    {46, 1, "lower", "one_shoulder", Read::Mark, true},
    {46, -1, "raise", "one_shoulder", Read::Mark, true},
    {47, 1, "fuller", "one_breast", Read::OneHalf, true},
    {47, -1, "smaller", "one_breast", Read::OneHalf, true},
    {48, 1, "raise", "one_side_waist", Read::Mark, true},
    {48, -1, "lower", "one_side_waist", Read::Mark, true},
    // Bust girth by the side seam
    {49, 1, "let_out", "side", Read::LetOut},
    {49, -1, "take_in", "side", Read::Pinned},
    {49, 1, "let_out", "side_at_bust", Read::LetOut},
    {49, -1, "take_in", "side_at_bust", Read::Pinned},
};

std::vector<AmountAs> readings_of(Read read) {
  using enum AmountAs;
  switch (read) {
    case Read::Mark:
      return {Length};
    case Read::Fold:
      return {Length, TuckDepth};
    case Read::NeckEdge:
    case Read::Dart:
    case Read::PinnedWidth:
      return {TuckDepth, PerHalf, WholeGirth};
    case Read::Edge:
      return {TuckDepth, PerHalf};
    case Read::Pinned:
      return {TuckDepth, PerSeam, PerHalf, WholeGirth};
    case Read::LetOut:
      return {PerSeam, PerHalf, WholeGirth};
    case Read::Width:
      return {PerHalf, WholeGirth};
    case Read::OneHalf:
      return {PerHalf};
  }
  return {Length};
}

std::vector<CorrectionWords> all_words() {
  std::vector<CorrectionWords> words;
  for (const Entry& entry : kEntries) {
    std::vector<AmountAs> readings = readings_of(entry.read);
    const bool must_say = readings.size() > 1;
    words.push_back({.action = entry.action,
                     .place = entry.place,
                     .row = entry.row,
                     .sign = entry.sign,
                     .readings = std::move(readings),
                     .must_say = must_say,
                     .one_sided = entry.one_sided});
  }
  return words;
}

// Each word once, in the order of its first row.
std::vector<std::string_view> each_once(std::string_view Entry::*word) {
  std::vector<std::string_view> words;
  for (const Entry& entry : kEntries) {
    if (std::ranges::find(words, entry.*word) == words.end()) words.push_back(entry.*word);
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
  static const std::vector<std::string_view> actions = each_once(&Entry::action);
  return actions;
}

std::span<const std::string_view> correction_places() {
  static const std::vector<std::string_view> places = each_once(&Entry::place);
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
