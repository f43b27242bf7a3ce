#include "map_page.hpp"

#include "drawing.hpp"
#include "miniature.hpp"
#include "notes_text.hpp"
#include "test_squares.hpp"
#include "text_flow.hpp"
#include "text_measure.hpp"

#include <algorithm>
#include <array>

namespace blockwright {
namespace {

constexpr double kLeastMiniature = 50.0;
constexpr double kMiniatureShare = 0.66;
// Text is made this much smaller before it goes on to another page.
constexpr std::array<double, 3> kMapScales = {1.0, 0.9, 0.8};

// Map pages stand upright, whatever the tiles do.
struct MapPaper {
  double width, height;
  Box inside;
};

MapPaper map_paper(const Tiling& tiling, const PrintOptions& options) {
  const double width = std::min(tiling.page_width, tiling.page_height);
  const double height = std::max(tiling.page_width, tiling.page_height);
  const double m = options.margin;
  return {width, height, {m, m, width - m, height - m}};
}

Page empty_page(const MapPaper& paper, std::size_t number) {
  Page page;
  page.label = number == 1 ? "map" : "map " + std::to_string(number);
  page.width = page.furniture.width = paper.width;
  page.height = page.furniture.height = paper.height;
  return page;
}

// Lays out the map pages, opening a new one when a thing has no room.
class MapPages {
 public:
  MapPages(const Tiling& tiling, const Sheet& sheet, const PrintOptions& options,
           const SheetNotes& notes)
      : tiling_(tiling),
        sheet_(sheet),
        options_(options),
        notes_(notes),
        paper_(map_paper(tiling, options)) {}

  std::vector<Page> lay_out(const std::vector<Paragraph>& paragraphs, double scale) {
    TextFlow flow(paragraphs, scale);
    open_page();
    draw_squares();
    place_miniature();
    pour(flow);
    while (!flow.done()) {
      open_page();
      pour(flow);
    }
    return std::move(pages_);
  }

 private:
  void open_page() {
    pages_.push_back(empty_page(paper_, pages_.size() + 1));
    rest_ = paper_.inside;
    Drawing drawing(pages_.back().furniture);
    std::string subtitle = subtitle_text(options_, notes_);
    if (pages_.size() > 1) subtitle += ", continued (" + pages_.back().label + ")";
    draw_title(drawing, rest_, heading_text(notes_), subtitle);
    rest_.top -= kTitleRoom;
    columns_.clear();
  }

  void draw_squares() {
    Drawing drawing(pages_.back().furniture);
    draw_test_squares(drawing, {rest_.left, rest_.top - kSquaresSide});
    const Box beside = {rest_.left + kSquaresSide + kGutter, rest_.top - kSquaresSide, rest_.right,
                        rest_.top};
    if (beside.width() >= kNarrowestColumn) columns_.push_back(beside);
    rest_.top -= kSquaresSide + kGutter;
  }

  // Below the squares, or on the next page where that leaves too little.
  void place_miniature() {
    if (rest_.height() < kLeastMiniature) open_page();
    const double most = kMiniatureShare * rest_.height();
    const double height = miniature_height(tiling_, rest_.width(), most);
    draw_miniature(pages_.back().furniture, tiling_, sheet_,
                   {rest_.left, rest_.top - height, rest_.right, rest_.top});
    rest_.top -= height + kGutter;
  }

  void pour(TextFlow& flow) {
    Drawing drawing(pages_.back().furniture);
    for (const Box& column : columns_in(rest_, 2)) columns_.push_back(column);
    for (const Box& column : columns_) flow.pour(drawing, column);
  }

  const Tiling& tiling_;
  const Sheet& sheet_;
  const PrintOptions& options_;
  const SheetNotes& notes_;
  MapPaper paper_;
  std::vector<Page> pages_;
  Box rest_;                  // what is free of the open page
  std::vector<Box> columns_;  // columns of text on it
};

}  // namespace

std::vector<Page> map_pages(const Tiling& tiling, const Sheet& sheet, const Pattern& pattern,
                            const PrintOptions& options, const SheetNotes& notes) {
  const auto paragraphs = note_paragraphs(pattern, options, notes, tiling.tiles.size() > 1);
  std::vector<Page> best;
  for (const double scale : kMapScales) {
    auto pages = MapPages(tiling, sheet, options, notes).lay_out(paragraphs, scale);
    if (best.empty() || pages.size() < best.size()) best = std::move(pages);
    if (best.size() == 1) break;
  }
  return best;
}

}  // namespace blockwright
