#include "by_hand.hpp"

#include <algorithm>
#include <initializer_list>
#include <optional>

namespace blockwright {
namespace {

using SaidWords = std::vector<SaidWord>;
using Letters = std::initializer_list<std::string_view>;

bool is_any(const SaidWord& word, const Letters& list) {
  return std::ranges::find(list, letters_of(word.typed)) != list.end();
}

/// Who holds the cloth.
bool is_person(const SaidWord& word) {
  return is_any(word, {"i", "ive", "im", "id", "ill", "we", "weve", "you", "youve", "your", "she",
                       "shes", "he", "one"});
}

bool is_being_able(const SaidWord& word) {
  return is_any(word, {"can", "could", "cant", "cannot", "couldnt", "able", "let", "nothing",
                       "keep", "have"});
}

/// SaidWords that may stand between the person and what she does.
bool is_between(const SaidWord& word) {
  return is_being_able(word) ||
         is_any(word, {"to",     "still",  "easily", "just", "even", "only", "did",    "do", "have",
                       "had",    "was",    "am",     "be",   "also", "then", "really", "me", "keep",
                       "hardly", "barely", "always", "not",  "got",  "left", "will"});
}

bool is_of_feeling(const SaidWord& word) {
  return is_any(word, {"feel", "feels", "felt", "get", "gets", "getting", "being", "am", "im"});
}

bool is_measure(const SaidWord& word) {
  return is_any(word, {"cm", "mm", "inch", "inches", "centimetre", "centimetres", "centimeter",
                       "centimeters", "millimetre", "millimetres"});
}

bool is_stuff(const SaidWord& word) {
  return is_any(word, {"cloth", "fabric", "material", "fold", "tuck", "dart", "excess", "handful"});
}

bool is_part_of_hand(const SaidWord& word) {
  return is_any(word,
                {"hand", "hands", "fist", "finger", "fingers", "palm", "thumb", "arm", "arms"});
}

/// One word of a text, and what stands around it up to the next pause.
class Deed {
 public:
  Deed(const SaidWords& words, std::size_t at) : words_(words), at_(at) {}

  /// "Pinch" of "I can pinch", "pinch out": "out"; nothing where the cloth does it.
  [[nodiscard]] std::optional<SaidWords> by_hand() const {
    const SaidWord& word = words_[at_];
    if (is_any(word, {"pull", "pulling", "pulled", "tug", "tugging"})) return pulled();
    const bool holds = word.stem == "pinch" || word.stem == "grab" || word.stem == "hold" ||
                       word.stem == "gather" || (word.stem == "fit" && follows(is_part_of_hand));
    if (!holds || next_is("out") || !is_held()) return std::nullopt;
    return SaidWords{word, with_stem("out")};
  }

 private:
  [[nodiscard]] bool is_held() const {
    const SaidWord& word = words_[at_];
    if (word.stem == "fit") return is_done_by_person();
    if (is_any(word, {"pinches", "grabs", "gathers"})) return false;
    if (is_any(word, {"pinched"})) return at_ == 0 || !is_of_feeling(words_[at_ - 1]);
    const bool after_measure = at_ > 0 && is_measure(words_[at_ - 1]);
    return after_measure || next_is("of") || follows(is_measure) || follows(is_stuff) ||
           is_done_by_person();
  }

  /// "I can", "able to", "you could easily"; not "it can".
  [[nodiscard]] bool is_done_by_person() const {
    bool is_able = false;
    for (std::size_t i = at_; i > 0 && !words_[i].after_pause; --i) {
      const SaidWord& before = words_[i - 1];
      if (is_person(before)) return true;
      if (is_any(before, {"it", "they", "that", "which", "this", "these"})) return false;
      if (!is_between(before)) break;
      is_able = is_able || is_being_able(before);
    }
    return is_able;
  }

  [[nodiscard]] std::optional<SaidWords> pulled() const {
    if (!is_done_by_person()) return std::nullopt;
    const auto goes = [&](const Letters& ways) {
      return follows([&](const SaidWord& word) { return is_any(word, ways); });
    };
    if (goes({"away", "out", "off"})) return SaidWords{with_stem("pinch"), with_stem("out")};
    if (goes({"down"})) return SaidWords{with_stem("tug"), with_stem("down")};
    return std::nullopt;
  }

  [[nodiscard]] SaidWord with_stem(std::string stem) const {
    SaidWord word = words_[at_];
    word.after_pause = word.after_pause && stem != "out" && stem != "down";
    word.stem = std::move(stem);
    return word;
  }

  [[nodiscard]] bool next_is(std::string_view letters) const {
    return at_ + 1 < words_.size() && letters_of(words_[at_ + 1].typed) == letters;
  }

  /// Among the next few words.
  template <class IsSuch>
  [[nodiscard]] bool follows(IsSuch is_such) const {
    constexpr std::size_t furthest = 5;
    const std::size_t end = std::min(words_.size(), at_ + 1 + furthest);
    for (std::size_t i = at_ + 1; i < end && !words_[i].after_pause; ++i) {
      if (is_such(words_[i])) return true;
    }
    return false;
  }

  const SaidWords& words_;
  std::size_t at_;
};

}  // namespace

std::vector<SaidWord> with_hands_told(const std::vector<SaidWord>& words) {
  SaidWords told;
  for (std::size_t at = 0; at < words.size(); ++at) {
    const auto by_hand = Deed(words, at).by_hand();
    if (by_hand) {
      told.insert(told.end(), by_hand->begin(), by_hand->end());
    } else {
      told.push_back(words[at]);
    }
  }
  return told;
}

}  // namespace blockwright
