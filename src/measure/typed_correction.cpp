#include "blockwright/measure/typed_correction.hpp"

#include "blockwright/measure/correction_table.hpp"
#include "blockwright/text/small_letters.hpp"

#include <algorithm>
#include <array>
#include <vector>

namespace blockwright {
namespace {

using Words = std::vector<std::string>;

Words words_between_spaces(std::string_view text) {
  constexpr std::string_view spaces = " \t\r\n";
  Words words;
  for (std::size_t at = text.find_first_not_of(spaces); at != std::string_view::npos;
       at = text.find_first_not_of(spaces, at)) {
    const std::size_t end = std::min(text.find_first_of(spaces, at), text.size());
    words.emplace_back(text.substr(at, end - at));
    at = end;
  }
  return words;
}

/// "2 cm, each side": a comma ends a word, and is no part of it.
Words typed_words(std::string_view text) {
  Words words = words_between_spaces(text);
  for (std::string& word : words) {
    if (word.size() > 1 && (word.ends_with(',') || word.ends_with(';'))) word.pop_back();
  }
  return words;
}

/// How an amount was counted, in everyday words: the first of the ways that the row knows.
struct CountedAs {
  std::string_view words;
  ShortList<AmountAs, 2> ways;
};
constexpr CountedAs kCountedAs[] = {
    {"in all", {AmountAs::WholeGirth}},
    {"altogether", {AmountAs::WholeGirth}},
    {"all together", {AmountAs::WholeGirth}},
    {"in total", {AmountAs::WholeGirth}},
    {"total", {AmountAs::WholeGirth}},
    {"overall", {AmountAs::WholeGirth}},
    {"all round", {AmountAs::WholeGirth}},
    {"all around", {AmountAs::WholeGirth}},
    {"all the way round", {AmountAs::WholeGirth}},
    {"all the way around", {AmountAs::WholeGirth}},
    {"round the body", {AmountAs::WholeGirth}},
    {"around the body", {AmountAs::WholeGirth}},
    {"on the tape", {AmountAs::WholeGirth}},
    {"each side", {AmountAs::PerHalf, AmountAs::Length}},
    {"on each side", {AmountAs::PerHalf, AmountAs::Length}},
    {"at each side", {AmountAs::PerHalf, AmountAs::Length}},
    {"either side", {AmountAs::PerHalf, AmountAs::Length}},
    {"on either side", {AmountAs::PerHalf, AmountAs::Length}},
    {"per side", {AmountAs::PerHalf, AmountAs::Length}},
    {"a side", {AmountAs::PerHalf, AmountAs::Length}},
    {"each half", {AmountAs::PerHalf}},
    {"on each half", {AmountAs::PerHalf}},
    {"on one half", {AmountAs::PerHalf}},
    {"on the half", {AmountAs::PerHalf}},
    {"each piece", {AmountAs::PerSeam}},
    {"from each piece", {AmountAs::PerSeam}},
    {"off each piece", {AmountAs::PerSeam}},
    {"on each piece", {AmountAs::PerSeam}},
    {"each layer", {AmountAs::PerSeam}},
    {"on each layer", {AmountAs::PerSeam}},
    {"deep", {AmountAs::TuckDepth}},
};

AmountAs way_counted(const CountedAs& counted, const CorrectionWords* words) {
  if (words == nullptr) return *counted.ways.begin();
  const auto* const known = std::ranges::find_if(
      counted.ways, [&](AmountAs as) { return std::ranges::count(words->readings, as) > 0; });
  return known == counted.ways.end() ? *counted.ways.begin() : *known;
}

bool begins_amount(const std::string& word) {
  constexpr std::string_view first = "0123456789";
  constexpr std::array<std::string_view, 7> signs{"¼", "½", "¾", "⅛", "⅜", "⅝", "⅞"};
  const bool sign = std::ranges::any_of(signs, [&](auto s) { return word.starts_with(s); });
  const std::size_t at = word.find_first_not_of("-.,");
  return sign || (at <= 2 && first.find(word[at]) != first.npos);
}

bool is_filler(const std::string& word) {
  constexpr std::array<std::string_view, 9> fillers{"the", "by",    "my",   "her", "both",
                                                    "of",  "about", "each", "a"};
  return std::ranges::find(fillers, word) != fillers.end();
}

bool is_known_action(const std::string& word) {
  return std::ranges::find(correction_actions(), word) != correction_actions().end();
}

/// A correction's words, taken one after the other.
class TypedWords {
 public:
  explicit TypedWords(std::string_view text) : words_(typed_words(text)) {}

  TypedCorrection read() {
    if (!take_name()) {
      take_action();
      take_place();
    }
    take_amount();
    while (at_ < words_.size()) take_rest();
    return std::move(typed_);
  }

 private:
  [[nodiscard]] std::string word(std::size_t ahead = 0) const {
    return at_ + ahead < words_.size() ? in_small_letters(words_[at_ + ahead]) : "";
  }

  /// "Shoulder shorter 1": a row by its name, as warnings have it; the longest name, and the first
  /// words for it.
  bool take_name() {
    const CorrectionWords* named = nullptr;
    std::size_t most = 0;
    for (const CorrectionWords& words : correction_words()) {
      const Words name = words_between_spaces(row_name(words.row, words.sign));
      if (name.size() <= most || !begins_with(name)) continue;
      named = &words;
      most = name.size();
    }
    if (named == nullptr) return false;
    typed_.action = named->action;
    typed_.place = named->place;
    at_ = most;
    return true;
  }

  /// With these words, and an amount behind them.
  [[nodiscard]] bool begins_with(const Words& name) const {
    for (std::size_t i = 0; i < name.size(); ++i) {
      if (word(i) != name[i]) return false;
    }
    return name.size() < words_.size() && begins_amount(words_[name.size()]);
  }

  void take_action() {
    const std::string joined = word() + "_" + word(1);  // "take in", "let out"
    const bool two = is_known_action(joined);
    typed_.action = two ? joined : word();
    at_ = std::min(at_ + (two ? 2 : 1), words_.size());
  }

  void take_place() {
    Words place;
    while (at_ < words_.size() && !begins_amount(words_[at_])) {
      if (!take_way() && !take_side() && !is_filler(word())) place.push_back(word());
      if (!taken_) ++at_;
      taken_ = false;
    }
    for (const std::string& part : place) typed_.place += (typed_.place.empty() ? "" : "_") + part;
    if (find_correction_words(typed_.action, typed_.place) != nullptr) return;
    for (const std::string& other : {typed_.place + "s", without_s(typed_.place)}) {
      if (find_correction_words(typed_.action, other) != nullptr) typed_.place = other;
    }
  }

  static std::string without_s(std::string place) {
    if (place.ends_with('s')) place.pop_back();
    return place;
  }

  /// The longest words from here that are an amount: "1", "1 1/2", "1 1/2 in".
  void take_amount() {
    std::string text;
    for (std::size_t count = std::min<std::size_t>(3, words_.size() - at_); count > 0; --count) {
      text.clear();
      for (std::size_t i = 0; i < count; ++i) text += (i == 0 ? "" : " ") + words_[at_ + i];
      const bool in_all = word(count) == "all" || word(count) == "total";
      if (!amount_typed(text) || (text.ends_with(" in") && in_all)) continue;
      typed_.amount = text;
      at_ += count;
      return;
    }
    if (at_ < words_.size()) take_what_is_no_amount();
  }

  /// With its unit, so that "1.5.2 cm" is refused for its number and not for "cm".
  void take_what_is_no_amount() {
    typed_.amount = words_[at_++];
    const auto unit = amount_typed("1 " + word());
    const bool in_all = word(1) == "all" || word(1) == "total";
    if (!unit || !unit->unit || in_all) return;
    typed_.amount += " " + words_[at_++];
  }

  /// "per_half", or "per half"; behind an amount "in all", too, or "each side".
  bool take_way() {
    if (!typed_.amount.empty() && take_count()) return true;
    for (const std::size_t count : {std::size_t{2}, std::size_t{1}}) {
      const std::string way = count == 2 ? word() + "_" + word(1) : word();
      const auto as = amount_named(way);
      if (!as) continue;
      typed_.as = as;
      return take(count);
    }
    return false;
  }

  bool take_count() {
    for (const CountedAs& counted : kCountedAs) {
      const Words own = words_between_spaces(counted.words);
      std::size_t same = 0;
      while (same < own.size() && word(same) == own[same]) ++same;
      if (same < own.size()) continue;
      typed_.as = way_counted(counted, find_correction_words(typed_.action, typed_.place));
      return take(own.size());
    }
    return false;
  }

  /// "left", "right side".
  bool take_side() {
    const auto side = side_named(word());
    if (!side || *side == BodySide::Both) return false;
    typed_.side = side;
    return take(!typed_.amount.empty() && word(1) == "side" ? 2 : 1);
  }

  bool take(std::size_t count) {
    at_ += count;
    taken_ = true;
    return true;
  }

  void take_rest() {
    if (take_way() || take_side()) return;
    if (!is_filler(word()) && typed_.odd.empty()) typed_.odd = words_[at_];
    ++at_;
  }

  Words words_;
  std::size_t at_ = 0;
  bool taken_ = false;  // whether the words here are used up
  TypedCorrection typed_;
};

constexpr std::size_t kLeastShared = 2;

/// "take_in side" is three words.
Words single_words(std::string text) {
  std::ranges::replace(text, '_', ' ');
  Words words;
  for (std::string& word : words_between_spaces(text))
    words.push_back(in_small_letters(std::move(word)));
  return words;
}

/// More shared words are nearer; of as many, fewer that are not shared.
struct Nearness {
  std::size_t shared = 0;
  std::size_t not_shared = 0;

  [[nodiscard]] bool is_more_than(const Nearness& other) const {
    return shared > other.shared || (shared == other.shared && not_shared < other.not_shared);
  }
};

Nearness nearness(const CorrectionWords& correction, const Words& typed) {
  const Words own =
      single_words(std::string(correction.action) + " " + std::string(correction.place));
  Nearness near;
  for (const std::string& word : own) {
    const bool shared = std::ranges::any_of(
        typed, [&](const std::string& other) { return other == word || other == word + "s"; });
    ++(shared ? near.shared : near.not_shared);
  }
  return near;
}

}  // namespace

TypedCorrection correction_typed(std::string_view words) { return TypedWords(words).read(); }

std::string way_text(const CorrectionWords& words, AmountAs as) {
  const bool of_sides = words.readings.front() == AmountAs::Length;
  if (of_sides && as == AmountAs::WholeGirth) return "in all";
  return name_text(amount_way(as).word);
}

const CorrectionWords* nearest_correction(std::string_view words) {
  const Words typed = single_words(std::string(words));
  const CorrectionWords* nearest = nullptr;
  Nearness best{kLeastShared - 1, 0};
  for (const CorrectionWords& correction : correction_words()) {
    const Nearness near = nearness(correction, typed);
    if (!near.is_more_than(best)) continue;
    nearest = &correction;
    best = near;
  }
  return nearest;
}

}  // namespace blockwright
