#include "said_words.hpp"

#include "blockwright/text/small_letters.hpp"
#include "by_hand.hpp"
#include "vocabulary.hpp"

#include <algorithm>

namespace blockwright {
namespace {

bool is_letter(char c) { return (c >= 'a' && c <= 'z') || static_cast<unsigned char>(c) >= 0x80; }

bool is_digit(char c) { return c >= '0' && c <= '9'; }

/// "dont" of "don't"; all else that is no letter ends a word.
bool is_inside_word(char c) { return c == '\''; }

void drop_end(std::string& word, std::string_view end, std::size_t least) {
  if (word.size() >= least + end.size() && word.ends_with(end)) {
    word.resize(word.size() - end.size());
  }
}

/// Without their ends they would be "but", "not" and "hug".
bool is_kept_whole(std::string_view word) {
  constexpr std::string_view whole[] = {"butt", "butts", "note", "notes", "noted", "huge"};
  return std::ranges::find(whole, word) != std::ranges::end(whole);
}

/// "gapes", "gaping", "gaped" and "gape" are "gap"; "digs" and "digging" are "dig".
std::string stem_of(std::string word) {
  constexpr std::size_t least = 3;
  if (is_kept_whole(word)) return word;
  if (!word.ends_with("ss")) drop_end(word, "s", least);
  drop_end(word, "ing", least);
  drop_end(word, "ed", least);
  drop_end(word, "e", least);
  const std::size_t size = word.size();
  if (size > least && word[size - 1] == word[size - 2]) word.pop_back();
  return word;
}

/// With the apostrophes and dashes of a keyboard for those of a printer.
std::string typed_plainly(std::string_view text) {
  constexpr std::string_view printed = "\xE2\x80";
  std::string plain;
  for (std::size_t i = 0; i < text.size(); ++i) {
    const bool is_printed = text.substr(i).starts_with(printed) && i + 2 < text.size();
    const char last = is_printed ? text[i + 2] : ' ';
    const bool is_apostrophe = last == '\x98' || last == '\x99';
    const bool is_dash = last == '\x93' || last == '\x94';
    if (is_apostrophe || is_dash) {
      plain += is_apostrophe ? "'" : ", ";
      i += 2;
    } else {
      plain += text[i];
    }
  }
  return plain;
}

/// A comma, a bracket or a dash between words; none within a number.
bool is_pause(std::string_view text, std::size_t at) {
  const auto near = [&](std::size_t i) { return i < text.size() ? text[i] : ' '; };
  const char c = text[at];
  if (c == '-') return near(at - 1) == ' ' && near(at + 1) == ' ';
  if (c == '.' || c == ',') return !is_digit(near(at + 1));
  return std::string_view(";:!?()\n").find(c) != std::string_view::npos;
}

/// Puts words together from their letters.
class WordReader {
 public:
  void letter(char c) {
    typed_ += c;
    if (!is_inside_word(c)) plain_ += small_letter(c);
  }

  void pause() { after_pause_ = true; }

  void end_word() {
    if (!plain_.empty()) add(typed_);
    plain_.clear();
    typed_.clear();
  }

  std::vector<SaidWord> taken() { return std::move(words_); }

 private:
  void add(const std::string& typed) {
    const auto form = std::ranges::find(other_forms(), plain_, &OtherForm::typed);
    if (form == other_forms().end()) return add_one(plain_, typed);
    for (const SaidWord& word : said_words(form->words)) add_one(word.typed, typed);
  }

  void add_one(const std::string& plain, const std::string& typed) {
    words_.push_back({stem_of(plain), typed, after_pause_ && !words_.empty()});
    after_pause_ = false;
  }

  std::vector<SaidWord> words_;
  std::string plain_, typed_;
  bool after_pause_ = false;
};

bool is_article(std::string_view small) {
  return std::ranges::find(articles(), small) != articles().end();
}

/// What stands before a side, "the left", "my right".
bool is_pointing(std::string_view small) {
  constexpr std::string_view words[] = {"the", "my", "her", "his", "your", "our", "its"};
  return std::ranges::find(words, small) != std::ranges::end(words);
}

bool is_of_being(std::string_view small) {
  return small == "is" || small == "are" || small == "was" || small == "its" || small == "thats";
}

/// "Right, the waist is loose" begins to speak, and names no side; "right: the waist" may.
bool begins_to_speak(std::string_view text) {
  const std::string small = in_small_letters(text);
  const std::size_t first = std::min(small.find_first_not_of(" \t"), small.size());
  return std::string_view(small).substr(first).starts_with("right,");
}

/// "No the neck gapes": an answer whose comma was not typed, and no word of the neck.
bool is_answer(const std::vector<SaidWord>& words, std::string_view next, std::string_view text) {
  constexpr std::string_view begins[] = {"the",  "my", "her", "his", "your", "our",
                                         "this", "it", "she", "he",  "i",    "its"};
  if (words.size() != 1) return false;
  const std::string first = letters_of(words.front().typed);
  return (first == "no" || (first == "right" && begins_to_speak(text))) &&
         std::ranges::find(begins, next) != std::ranges::end(begins);
}

}  // namespace

std::string letters_of(std::string_view typed) {
  std::string letters = in_small_letters(typed);
  std::erase_if(letters, is_inside_word);
  return letters;
}

std::vector<std::string_view> listed(std::string_view words) {
  constexpr std::string_view between = "; ";
  std::vector<std::string_view> items;
  for (std::size_t at = 0; at < words.size();) {
    const std::size_t end = std::min(words.find(between, at), words.size());
    items.push_back(words.substr(at, end - at));
    at = end + between.size();
  }
  return items;
}

std::vector<SaidWord> said_words(std::string_view text) {
  const std::string plain = typed_plainly(text);
  WordReader words;
  for (std::size_t i = 0; i < plain.size(); ++i) {
    if (is_letter(small_letter(plain[i])) || is_inside_word(plain[i])) {
      words.letter(plain[i]);
      continue;
    }
    words.end_word();
    if (is_pause(plain, i)) words.pause();
  }
  words.end_word();
  return words.taken();
}

std::vector<SaidWord> plain_words(std::string_view text) {
  std::vector<SaidWord> words;
  bool after_pause = false, after_is = false, after_the = false;
  for (SaidWord& word : with_hands_told(said_words(text))) {
    after_pause = after_pause || word.after_pause;
    const std::string small = letters_of(word.typed);
    if (is_article(small)) {
      if (is_answer(words, small, text)) words.clear();
      after_is = is_of_being(small);
      after_the = is_pointing(small);
      continue;
    }
    word.after_pause = after_pause && !words.empty();
    word.after_is = after_is;
    word.after_the = after_the;
    words.push_back(std::move(word));
    after_pause = after_is = after_the = false;
  }
  return words;
}

}  // namespace blockwright
