#include "text_measure.hpp"

#include "blockwright/text/utf8.hpp"

namespace blockwright {
namespace {

constexpr std::string_view kEllipsis = "\u2026";

std::string_view without_end_spaces(std::string_view text) {
  while (text.ends_with(' ')) text.remove_suffix(1);
  return text;
}

// Bytes of the next line: up to the last space that fits, else as many letters as fit, at least
// one.
std::size_t next_break(TextFonts& fonts, std::string_view text, double room) {
  const std::size_t reaches = fonts.reaching(text, room);
  if (reaches == text.size()) return reaches;
  const std::size_t before = text.substr(0, reaches).rfind(' ');
  if (text[reaches] != ' ' && before != std::string_view::npos && before > 0) return before;
  const std::size_t fits = fonts.fitting(text, room);
  const std::size_t space = text.rfind(' ', fits);
  if (space != std::string_view::npos && space > 0) return space;
  return fits > 0 ? fits : utf8_at(text, 0).size;
}

}  // namespace

std::string shortened(TextFonts& fonts, std::string_view text, double height, double room) {
  const double most = room / height;
  if (fonts.set(text).width <= most) return std::string(text);
  const std::size_t fits = fonts.fitting(text, most - fonts.set(kEllipsis).width);
  return std::string(without_end_spaces(text.substr(0, fits))).append(kEllipsis);
}

std::vector<std::string> wrapped(TextFonts& fonts, std::string_view text, double height,
                                 double room) {
  std::vector<std::string> lines;
  while (!text.empty()) {
    const std::size_t size = next_break(fonts, text, room / height);
    lines.emplace_back(without_end_spaces(text.substr(0, size)));
    text.remove_prefix(size);
    while (text.starts_with(' ')) text.remove_prefix(1);
  }
  return lines;
}

}  // namespace blockwright
