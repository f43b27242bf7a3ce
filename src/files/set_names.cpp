#include "file_set.hpp"

#include <algorithm>

namespace blockwright {
namespace {

constexpr std::string_view kStemBegin = ".blockwright-";

// The list: words that end in NUL, which no file name holds. First the format, then each file with
// "+" or "-" before its name, for one that had an older version or had none, then the end.
constexpr std::string_view kListFormat = "blockwright-set-1";
constexpr std::string_view kEnd = ".";
constexpr std::string_view kTakenBack = "<";
constexpr char kHad = '+';
constexpr char kHadNot = '-';
constexpr char kWordEnd = '\0';

/// Takes the digits at the front of the text; at least one.
bool take_digits(std::string_view& text) {
  const std::size_t end = std::min(text.find_first_not_of("0123456789"), text.size());
  text.remove_prefix(end);
  return end > 0;
}

bool take(std::string_view& text, std::string_view word) {
  if (!text.starts_with(word)) return false;
  text.remove_prefix(word.size());
  return true;
}

bool is_end_of_name(std::string_view text) {
  if (text == ".set") return true;
  return take(text, ".") && take_digits(text) && (text == ".new" || text == ".old");
}

/// The next word of a list, or nothing if no whole one is left.
std::optional<std::string_view> take_word(std::string_view& text) {
  const std::size_t end = text.find(kWordEnd);
  if (end == std::string_view::npos) return std::nullopt;
  std::string_view word = text.substr(0, end);
  text.remove_prefix(end + 1);
  return word;
}

bool is_entry(std::string_view word) {
  if (word.size() < 2 || (word[0] != kHad && word[0] != kHadNot)) return false;
  const std::string_view name = word.substr(1);
  return name != "." && name != ".." && name.find('/') == std::string_view::npos;
}

std::string word_of(std::string_view text) { return std::string(text) + kWordEnd; }

}  // namespace

std::string set_stem(long process, unsigned set) {
  return std::string(kStemBegin) + std::to_string(process) + "-" + std::to_string(set);
}

std::string list_name(const std::string& stem) { return stem + ".set"; }

std::string new_name(const std::string& stem, std::size_t i) {
  return stem + "." + std::to_string(i) + ".new";
}

std::string old_name(const std::string& stem, std::size_t i) {
  return stem + "." + std::to_string(i) + ".old";
}

std::optional<std::string> set_stem_of(const std::string& name) {
  std::string_view rest = name;
  const bool begins =
      take(rest, kStemBegin) && take_digits(rest) && take(rest, "-") && take_digits(rest);
  if (!begins || !is_end_of_name(rest)) return std::nullopt;
  return name.substr(0, name.size() - rest.size());
}

std::string set_list_text(const std::vector<SetEntry>& entries) {
  std::string text = word_of(kListFormat);
  for (const SetEntry& entry : entries)
    text += (entry.had_older ? kHad : kHadNot) + word_of(entry.name);
  return text + word_of(kEnd);
}

std::string taken_back_text() { return word_of(kTakenBack); }

std::optional<SetList> set_list_in(std::string_view text) {
  if (take_word(text) != kListFormat) return std::nullopt;
  SetList list;
  auto word = take_word(text);
  for (; word && *word != kEnd; word = take_word(text)) {
    if (!is_entry(*word)) return std::nullopt;
    list.entries.push_back({std::string(word->substr(1)), word->front() == kHad});
  }
  if (!word) return std::nullopt;
  list.taken_back = take_word(text) == kTakenBack;
  return list;
}

}  // namespace blockwright
