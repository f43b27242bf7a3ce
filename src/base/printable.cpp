#include "blockwright/base/printable.hpp"

#include "blockwright/base/utf8.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>

namespace blockwright {
namespace {

constexpr std::array<CodeRange, 5> kNotPrinted{{
    {0x00, 0x1F},      // C0
    {0x7F, 0x9F},      // DEL and C1
    {0x2028, 0x202E},  // separators of lines and paragraphs, embeddings and overrides
    {0x2066, 0x2069},  // isolates
    {0xFDD0, 0xFDEF},  // noncharacters; the last two of each plane are, too
}};

constexpr std::size_t kLongestPath = 4096;

bool is_plain_ascii(char c) { return c >= 0x20 && c < 0x7F; }

/// As JSON writes a code point: those beyond U+FFFF as two halves.
std::string as_json_writes(char32_t code) {
  constexpr char32_t first_beyond = 0x10000;
  if (code == '\n') return "\\n";
  if (code == '\r') return "\\r";
  if (code == '\t') return "\\t";
  const auto half = [](char32_t unit) {
    return fmt::format("\\u{:04x}", static_cast<unsigned>(unit));
  };
  if (code < first_beyond) return half(code);
  const char32_t beyond = code - first_beyond;
  return half(0xD800 + (beyond >> 10U)) + half(0xDC00 + (beyond & 0x3FFU));
}

enum class LineFeed { Escaped, Kept };

/// The character that begins at `at`, as it is sent.
void append_sent(std::string& sent, std::string_view text, std::size_t at,
                 const Utf8Character& character, LineFeed line_feed) {
  const bool kept = character.code == '\n' && line_feed == LineFeed::Kept;
  if (kept || is_printable(character.code)) {
    sent += text.substr(at, character.size);
  } else if (character.code == kNotUtf8) {
    sent += fmt::format("\\x{:02x}", byte_at(text, at));
  } else {
    sent += as_json_writes(character.code);
  }
}

std::string sent(std::string_view text, LineFeed line_feed) {
  std::string result;
  result.reserve(text.size());
  for (std::size_t at = 0; at < text.size();) {
    const auto odd = std::find_if_not(text.begin() + static_cast<std::ptrdiff_t>(at), text.end(),
                                      is_plain_ascii);
    const auto end = static_cast<std::size_t>(odd - text.begin());
    result += text.substr(at, end - at);
    at = end;
    if (at == text.size()) break;
    const Utf8Character character = utf8_at(text, at);
    append_sent(result, text, at, character, line_feed);
    at += character.size;
  }
  return result;
}

}  // namespace

bool is_printable(char32_t code) {
  constexpr char32_t last_two = 0xFFFE;  // of each plane; kNotUtf8 is like one of them
  return (code & last_two) != last_two &&
         std::ranges::none_of(kNotPrinted, [code](const CodeRange& r) { return r.holds(code); });
}

std::string printable(std::string_view text) { return sent(text, LineFeed::Escaped); }

std::string printable_lines(std::string_view text) { return sent(text, LineFeed::Kept); }

std::string shown(std::string_view value, std::size_t most) {
  std::size_t characters = 0, end = 0;
  for (std::size_t at = 0; at < value.size(); ++characters) {
    at += utf8_at(value, at).size;
    if (characters < most) end = at;
  }
  if (characters <= most) return printable(value);
  const std::string rest = fmt::format("... ({} more)", characters - most);
  const bool is_shorter = most + rest.size() < characters;
  return is_shorter ? printable(value.substr(0, end)) + rest : printable(value);
}

std::string shown_place(std::string_view place) {
  return place.size() > kLongestPath ? shown(place) : printable(place);
}

}  // namespace blockwright
