#include "blockwright/base/number_text.hpp"
#include "vocabulary.hpp"

#include <algorithm>

namespace blockwright {
namespace {

bool is_letter(char c) { return (c >= 'a' && c <= 'z') || static_cast<unsigned char>(c) >= 0x80; }

char small_letter(char c) { return c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c; }

/// "dont" of "don't"; all else that is no letter ends a word.
bool is_inside_word(char c) { return c == '\''; }

void drop_end(std::string& word, std::string_view end, std::size_t least) {
  if (word.size() >= least + end.size() && word.ends_with(end)) {
    word.resize(word.size() - end.size());
  }
}

/// "gapes", "gaping", "gaped" and "gape" are "gap"; "digs" and "digging" are "dig".
std::string stem_of(std::string word) {
  constexpr std::size_t least = 3;
  if (!word.ends_with("ss")) drop_end(word, "s", least);
  drop_end(word, "ing", least);
  drop_end(word, "ed", least);
  drop_end(word, "e", least);
  const std::size_t size = word.size();
  if (size > least && word[size - 1] == word[size - 2]) word.pop_back();
  return word;
}

}  // namespace

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
  std::vector<SaidWord> words;
  std::string stem, typed;
  const auto end_word = [&] {
    if (!stem.empty()) words.push_back({stem_of(stem), typed});
    stem.clear();
    typed.clear();
  };
  for (const char c : text) {
    const char small = small_letter(c);
    if (!is_letter(small) && !is_inside_word(c)) {
      end_word();
      continue;
    }
    typed += c;
    if (!is_inside_word(c)) stem += small;
  }
  end_word();
  return words;
}

}  // namespace blockwright
