#include "pages.hpp"

#include <algorithm>
#include <array>

namespace blockwright {
namespace {

constexpr double kLeastMiniature = 50.0;
constexpr double kMiniatureShare = 0.66;
// Text is made this much smaller before it goes on to another page.
constexpr std::array<double, 3> kMapScales = {1.0, 0.9, 0.8};

struct MapPaper {
  double width, height;
  Box inside;
  SquaresLie squares;
};

// Whatever the tiles do, map pages are upright if the test squares fit side by side, else turned.
MapPaper map_paper(const Tiling& tiling, double margin) {
  const auto [shorter, longer] = std::minmax(tiling.page_width, tiling.page_height);
  const double wide = squares_field(SquaresLie::SideBySide).x + 2.0 * margin;
  const bool turned = shorter < wide && wide <= longer;
  const double width = turned ? longer : shorter, height = turned ? shorter : longer;
  return {width,
          height,
          {margin, margin, width - margin, height - margin},
          wide <= width ? SquaresLie::SideBySide : SquaresLie::Stepped};
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
  MapPages(const Tiling& tiling, const Layout& layout, TextFonts& fonts)
      : tiling_(tiling),
        layout_(layout),
        fonts_(fonts),
        paper_(map_paper(tiling, layout.options.margin.mm())) {}

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
  TextDrawing page() { return {pages_.back().furniture, fonts_}; }

  void open_page() {
    pages_.push_back(empty_page(paper_, pages_.size() + 1));
    rest_ = paper_.inside;
    TextDrawing drawing = page();
    draw_title(drawing, rest_, layout_,
               pages_.size() > 1 ? ", continued (" + pages_.back().label + ")" : "");
    rest_.top -= kTitleRoom;
    columns_.clear();
  }

  void draw_squares() {
    TextDrawing drawing = page();
    const Vec field = squares_field(paper_.squares);
    draw_test_squares(drawing, {rest_.left, rest_.top}, paper_.squares);
    const Box right = {rest_.left + field.x + kGutter, rest_.top - field.y, rest_.right, rest_.top};
    if (paper_.squares == SquaresLie::SideBySide) {
      columns_.push_back(room_in_squares({rest_.left, rest_.top}));
    }
    if (right.width() >= kNarrowestColumn) columns_.push_back(right);
    rest_.top -= field.y + kGutter;
  }

  // Below the squares, or on the next page where that leaves too little. What is left for text is
  // to its right on a turned page, else below it.
  void place_miniature() {
    if (rest_.height() < kLeastMiniature) open_page();
    const bool turned = rest_.width() > rest_.height();
    const double wide = rest_.width() - (turned ? kNarrowestColumn + kGutter : 0.0);
    const double most = (turned ? 1.0 : kMiniatureShare) * rest_.height();
    const Box frame =
        miniature_frame(tiling_, {rest_.left, rest_.top - most, rest_.left + wide, rest_.top});
    TextDrawing drawing = page();
    draw_miniature(drawing, tiling_, layout_, frame);
    if (turned) {
      rest_.left = frame.right + kGutter;
    } else {
      rest_.top = frame.bottom - kGutter;
    }
  }

  void pour(TextFlow& flow) {
    TextDrawing drawing = page();
    for (const Box& column : columns_in(rest_, 2)) columns_.push_back(column);
    for (const Box& column : columns_) flow.pour(drawing, column);
  }

  const Tiling& tiling_;
  const Layout& layout_;
  TextFonts& fonts_;
  MapPaper paper_;
  std::vector<Page> pages_;
  Box rest_;                  // what is free of the open page
  std::vector<Box> columns_;  // columns of text on it
};

}  // namespace

std::vector<Page> map_pages(const Tiling& tiling, const Layout& layout, TextFonts& fonts) {
  const auto pages = tiling.tiles.size() > 1 ? NotesFor::JoinedPages : NotesFor::OnePage;
  const auto paragraphs = note_paragraphs(layout, pages);
  std::vector<Page> best;
  for (const double scale : kMapScales) {
    auto tried = MapPages(tiling, layout, fonts).lay_out(paragraphs, scale);
    if (best.empty() || tried.size() < best.size()) best = std::move(tried);
    if (best.size() == 1) break;
  }
  return best;
}

}  // namespace blockwright
