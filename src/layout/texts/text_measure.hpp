#pragma once

#include "blockwright/text/text_fonts.hpp"

#include <string>
#include <string_view>
#include <vector>

namespace blockwright {

/// The text, or as many of its first letters as fit `room` mm followed by an ellipsis, at the given
/// em height. A room too small for one letter gives the ellipsis alone.
std::string shortened(TextFonts& fonts, std::string_view text, double height, double room);

/// The text broken between words into lines no wider than `room` mm; words that are wider than a
/// line are broken inside. No text gives no lines.
std::vector<std::string> wrapped(TextFonts& fonts, std::string_view text, double height,
                                 double room);

}  // namespace blockwright
