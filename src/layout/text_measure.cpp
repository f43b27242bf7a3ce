#include "text_measure.hpp"

#include <array>

namespace blockwright {
namespace {

constexpr std::string_view kEllipsis = "\u2026";

// Advance widths of DejaVu Sans 2.37 for the characters 32 to 126, in thousandths of the em,
// rounded up. Read from the font's own hmtx table.
constexpr std::array<int, 95> kAsciiAdvance = {
    318, 401, 460, 838, 637, 951, 780, 275, 391, 391, 500, 838, 318, 361,  318, 337, 637, 637, 637,
    637, 637, 637, 637, 637, 637, 637, 337, 337, 838, 838, 838, 531, 1000, 685, 687, 699, 771, 632,
    576, 775, 752, 295, 295, 656, 558, 863, 749, 788, 604, 788, 695, 635,  611, 732, 685, 989, 686,
    611, 686, 391, 337, 391, 838, 500, 500, 613, 635, 550, 635, 616, 353,  635, 634, 278, 278, 580,
    278, 975, 634, 612, 635, 635, 412, 521, 393, 634, 592, 818, 592, 592,  525, 637, 337, 637, 838};
constexpr double kLatinAndGreek = 0.8;
constexpr double kCyrillic = 0.9;
constexpr double kWide = 1.0;

// Bytes of the UTF-8 letter at the front of the text; a stray byte counts as a letter of its own.
std::size_t letter_size(std::string_view text) {
  const auto lead = static_cast<unsigned char>(text.front());
  const std::size_t size = lead < 0xC0 ? 1 : lead < 0xE0 ? 2 : lead < 0xF0 ? 3 : 4;
  return std::min(size, text.size());
}

unsigned code_of(std::string_view letter) {
  const auto lead = static_cast<unsigned char>(letter.front());
  if (letter.size() == 1) return lead;
  unsigned code = lead & (0xFFU >> (letter.size() + 1));
  for (const char c : letter.substr(1)) code = code << 6U | (static_cast<unsigned char>(c) & 0x3FU);
  return code;
}

double advance_of(unsigned code) {
  if (code >= 32 && code < 127) return kAsciiAdvance.at(code - 32) / 1000.0;
  if (code >= 0x300 && code < 0x370) return 0.0;  // accents that sit on the letter before
  if (code < 0x400) return kLatinAndGreek;
  if (code < 0x530) return kCyrillic;
  return kWide;
}

// Bytes of the longest beginning of the text that fits.
std::size_t fitting(std::string_view text, double height, double room) {
  std::size_t used = 0;
  double width = 0.0;
  while (used < text.size()) {
    const std::string_view rest = text.substr(used);
    const std::string_view letter = rest.substr(0, letter_size(rest));
    width += advance_of(code_of(letter)) * height;
    if (width > room) break;
    used += letter.size();
  }
  return used;
}

std::string_view without_end_spaces(std::string_view text) {
  while (text.ends_with(' ')) text.remove_suffix(1);
  return text;
}

// Bytes of the next line: up to the last space that fits, else as many letters as fit, at least
// one.
std::size_t next_break(std::string_view text, double height, double room) {
  const std::size_t fits = fitting(text, height, room);
  if (fits == text.size()) return fits;
  const std::size_t space = text.rfind(' ', fits);
  if (space != std::string_view::npos && space > 0) return space;
  return fits > 0 ? fits : letter_size(text);
}

}  // namespace

double text_width(std::string_view text, double height) {
  double width = 0.0;
  while (!text.empty()) {
    const std::size_t size = letter_size(text);
    width += advance_of(code_of(text.substr(0, size)));
    text.remove_prefix(size);
  }
  return width * height;
}

std::string shortened(std::string_view text, double height, double room) {
  if (text_width(text, height) <= room) return std::string(text);
  const double left = room - text_width(kEllipsis, height);
  std::string result(without_end_spaces(text.substr(0, fitting(text, height, left))));
  return result.append(kEllipsis);
}

std::vector<std::string> wrapped(std::string_view text, double height, double room) {
  std::vector<std::string> lines;
  while (!text.empty()) {
    const std::size_t size = next_break(text, height, room);
    lines.emplace_back(without_end_spaces(text.substr(0, size)));
    text.remove_prefix(size);
    while (text.starts_with(' ')) text.remove_prefix(1);
  }
  return lines;
}

std::string on_one_line(std::string_view text) {
  std::string line(text);
  for (char& c : line) {
    const auto byte = static_cast<unsigned char>(c);
    if (byte < 0x20 || byte == 0x7F) c = ' ';
  }
  return line;
}

}  // namespace blockwright
