#include "blockwright/base/error.hpp"
#include "blockwright/base/number_text.hpp"
#include "ink.hpp"
#include "pages.hpp"
#include "words.hpp"

#include <algorithm>
#include <array>
#include <optional>
#include <vector>

namespace blockwright {
namespace {

constexpr double kClearGap = 15.0;  // clear paper between pieces, squares and text, mm
// Notes get at least this much of the strip, in mm: its height beside, its width below the pieces.
constexpr double kLeastNotes = 80.0;
constexpr std::size_t kMostColumns = 4;
constexpr std::array<double, 5> kNoteScales = {1.0, 0.9, 0.8, 0.7, 0.6};
constexpr double kMoreText = 3.0, kMoreStep = 1.3 * kMoreText;
constexpr double kMoreLines = 5.0;  // of the seven sections that there are

enum class StripAt { Beside, Below };

// One way to put pieces and strip on a page.
struct Arrangement {
  double width = 0.0;
  double height = 0.0;
  StripAt strip = StripAt::Beside;
  SquaresLie squares = SquaresLie::SideBySide;
};

// What pieces and strip need, margins included.
Arrangement needed(const Box& ink, double margin, StripAt strip, SquaresLie squares) {
  const double rim = 2.0 * margin;
  const Vec field = squares_field(squares);
  const double titled = kTitleRoom + field.y;
  if (strip == StripAt::Beside) {
    return {ink.width() + kClearGap + field.x + rim,
            std::max(ink.height(), titled + kClearGap + kLeastNotes) + rim, strip, squares};
  }
  return {std::max(ink.width(), field.x + kClearGap + kLeastNotes) + rim,
          ink.height() + kClearGap + titled + rim, strip, squares};
}

// The smallest page that takes them with the squares lying so. A roll takes the pieces upright or
// along it, whichever is shorter; a sheet keeps its size.
std::optional<Arrangement> arrangement_on(const Paper& paper, const Box& ink, double margin,
                                          SquaresLie squares) {
  const double w = paper.width.mm(), h = paper.height.mm();
  std::vector<Arrangement> ways;
  for (const StripAt strip : {StripAt::Beside, StripAt::Below}) {
    const Arrangement need = needed(ink, margin, strip, squares);
    if (paper.is_roll()) {
      if (need.width <= w) ways.push_back({w, need.height, strip, squares});
      if (need.height <= w) ways.push_back({need.width, w, strip, squares});
    } else {
      if (need.width <= w && need.height <= h) ways.push_back({w, h, strip, squares});
      if (need.width <= h && need.height <= w) ways.push_back({h, w, strip, squares});
    }
  }
  const auto best = std::min_element(ways.begin(), ways.end(), [](const auto& a, const auto& b) {
    return a.width * a.height < b.width * b.height;
  });
  return best == ways.end() ? std::nullopt : std::optional(*best);
}

[[noreturn]] void refuse(const Paper& paper, const Box& ink, double margin) {
  const Arrangement need = needed(ink, margin, StripAt::Below, SquaresLie::Stepped);
  throw UsageError({Severity::Error, "paper.too_small", "--paper",
                    "the pieces with their test squares need " + fixed(need.width, 0) + " x " +
                        fixed(need.height, 0) + " mm on one page; '" + paper.name + "' is smaller",
                    "choose a larger paper or a roll, or print on tiled pages"});
}

Arrangement arrangement_on(const Paper& paper, const Box& ink, double margin) {
  for (const SquaresLie squares : {SquaresLie::SideBySide, SquaresLie::Stepped}) {
    if (const auto found = arrangement_on(paper, ink, margin, squares)) return *found;
  }
  refuse(paper, ink, margin);
}

// Where notes run: under the squares, then to their right.
std::vector<Box> note_frames(const Box& strip, Vec field) {
  const double squares_right = strip.left + field.x;
  std::vector<Box> frames =
      columns_in({strip.left, strip.bottom, squares_right, strip.top - field.y - kClearGap}, 2);
  const Box right = {squares_right + kClearGap, strip.bottom, strip.right, strip.top};
  for (const Box& column : columns_in(right, kMostColumns)) frames.push_back(column);
  return frames;
}

Sheet poured(const std::vector<Box>& frames, TextFlow& flow, TextFonts& fonts) {
  Sheet sheet;
  TextDrawing drawing(sheet, fonts);
  for (const Box& frame : frames) flow.pour(drawing, frame);
  return sheet;
}

// "3 of Corrections, all of Ease and Estimated, not taped" of the last lines.
std::string sections_of(const std::vector<Paragraph>& paragraphs, std::size_t left) {
  struct Section {
    std::string name;
    std::size_t lines = 0, left = 0;
  };
  std::vector<Section> sections;
  for (std::size_t i = 0; i < paragraphs.size(); ++i) {
    if (paragraphs[i].heading) sections.push_back({paragraphs[i].text});
    if (paragraphs[i].heading || sections.empty()) continue;
    ++sections.back().lines;
    if (i + left >= paragraphs.size()) ++sections.back().left;
  }
  std::vector<std::string> names;
  for (const Section& section : sections) {
    if (section.left == 0) continue;
    const bool all = section.left == section.lines;
    names.push_back((all ? "all" : std::to_string(section.left)) + " of \"" + section.name + "\"");
  }
  return listed(names);
}

// Notes as large as they fit; if even the smallest do not, the last lines say what is left.
Sheet set_notes(std::vector<Box> frames, const std::vector<Paragraph>& paragraphs,
                TextFonts& fonts) {
  for (const double scale : kNoteScales) {
    TextFlow flow(paragraphs, scale);
    Sheet notes = poured(frames, flow, fonts);
    if (flow.done()) return notes;
  }
  frames.back().bottom += kMoreLines * kMoreStep;
  const Box& last = frames.back();
  TextFlow flow(paragraphs, kNoteScales.back());
  Sheet notes = poured(frames, flow, fonts);
  TextDrawing drawing(notes, fonts);
  Point at{last.left, last.bottom};
  const std::string said =
      "No room here for " + sections_of(paragraphs, flow.left()) + ": see the report.";
  for (const std::string& line : wrapped(fonts, said, kMoreText, last.width())) {
    at.y -= kMoreStep;
    drawing.text(line, at, kMoreText, TextAnchor::Start);
  }
  return notes;
}

Box strip_of(const Arrangement& page, const Box& ink, double margin) {
  const Box inside = {margin, margin, page.width - margin, page.height - margin};
  if (page.strip == StripAt::Beside) {
    return {inside.left + ink.width() + kClearGap, inside.bottom, inside.right, inside.top};
  }
  return {inside.left, inside.bottom, inside.right, inside.top - ink.height() - kClearGap};
}

Page page_of(const Arrangement& arrangement, const Box& ink, double margin) {
  Page page;
  page.label = "sheet";
  page.width = page.furniture.width = arrangement.width;
  page.height = page.furniture.height = arrangement.height;
  page.window = ink;
  page.window_at = {margin, arrangement.height - margin - ink.height()};
  return page;
}

}  // namespace

PrintPlan one_page(const Layout& layout, TextFonts& fonts) {
  const Box ink = Ink(layout).box();
  const double margin = layout.options.margin.mm();
  require(!ink.empty(), "nothing to print");
  const Arrangement arrangement = arrangement_on(layout.options.paper, ink, margin);
  Page page = page_of(arrangement, ink, margin);
  Box strip = strip_of(arrangement, ink, margin);
  TextDrawing drawing(page.furniture, fonts);
  draw_title(drawing, strip, layout);
  strip.top -= kTitleRoom;
  draw_test_squares(drawing, {strip.left, strip.top}, arrangement.squares);
  add(page.furniture, set_notes(note_frames(strip, squares_field(arrangement.squares)),
                                note_paragraphs(layout, NotesFor::OnePage), fonts));
  return {plan_title(layout), drawn(layout, {}, fonts), {std::move(page)}};
}

}  // namespace blockwright
