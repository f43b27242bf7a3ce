#pragma once

#include "blockwright/base/length.hpp"

#include <algorithm>
#include <array>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace blockwright {

/// How an amount was read at a fitting. A pin says not by itself how much cloth it means, so that
/// corrections which take in or let out must say it.
enum class AmountAs {
  Length,      ///< "length": how far a point, line or seam is to move on the body
  TuckDepth,   ///< "tuck_depth": depth of a pinned tuck or fold; it takes out twice as much cloth
  PerSeam,     ///< "per_seam": from each of the two pieces at one seam
  PerHalf,     ///< "per_half": cloth on one half of the body
  WholeGirth,  ///< "whole_girth": cloth on the whole body
};

/// The word of a way in files, "tuck_depth", and what it means, for a person who has to choose.
struct AmountWay {
  AmountAs as;
  std::string_view word;
  std::string_view meaning;
};
/// By AmountAs.
inline constexpr std::array<AmountWay, 5> kAmountWays{
    {{AmountAs::Length, "length", "how far it is to move on the body"},
     {AmountAs::TuckDepth, "tuck_depth", "depth of the pinned tuck, which takes out twice as much"},
     {AmountAs::PerSeam, "per_seam", "from each of the two pieces at one seam"},
     {AmountAs::PerHalf, "per_half", "cloth on one half of the body"},
     {AmountAs::WholeGirth, "whole_girth", "cloth on the whole body"}}};

constexpr const AmountWay& amount_way(AmountAs as) {
  return kAmountWays[static_cast<std::size_t>(as)];
}
/// The way of that word; empty if there is none.
constexpr std::optional<AmountAs> amount_named(std::string_view word) {
  const auto* const found = std::ranges::find(kAmountWays, word, &AmountWay::word);
  return found == kAmountWays.end() ? std::nullopt : std::optional(found->as);
}

/// The half of the body that a correction is for.
enum class BodySide { Both, Left, Right };

/// The words of the sides, by BodySide.
inline constexpr std::array<std::string_view, 3> kSideWords{"both", "left", "right"};
constexpr std::string_view side_word(BodySide side) {
  return kSideWords[static_cast<std::size_t>(side)];
}
/// The side of that word; empty if there is none.
constexpr std::optional<BodySide> side_named(std::string_view word) {
  const auto* const found = std::ranges::find(kSideWords, word);
  if (found == kSideWords.end()) return std::nullopt;
  return static_cast<BodySide>(found - kSideWords.begin());
}

/// What becomes of a correction once a newer tape session has some of what it asked for.
enum class OnNewTape {
  Ask,      ///< apply what the tape leaves of it and ask whether that is right
  Settled,  ///< { "settled": 2.5 }: the same; it left so much when that was agreed to
  Keep,     ///< "keep": apply all of it, and say no more
  Drop,     ///< "drop": do not apply it
  Change,   ///< an amount: apply so much of it
};

struct AfterNewTape {
  OnNewTape answer = OnNewTape::Ask;
  Length by = {};  ///< where it is Change, or Settled (or 0): what remains, read as the amount

  bool operator==(const AfterNewTape&) const = default;
};

/// One correction, in the words of the fitting: what was done or is wanted, where, by how much.
struct Correction {
  std::string action;  ///< "lower", "raise", "take_in" ...: see correction_words()
  std::string place;   ///< "front_neck", "underarm", "side" ...
  Length by;           ///< as read, more than 0
  AmountAs as = AmountAs::Length;
  BodySide side = BodySide::Both;
  std::string seen;        ///< what was seen on the body, in the fitter's own words
  bool withdrawn = false;  ///< kept in the file, not applied
  AfterNewTape new_tape = {};
  std::string given = {};  ///< the amount as the file has it: "1.0 cm", "5/8 in"; may be empty

  bool operator==(const Correction&) const = default;
};

/// One try-on of a toile.
struct Fitting {
  std::string date;  ///< "2026-03-21"
  int toile = 0;     ///< number of the toile, from 1
  std::string by;    ///< who fitted
  std::string note;
  std::vector<Correction> corrections;  ///< in the order of the file

  bool operator==(const Fitting&) const = default;
};

enum class CorrectionRow : int;  // blockwright/measure/correction_table.hpp

/// A pair of words that a correction may use, and the row of the fitting catalogue that it means.
/// `sign` is the row's direction: +1 as the row is written, -1 its reverse.
struct CorrectionWords {
  std::string_view action;
  std::string_view place;
  CorrectionRow row{};
  int sign = 1;
  /// The ways of reading an amount that make sense here; the first is meant where none is given,
  /// unless `must_say`.
  std::vector<AmountAs> readings;
  bool must_say = false;
  /// A correction of one side of the body: the side must be said.
  bool one_sided = false;
};

/// All pairs, by row. Each pair stands once; each row has at least one.
const std::vector<CorrectionWords>& correction_words();
/// The entry of a pair; null if there is none.
const CorrectionWords* find_correction_words(std::string_view action, std::string_view place);
/// Every action, and every place, once, in the order of the rows.
std::span<const std::string_view> correction_actions();
std::span<const std::string_view> correction_places();
/// The action that undoes this one at the same place: "raise" for "lower", whether or not the
/// fitting catalogue has that pair. Empty for a word that is no action.
std::string_view opposite_action(std::string_view action);

}  // namespace blockwright
