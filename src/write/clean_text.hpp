#pragma once

#include <string>
#include <string_view>

namespace blockwright::writing {

/// What stands for a byte or letter that cannot be shown.
inline constexpr char32_t kReplacement = 0xFFFD;

/// The letters of a UTF-8 text. Each byte that is not part of well-formed UTF-8 (Unicode 15, table
/// 3-7) becomes one kReplacement, so that any bytes give some text.
std::u32string letters_of(std::string_view utf8);

/// Requires: letters are Unicode scalar values, as letters_of gives them.
std::string utf8_of(std::u32string_view letters);

/// The letters of one drawn line: a tab or line end becomes a space; control characters and
/// noncharacters, which XML 1.0 forbids or discourages, become kReplacement.
std::u32string line_letters(std::string_view utf8);

/// line_letters() as UTF-8.
std::string clean_line(std::string_view utf8);

/// A clean line for XML text and quoted attributes: & < > " become entities.
std::string xml_text(std::string_view utf8);

}  // namespace blockwright::writing
