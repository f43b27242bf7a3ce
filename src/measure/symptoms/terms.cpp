#include "terms.hpp"

#include <algorithm>
#include <map>
#include <optional>

namespace blockwright {
namespace {

using Stems = std::vector<std::string>;

struct Sense {
  Concepts concepts;
  Speech speech = Speech::None;
};

/// The vocabulary by its words.
struct Lexicon {
  std::map<Stems, Sense> sayings;
  std::vector<std::string> empty;
  std::vector<std::string> single;  ///< words that are a saying each
  std::size_t longest = 1;
};

void add_sayings(Lexicon& lexicon, std::string_view sayings, const Sense& sense) {
  for (const std::string_view words : listed(sayings)) {
    Stems stems;
    for (const SaidWord& word : plain_words(words)) stems.push_back(word.stem);
    lexicon.longest = std::max(lexicon.longest, stems.size());
    if (stems.size() == 1) lexicon.single.push_back(stems.front());
    lexicon.sayings.emplace(stems, sense);
  }
}

Lexicon made_lexicon() {
  Lexicon lexicon;
  for (const Saying& saying : vocabulary()) {
    Sense sense;
    for (const Concept one : saying.means) sense.concepts.add(one);
    add_sayings(lexicon, saying.words, sense);
  }
  for (const SpeechWords& some : speech_words())
    add_sayings(lexicon, some.words, {{}, some.speech});
  for (const std::string_view word : empty_words()) {
    lexicon.empty.push_back(said_words(word).front().stem);
  }
  return lexicon;
}

const Lexicon& lexicon() {
  static const Lexicon made = made_lexicon();
  return made;
}

/// One letter wrong, missing, too many, or two changed places.
bool is_slip(std::string_view typed, std::string_view word) {
  const auto same =
      static_cast<std::size_t>(std::ranges::mismatch(typed, word).in1 - typed.begin());
  const std::string_view a = typed.substr(same), b = word.substr(same);
  if (a.empty() || b.empty()) return a.size() + b.size() == 1;
  if (a.substr(1) == b.substr(1) || a.substr(1) == b || a == b.substr(1)) return true;
  return a.size() > 1 && b.size() > 1 && a[0] == b[1] && a[1] == b[0] && a.substr(2) == b.substr(2);
}

/// The word that a slip of the pen most likely means; itself if there is none.
std::string mended(const std::string& stem) {
  constexpr std::size_t shortest = 5;  // shorter ones resemble too many
  if (stem.size() < shortest) return stem;
  for (const std::string& word : lexicon().single) {
    if (word.size() >= shortest && is_slip(stem, word)) return word;
  }
  return stem;
}

bool is_known(const std::string& stem) {
  return lexicon().sayings.contains({stem}) ||
         std::ranges::find(lexicon().empty, stem) != lexicon().empty.end();
}

bool is_one_of(const std::string& stem, std::initializer_list<std::string_view> stems) {
  return std::ranges::find(stems, stem) != stems.end();
}

bool is_mover(const SaidWord& word) {
  return is_one_of(word.stem, {"tak", "let", "bring", "mov", "pin", "pinch", "shift"});
}

bool is_way_out(const SaidWord& verb, const SaidWord& word) {
  const bool moves = is_one_of(verb.stem, {"bring", "mov", "shift"});
  return is_one_of(word.stem, {"in", "out", "up", "down", "off"}) ||
         (moves && is_one_of(word.stem, {"forward", "backward", "back"}));
}

/// "let the waist darts out" is "let out the waist darts"; "move my arms up" stays.
void join_moves(std::vector<SaidWord>& words) {
  constexpr std::ptrdiff_t furthest = 6;
  for (auto verb = words.begin(); verb != words.end(); ++verb) {
    if (!is_mover(*verb)) continue;
    const auto next = verb + 1;
    const auto end = next + std::min(furthest, words.end() - next);
    const auto particle = std::find_if(next, end, [&](const SaidWord& word) {
      return word.after_pause || is_mover(word) || is_way_out(*verb, word) ||
             is_one_of(word.stem, {"arm", "and", "but"});
    });
    if (particle == end || particle->after_pause) continue;
    if (is_way_out(*verb, *particle)) std::rotate(next, particle, particle + 1);
  }
}

bool is_word_of_place(const std::string& stem) {
  return is_one_of(stem, {"at",    "wher",   "under",  "over",    "abov",       "below",  "in",
                          "on",    "acros",  "around", "round",   "by",         "up",     "down",
                          "along", "behind", "into",   "besid",   "between",    "next",   "befor",
                          "after", "from",   "to",     "off",     "near",       "out",    "here",
                          "ther",  "when",   "as",     "beneath", "underneath", "through"});
}

/// "Cloth left", "2 cm left".
bool is_what_is_left(const std::string& stem) {
  return is_one_of(stem,
                   {"cloth", "fabric", "material", "room",    "spac",   "eas",   "cm",   "m",
                    "mm",    "inch",   "length",   "fullnes", "exces",  "much",  "lot",  "bit",
                    "som",   "any",    "noth",     "anyth",   "someth", "extra", "slack"});
}

/// "Drop the armhole", "lift the shoulder": what is to be done, where it begins a clause.
void read_orders(std::vector<SaidWord>& words) {
  for (std::size_t i = 0; i + 1 < words.size(); ++i) {
    if (i > 0 && !words[i].after_pause) continue;
    const std::string typed = letters_of(words[i].typed);
    if (typed == "drop") words[i].stem = "lower";
    if (typed == "lift") words[i].stem = "rais";
  }
}

bool is_comparative_word(const SaidWord& word) {
  return std::ranges::find(comparatives(), word.stem) != comparatives().end();
}

/// Reads the words one term after the other.
class TermReader {
 public:
  explicit TermReader(std::string_view said) : words_(plain_words(said)) {
    for (SaidWord& word : words_) word.stem = is_known(word.stem) ? word.stem : mended(word.stem);
    read_orders(words_);
    join_moves(words_);
  }

  Terms read() const {
    Terms terms;
    for (std::size_t at = 0; at < words_.size(); at += terms.back().words.size()) {
      terms.push_back(term_at(at));
    }
    return terms;
  }

 private:
  /// How many words from there are in one clause.
  [[nodiscard]] std::size_t most_at(std::size_t at) const {
    const std::size_t longest = std::min(lexicon().longest, words_.size() - at);
    for (std::size_t count = 1; count < longest; ++count) {
      if (words_[at + count].after_pause) return count;
    }
    return longest;
  }

  [[nodiscard]] Term term_at(std::size_t at) const {
    const auto first = words_.begin() + static_cast<std::ptrdiff_t>(at);
    if (is_said_to_be_right(at) || is_right_thing(at)) return {{}, Speech::Fine, {*first}};
    if (const auto way = way_it_lies(at)) return lying(*way, *first);
    const std::size_t least = names_no_side(at) ? 2 : 1;
    for (std::size_t count = most_at(at); count >= least; --count) {
      const std::vector<SaidWord> some(first, first + static_cast<std::ptrdiff_t>(count));
      Stems stems;
      for (const SaidWord& word : some) stems.push_back(word.stem);
      const auto found = lexicon().sayings.find(stems);
      if (found == lexicon().sayings.end()) continue;
      const bool compares = std::ranges::any_of(some, is_comparative_word);
      return {found->second.concepts, found->second.speech, some, compares};
    }
    return {{}, Speech::None, {*first}, false, !is_known(first->stem)};
  }

  static Term lying(Concept way, const SaidWord& word) {
    Term term{{}, Speech::None, {word}};
    term.concepts.add(way);
    return term;
  }

  /// The word before or behind, without a pause between; empty if there is none.
  [[nodiscard]] std::string stem_before(std::size_t at) const {
    return at > 0 && !words_[at].after_pause ? words_[at - 1].stem : "";
  }
  [[nodiscard]] std::string stem_behind(std::size_t at) const {
    return at + 1 < words_.size() && !words_[at + 1].after_pause ? words_[at + 1].stem : "";
  }

  /// "The back waist is up"; not "up to the chin".
  [[nodiscard]] std::optional<Concept> way_it_lies(std::size_t at) const {
    const std::string& stem = words_[at].stem;
    const std::string behind = stem_behind(at);
    const bool ends = behind.empty() || is_one_of(behind, {"at", "by", "and", "but"});
    if (!words_[at].after_is || !ends || (stem != "up" && stem != "down")) return std::nullopt;
    return stem == "up" ? Concept::Rides : Concept::Low;
  }

  /// "The right length".
  [[nodiscard]] bool is_right_thing(std::size_t at) const {
    return words_[at].stem == "right" &&
           is_one_of(stem_behind(at), {"siz", "length", "shap", "plac", "spot", "height", "width",
                                       "amount", "angl", "position"});
  }

  /// "Right at the back", "cloth left over"; not "on the right", "left shoulder".
  [[nodiscard]] bool names_no_side(std::size_t at) const {
    const bool is_left = words_[at].stem == "left";
    if (!is_left && words_[at].stem != "right") return false;
    const std::string before = stem_before(at), behind = stem_behind(at);
    if (words_[at].after_the || before == "on") return false;
    const bool is_where = is_word_of_place(behind);
    if (is_left && is_what_is_left(before)) return is_where || behind.empty();
    if (behind.empty()) return words_[at].after_is;
    return is_where && !(is_left && (before.empty() || is_seen(before)));
  }

  [[nodiscard]] static bool is_seen(const std::string& stem) {
    const auto found = lexicon().sayings.find({stem});
    return found != lexicon().sayings.end() && found->second.concepts.has_any(is_sight);
  }

  /// "The neck is right", at the end of a clause, and "not right at the neck" are no side.
  [[nodiscard]] bool is_said_to_be_right(std::size_t at) const {
    const bool after_not = at > 0 && words_[at - 1].stem == "not";
    if (words_[at].stem != "right" || !(words_[at].after_is || after_not)) return false;
    const std::string behind = stem_behind(at);
    return behind.empty() || is_one_of(behind, {"and", "but"}) ||
           (after_not && is_word_of_place(behind));
  }

  std::vector<SaidWord> words_;
};

}  // namespace

Terms terms_of(std::string_view said) { return TermReader(said).read(); }

}  // namespace blockwright
