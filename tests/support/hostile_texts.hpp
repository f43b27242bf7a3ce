#pragma once

#include "blockwright/base/printable.hpp"
#include "blockwright/base/utf8.hpp"
#include "support/random.hpp"

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace blockwright {

/// One text round each character from `first` to `last`.
inline void add_each(std::vector<std::string>& texts, CodeRange range) {
  for (char32_t code = range.first; code <= range.last; ++code) {
    std::string text = "ann";
    append_utf8(text, code);
    texts.push_back(text + "a");
  }
}

/// What a terminal would take for commands, lines that look like the program's own, odd encodings.
inline std::vector<std::string> written_by_hand() {
  return {
      "a\ndone      eve.json: Eve; front waist 9.0°; measures back within 0.00 mm; 9 pages, 2 "
      "files",
      "a\n0 clients: 0 done, 0 warned, 0 unchanged, 0 failed",
      "a\r\033[Kdone      eve.json",
      "\033]0;title\007",
      "\033]8;;file:eve\033\\link\033]8;;\033\\",
      "\033[2J\033[1;1H",
      "\u009b2J",
      "\u009d0;title\u009c",
      "a\", \"state\": \"done",
      "a\\\", \\u001b \\x1b \\n",
      "\u202egpj.nosj",
      "\u2067\u2066\u2069\u202c",
      "\xEF\xBB\xBFname",
      "\xC0\x8A\xE0\x80\x8A",
      "\xED\xA0\x80\xED\xB0\x80",
      "\xF4\x90\x80\x80",
      "\xE2\x80",
      "%s%n{}{0}",
      "--out",
      "-",
      ".",
      " ",
      "\n",
      "$(id)`id`;&|<>'\"*?"};
}

inline std::string repeated(const std::string& unit, std::size_t size) {
  std::string text;
  while (text.size() < size) text += unit;
  return text;
}

/// 500 names and texts that somebody means harm with, or that a broken disk or program made: every
/// character that is not printable, some written by hand, 64 KB, and bytes that are not UTF-8. The
/// same in every run; no NUL and no path separator, so that each could be a file's name or an
/// argument if it were short enough.
inline std::vector<std::string> hostile_texts() {
  constexpr std::size_t count = 500;
  constexpr std::size_t large = std::size_t{64} * 1024;
  std::vector<std::string> texts = written_by_hand();
  for (const CodeRange range : {CodeRange{0x01, 0x1F},
                                {0x7F, 0x9F},
                                {0x2028, 0x202E},
                                {0x2066, 0x2069},
                                {0xFDD0, 0xFDD1},
                                {0xFFFE, 0xFFFF},
                                {0x10FFFE, 0x10FFFF}}) {
    add_each(texts, range);
  }
  for (const char* unit : {"a", "\n", "\033[7m", "\u202e", "\xff", "é", "🧵", "a b"}) {
    texts.push_back(repeated(unit, large));
  }
  for (int byte = 0x80; byte <= 0xFF; ++byte) {
    texts.push_back(std::string("ann") + static_cast<char>(byte) + "a");
  }
  for (Random random(20260314); texts.size() < count;) {
    std::string text;
    for (int i = random.whole(1, 80); i > 0; --i) {
      const char byte = static_cast<char>(random.whole(1, 255));
      if (byte != '/') text += byte;
    }
    texts.push_back(text + "z");
  }
  return texts;
}

/// The first character that must not reach a terminal or JSON, with some text before it: "U+001B
/// after ...". Nothing if there is none. Line feeds are lines. Independent of printable(): the
/// ranges are those that were promised.
inline std::optional<std::string> harm_in(std::string_view sent) {
  constexpr CodeRange harmful[] = {
      {0x00, 0x09}, {0x0B, 0x1F}, {0x7F, 0x9F}, {0x2028, 0x202E}, {0x2066, 0x2069}};
  for (std::size_t at = 0; at < sent.size();) {
    const Utf8Character character = utf8_at(sent, at);
    bool harms = character.code == kNotUtf8;
    for (const CodeRange& range : harmful) harms = harms || range.holds(character.code);
    if (harms) {
      const std::size_t from = at < 60 ? 0 : at - 60;
      return code_point_name(character.code) + " after " + printable(sent.substr(from, at - from));
    }
    at += character.size;
  }
  return std::nullopt;
}

}  // namespace blockwright
