#pragma once

#include <string>
#include <string_view>

namespace blockwright {

/// The letters of one drawn line of UTF-8 text: a tab or line end becomes a space; each byte that
/// is not part of well-formed UTF-8 (Unicode 15, table 3-7), control characters and noncharacters,
/// which XML 1.0 forbids or discourages, become U+FFFD. So any bytes give some text.
std::u32string line_letters(std::string_view utf8);

/// The same as UTF-8.
std::string clean_line(std::string_view utf8);

}  // namespace blockwright
