// What may be sent to a terminal, into a report, JSON or onto paper.
#include "blockwright/base/printable.hpp"

#include "blockwright/base/error.hpp"
#include "blockwright/base/utf8.hpp"

#include <catch2/catch.hpp>

#include <string>
#include <utility>
#include <vector>

using namespace blockwright;

namespace {

std::string letter(char32_t code) {
  std::string text;
  append_utf8(text, code);
  return text;
}

/// First and last of each range that is not sent. Source: Unicode 15, chapter 23 (controls,
/// separators, noncharacters) and UAX 9, table 4 (embeddings, overrides, isolates), from memory.
const std::vector<std::pair<char32_t, char32_t>> kNotSent = {
    {0x00, 0x1F},     {0x7F, 0x9F},     {0x2028, 0x202E},   {0x2066, 0x2069},
    {0xFDD0, 0xFDEF}, {0xFFFE, 0xFFFF}, {0x1FFFE, 0x1FFFF}, {0x10FFFE, 0x10FFFF},
};

}  // namespace

TEST_CASE("each class of characters that is not sent begins and ends where Unicode says") {
  for (const auto& [first, last] : kNotSent) {
    CAPTURE(first, last);
    for (char32_t code = first; code <= last; ++code) {
      CHECK_FALSE(is_printable(code));
      CHECK(printable(letter(code)).front() == '\\');
    }
    if (first > 0) CHECK(is_printable(first - 1));
    if (last < 0x10FFFF) CHECK(is_printable(last + 1));
  }
  CHECK_FALSE(is_printable(kNotUtf8));
}

TEST_CASE("what is not sent is written as JSON writes it") {
  CHECK(printable("a\nb\tc\rd") == "a\\nb\\tc\\rd");
  CHECK(printable(std::string("\0\x1b\x7f", 3)) == "\\u0000\\u001b\\u007f");
  CHECK(printable("\u009b31m") == "\\u009b31m");
  CHECK(printable("\u2028\u2029\u202a\u202e\u2066\u2069") ==
        "\\u2028\\u2029\\u202a\\u202e\\u2066\\u2069");
  // RFC 8259, 7: two halves of UTF-16 for what lies beyond U+FFFF.
  CHECK(printable(letter(0x1FFFE) + letter(0x10FFFF)) == "\\ud83f\\udffe\\udbff\\udfff");
}

TEST_CASE("bytes that are not UTF-8 are shown by their values") {
  CHECK(printable("a\xFFz") == "a\\xffz");
  CHECK(printable("\x9b") == "\\x9b");                    // C1 as one byte
  CHECK(printable("\xC0\x8A") == "\\xc0\\x8a");           // too long a form of a line feed
  CHECK(printable("\xED\xA0\x80") == "\\xed\\xa0\\x80");  // half of UTF-16
  CHECK(printable("\xF4\x90\x80\x80") == "\\xf4\\x90\\x80\\x80");
  CHECK(printable("\xE2\x80") == "\\xe2\\x80");  // cut off
}

TEST_CASE("letters of any script, accents, emoji and marks of direction stay as they are") {
  for (const std::string text :
       {"Ondine Marsh", "Łucja Żółć-Ñandú", "e\u0301 combining", "Ονδίνη / Ундина", "שלום עולם 123",
        "مرحبا بالعالم", "日本語の名前", "नमस्ते", "🧵👩‍🎤🏴󠁧󠁢󠁳󠁣󠁴󠁿",
        "no-break\u00a0space", "a\\b \\n \\u202e", "\u200e\u200f\u061c\u200d\ufe0f\ufffd", ""}) {
    CAPTURE(text);
    CHECK(printable(text) == text);
    CHECK(printable_lines(text) == text);
    CHECK(shown(text) == text);
  }
}

TEST_CASE("line feeds alone are kept in lines, and doing it twice changes nothing") {
  const std::string text = "one\ntwo\r\n\tthree\x1b[2J\u202e\xff";
  CHECK(printable_lines(text) == "one\ntwo\\r\n\\tthree\\u001b[2J\\u202e\\xff");
  CHECK(printable(text) == "one\\ntwo\\r\\n\\tthree\\u001b[2J\\u202e\\xff");
  CHECK(printable(printable(text)) == printable(text));
  CHECK(printable_lines(printable_lines(text)) == printable_lines(text));
}

TEST_CASE("a long value is cut after sixty characters and says how many more there are") {
  const std::string sixty(60, 'a');
  CHECK(shown(sixty) == sixty);
  CHECK(shown(std::string(74, 'a')) == sixty + "... (14 more)");
  CHECK(shown(std::string(65536, 'a')) == sixty + "... (65476 more)");
  std::string letters;
  for (int i = 0; i < 80; ++i) letters += "ż";
  CHECK(shown(letters) == letters.substr(0, 120) + "... (20 more)");  // characters, not bytes
  CHECK(shown(std::string(80, '\xff')).ends_with("\\xff... (20 more)"));
  CHECK(shown("abcdefghijklmnopqrst", 5) == "abcde... (15 more)");
}

TEST_CASE("a value is cut only where that makes it shorter") {
  for (std::size_t size = 60; size <= 73; ++size) {
    const std::string value(size, 'a');
    CHECK(shown(value) == value);
  }
  for (std::size_t size = 74; size <= 2000; ++size) {
    CHECK(shown(std::string(size, 'a')).size() < size + 1);
  }
  CHECK(shown("shorten the upper back from blade to waist", 33) ==
        "shorten the upper back from blade to waist");
}

TEST_CASE("a path stays whole as long as a file can have it") {
  const std::string longest(4096, 'p');
  CHECK(shown_place(longest) == longest);
  const std::string beginning = longest.substr(0, 60);
  CHECK(shown_place(longest + "p") == beginning + "... (4037 more)");
  CHECK(shown_place("people/\n.json") == "people/\\n.json");
}

TEST_CASE("a problem is one printable line of limited length, whatever it holds") {
  const std::string hostile = "x\ndone      forged.json\x1b]0;title\x07\u202e";
  const std::string line =
      to_text({Severity::Error, "file.read", hostile, hostile, std::string("cure ") + hostile});
  CHECK(line.find('\n') == std::string::npos);
  CHECK(line == printable(line));
  const std::string flood(1 << 16, 'y');
  CHECK(to_text({Severity::Error, flood, flood, flood, flood}).size() < 5000);
}
