#pragma once

#include <cstddef>
#include <string>
#include <string_view>

namespace blockwright {

// Whatever goes to a terminal, into a report, JSON or onto paper passes through here. A name may
// hold any bytes: a file's name, an argument, a text of a file. Sent as they are, some would move
// the cursor, recolour or retitle the terminal, begin a line of their own or turn the order of the
// letters round.

/// Whether a character may be sent as it is. Not so: control characters (C0, DEL and C1, U+0000 to
/// U+001F and U+007F to U+009F), line and paragraph separator, the characters that embed, override
/// or isolate a direction of writing (U+202A to U+202E, U+2066 to U+2069), noncharacters, and bytes
/// that are not UTF-8 (kNotUtf8). Client and style files refuse a text that holds one.
///
/// The marks U+200E, U+200F and U+061C, joiners and variation selectors may: texts in Hebrew,
/// Arabic and Persian and many emoji need them, and they turn nothing round that a letter would
/// not. Source: Unicode 15, chapter 23 and UAX 9, from memory.
bool is_printable(char32_t code);

/// A text on one line, each character that is not printable written as JSON writes it: "\n",
/// "\u001b", "\u202e"; a byte that is not UTF-8 as "\xff".
///
/// 1. All other characters stay as they are, byte for byte; a backslash is no exception. Done
///    twice it changes nothing more. What was escaped cannot be told from what was typed so: it is
///    for people, not to be read back.
/// 2. The result is UTF-8. Any bytes give some text.
std::string printable(std::string_view text);

/// The same of a text of our own lines: line feeds stay. Of JSON text it is the same JSON, if that
/// is UTF-8 and has its line feeds between values only.
std::string printable_lines(std::string_view text);

/// Characters of a value that a message shows.
inline constexpr std::size_t kMostShown = 60;

/// A value as a message shows it: printable, and of one that this makes shorter the beginning and
/// how many characters more there are: "aaaa... (940 more)".
std::string shown(std::string_view value, std::size_t most = kMostShown);

/// A file's path, or a place in a file, as a message shows it: printable, and whole where a file
/// can have that name (a path has 4096 bytes at most, POSIX limits.h on Linux). A longer one as
/// shown().
std::string shown_place(std::string_view place);

}  // namespace blockwright
