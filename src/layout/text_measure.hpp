#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace blockwright {

/// Widths of printed text without a font at hand: the advance widths of DejaVu Sans for ASCII, and
/// cautious averages (0.8 em Latin and Greek, 0.9 em Cyrillic, 1 em everything wide) for the rest.
/// Writers that use another font may come out a little wider or narrower.

/// An upper estimate of the width of a line of UTF-8 text, in mm, at the given em height.
double text_width(std::string_view text, double height);

/// The text, or as many of its first letters as fit `room` mm followed by an ellipsis. Never cuts a
/// letter in two; a room too small for one letter gives the ellipsis alone.
std::string shortened(std::string_view text, double height, double room);

/// The text broken between words into lines no wider than `room` mm; words that are wider than a
/// line are broken inside. No text gives no lines.
std::vector<std::string> wrapped(std::string_view text, double height, double room);

/// The text with control characters, line ends among them, made spaces: what may stand on one line.
std::string on_one_line(std::string_view text);

}  // namespace blockwright
