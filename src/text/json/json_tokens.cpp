#include "json_tokens.hpp"

namespace blockwright {
namespace {

bool is_between_tokens(char c) {
  return c == ' ' || c == '\t' || c == '\r' || c == '\n' || c == ',' || c == ':';
}

std::size_t skip_digits(std::string_view text, std::size_t at) {
  while (at < text.size() && text[at] >= '0' && text[at] <= '9') ++at;
  return at;
}

bool stands_at(std::string_view text, std::size_t at, std::string_view any_of) {
  return at < text.size() && any_of.find(text[at]) != std::string_view::npos;
}

// The number grammar of JSON (RFC 8259, part 6).
std::size_t end_of_number(std::string_view text, std::size_t at) {
  if (stands_at(text, at, "-")) ++at;
  at = stands_at(text, at, "0") ? at + 1 : skip_digits(text, at);
  if (stands_at(text, at, ".")) at = skip_digits(text, at + 1);
  if (!stands_at(text, at, "eE")) return at;
  ++at;
  if (stands_at(text, at, "+-")) ++at;
  return skip_digits(text, at);
}

std::size_t end_of_text(std::string_view text, std::size_t begin) {
  std::size_t at = begin + 1;
  while (text[at] != '"') at += text[at] == '\\' ? 2 : 1;
  return at + 1;
}

std::size_t end_of_token(std::string_view text, std::size_t begin) {
  if (stands_at(text, begin, "\"")) return end_of_text(text, begin);
  if (stands_at(text, begin, "tn")) return begin + 4;  // true, null
  if (stands_at(text, begin, "f")) return begin + 5;   // false
  if (stands_at(text, begin, "-0123456789")) return end_of_number(text, begin);
  return begin + 1;  // a bracket
}

}  // namespace

std::size_t TokenCursor::next_begin() const {
  std::size_t at = at_;
  while (at < text_.size() && is_between_tokens(text_[at])) ++at;
  return at;
}

TokenCursor::Span TokenCursor::next() {
  const std::size_t begin = next_begin();
  at_ = end_of_token(text_, begin);
  return {begin, at_};
}

}  // namespace blockwright
