#include "vocabulary.hpp"

#include <algorithm>
#include <map>

namespace blockwright {
namespace {

using Stems = std::vector<std::string>;

bool is_article(const SaidWord& word) {
  std::string small = word.typed;
  std::ranges::transform(small, small.begin(), [](unsigned char c) {
    return static_cast<char>(c >= 'A' && c <= 'Z' ? c - 'A' + 'a' : c);
  });
  return std::ranges::find(articles(), small) != articles().end();
}

Stems stems_of(const std::vector<SaidWord>& words) {
  Stems stems;
  for (const SaidWord& word : words) stems.push_back(word.stem);
  return stems;
}

/// The vocabulary by its words.
struct Lexicon {
  std::map<Stems, Concepts> sayings;
  std::vector<std::string> empty;
  std::vector<std::string> single;  ///< words that are a saying each
  std::size_t longest = 1;
};

Lexicon made_lexicon() {
  Lexicon lexicon;
  for (const Saying& saying : vocabulary()) {
    Concepts concepts;
    for (const Concept one : saying.means) concepts.add(one);
    for (const std::string_view words : listed(saying.words)) {
      const Stems stems = stems_of(plain_words(words));
      lexicon.longest = std::max(lexicon.longest, stems.size());
      if (stems.size() == 1) lexicon.single.push_back(stems.front());
      lexicon.sayings.emplace(stems, concepts);
    }
  }
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

/// The first words "lower" and "narrow" are what is to be done, elsewhere what is seen.
Concepts wished(const std::string& first, Concepts concepts) {
  const auto swap = [&](Concept seen, Concept mended_by) {
    concepts.remove(seen);
    concepts.add(mended_by);
  };
  if (first == "lower") swap(Concept::Low, Concept::High);
  if (first == "narrow") swap(Concept::Narrow, Concept::Wide);
  return concepts;
}

/// Reads what was said from its first word to its last, the longest sayings first.
class Reader {
 public:
  explicit Reader(std::string_view said) : words_(plain_words(said)) {
    for (SaidWord& word : words_) word.stem = is_known(word.stem) ? word.stem : mended(word.stem);
  }

  Understood read() {
    for (std::size_t at = 0; at < words_.size();) at += taken(at);
    const bool both = result_.concepts.has(Concept::Front) && result_.concepts.has(Concept::Back);
    if (both) {  // "front and back" is all of it
      result_.concepts.remove(Concept::Front);
      result_.concepts.remove(Concept::Back);
    }
    return std::move(result_);
  }

 private:
  static bool is_known(const std::string& stem) {
    return lexicon().sayings.contains({stem}) ||
           std::ranges::find(lexicon().empty, stem) != lexicon().empty.end();
  }

  /// How many words are read at once.
  std::size_t taken(std::size_t at) {
    const Lexicon& words = lexicon();
    for (std::size_t count = std::min(words.longest, words_.size() - at); count > 0; --count) {
      Stems stems;
      for (std::size_t i = 0; i < count; ++i) stems.push_back(words_[at + i].stem);
      const auto found = words.sayings.find(stems);
      if (found == words.sayings.end()) continue;
      add(at == 0 ? wished(stems.front(), found->second) : found->second, words_[at].stem);
      return count;
    }
    if (!is_known(words_[at].stem)) name(words_[at].typed);
    return 1;
  }

  /// Each word once, and no more than a person reads.
  void name(const std::string& typed) {
    std::vector<std::string>& unknown = result_.unknown;
    const bool is_new = std::ranges::find(unknown, typed) == unknown.end();
    if (is_new && unknown.size() < kMostUnknown) unknown.push_back(typed);
  }

  void add(const Concepts& concepts, const std::string& stem) {
    for (unsigned i = 0; i < kConceptCount; ++i) {
      if (concepts.has(Concept{i})) result_.concepts.add(Concept{i});
    }
    if (stem == "left") result_.side = BodySide::Left;
    if (stem == "right") result_.side = BodySide::Right;
  }

  std::vector<SaidWord> words_;
  Understood result_;
};

}  // namespace

std::vector<SaidWord> plain_words(std::string_view text) {
  std::vector<SaidWord> words = said_words(text);
  std::erase_if(words, is_article);
  return words;
}

Understood understood(std::string_view said) { return Reader(said).read(); }

}  // namespace blockwright
