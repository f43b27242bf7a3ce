#include "text_flow.hpp"

#include "blockwright/base/printable.hpp"
#include "blockwright/base/utf8.hpp"

#include <algorithm>
#include <cmath>

namespace blockwright {
namespace {

constexpr std::string_view kEllipsis = "\u2026";

std::string_view without_end_spaces(std::string_view text) {
  while (text.ends_with(' ')) text.remove_suffix(1);
  return text;
}

// Where the line that begins at `from` ends: at the last space that fits, else after as many
// letters as fit, at least one. The whole text is set once, however many lines it takes.
std::size_t next_break(TextFonts& fonts, std::string_view text, double room, std::size_t from) {
  const std::size_t reaches = fonts.reaching(text, room, from);
  if (reaches == text.size()) return reaches;
  const std::string_view line = text.substr(from, reaches - from);
  const std::size_t before = line.rfind(' ');
  if (text[reaches] != ' ' && before != std::string_view::npos && before > 0) return from + before;
  const std::size_t fits = fonts.fitting(line, room);
  const std::size_t space = text.substr(from).rfind(' ', fits);
  if (space != std::string_view::npos && space > 0) return from + space;
  return from + (fits > 0 ? fits : utf8_at(text, from).size);
}

// From baseline to baseline, in shares of the letters' height.
constexpr double kLineStep = 1.35;
constexpr double kUnderLetters = 0.09;
// Of a sum of lines, mm.
constexpr double kRounding = 1e-9;

std::string rejoined(const std::vector<std::string>& lines, std::size_t from) {
  std::string text;
  for (std::size_t i = from; i < lines.size(); ++i) text += (text.empty() ? "" : " ") + lines[i];
  return text;
}

}  // namespace

std::string shortened(TextFonts& fonts, std::string_view text, double height, double room) {
  const double most = room / height;
  std::string line = printable(text);
  if (fonts.set(line).width <= most) return line;
  const std::size_t fits = fonts.fitting(line, most - fonts.set(kEllipsis).width);
  return std::string(without_end_spaces(std::string_view(line).substr(0, fits))).append(kEllipsis);
}

std::vector<std::string> wrapped(TextFonts& fonts, std::string_view raw, double height,
                                 double room) {
  const std::string whole = printable(raw);
  const std::string_view text = whole;
  std::vector<std::string> lines;
  for (std::size_t at = 0; at < text.size();) {
    const std::size_t end = next_break(fonts, text, room / height, at);
    lines.emplace_back(without_end_spaces(text.substr(at, end - at)));
    at = std::min(text.size(), text.find_first_not_of(' ', end));
  }
  return lines;
}

std::vector<Box> columns_in(const Box& frame, std::size_t most) {
  const double room = (frame.width() + kGutter) / (kNarrowestColumn + kGutter);
  if (frame.height() < kShortestColumn || room < 1.0) return {};
  const double count = std::min(std::floor(room), static_cast<double>(most));
  const double width = (frame.width() - (count - 1.0) * kGutter) / count;
  std::vector<Box> columns;
  for (double left = frame.left; left + width <= frame.right + 1e-6; left += width + kGutter) {
    columns.push_back({left, frame.bottom, left + width, frame.top});
  }
  return columns;
}

TextFlow::TextFlow(std::vector<Paragraph> paragraphs, double scale, Paragraphs kept)
    : paragraphs_(std::move(paragraphs)), kept_(kept) {
  for (Paragraph& paragraph : paragraphs_) {
    paragraph.height *= scale;
    paragraph.before *= scale;
  }
}

// A heading needs room for itself and the first line of what follows, and what stays whole for all
// its lines.
bool TextFlow::fits_here(double room, const std::vector<std::string>& lines, double width) const {
  const Paragraph& here = paragraphs_[next_];
  const std::size_t least = kept_ == Paragraphs::StayWhole ? lines.size() : 1;
  double needed = static_cast<double>(least) * kLineStep * here.height;
  if (here.heading && next_ + 1 < paragraphs_.size()) {
    const Paragraph& after = paragraphs_[next_ + 1];
    const auto count = static_cast<double>(lines.size());
    needed = count * kLineStep * here.height + after.before + kLineStep * after.height;
  }
  return needed <= room && width > 0.0;
}

double TextFlow::pour(TextDrawing& drawing, const Box& frame) {
  double y = frame.top;
  while (!done()) {
    Paragraph& paragraph = paragraphs_[next_];
    const auto lines = wrapped(drawing.fonts(), paragraph.text, paragraph.height, frame.width());
    if (y < frame.top) y -= paragraph.before;
    if (!fits_here(y - frame.bottom, lines, frame.width())) break;
    const double step = kLineStep * paragraph.height;
    std::size_t set = 0;
    for (; set < lines.size() && y - step >= frame.bottom - kRounding; ++set) {
      y -= step;
      SheetText line = drawing.measured(lines[set], paragraph.height);
      line.at = {frame.left, y + line.room.below + kUnderLetters * paragraph.height};
      drawing.add(std::move(line));
    }
    if (set < lines.size()) {
      paragraph.text = rejoined(lines, set);
      paragraph.before = 0.0;
      break;
    }
    ++next_;
  }
  return frame.top - y;
}

}  // namespace blockwright
