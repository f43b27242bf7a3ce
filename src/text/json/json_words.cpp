#include "json_words.hpp"

#include <algorithm>

namespace blockwright {

bool is_digit(char c) { return c >= '0' && c <= '9'; }

bool is_space(std::string_view text) {
  return text.find_first_not_of(" \t\r\n") == std::string_view::npos;
}

std::string_view word_at(std::string_view text, std::size_t at) {
  const std::size_t found = text.find_first_of(" \t\r\n,:;{}[]()\"", at + 1);
  return text.substr(at, std::min(found, text.size()) - at);
}

std::string_view token_at(std::string_view text, std::size_t at) {
  if (text[at] != '"') return word_at(text, at);
  const std::size_t found = text.find_first_of("\"\n", at + 1);
  return text.substr(at, std::min(found, text.size() - 1) + 1 - at);
}

}  // namespace blockwright
