#include "blockwright/figure/seen_figure.hpp"
#include "blockwright/text/units.hpp"
#include "diagram.hpp"
#include "fits/pictures.hpp"

#include <algorithm>
#include <string>
#include <vector>

namespace blockwright_pictures {

using namespace blockwright;

namespace {

constexpr double kScale = 0.4;
constexpr double kCellGap = 14.0, kWordsRoom = 18.0, kRim = 6.0;
constexpr std::size_t kMostInRow = 4;
constexpr double kPixels = 1.15;  // for a unit of the diagram, as in the other pictures

struct SeenCell {
  FigureDrawing figure;
  std::string words;
};

bool same_lines(const FigureDrawing& a, const FigureDrawing& b) {
  return std::ranges::equal(a.lines, b.lines, {}, &FigureLine::path, &FigureLine::path);
}

std::vector<SeenCell> cells_of(const FittingRow& row) {
  std::vector<SeenCell> cells;
  for (const RowWords& words : row.words) {
    SeenCell cell{seen_figure({row.row, words.sign, words.place}, kScale),
                  name_text(std::string(words.action) + " " + std::string(words.place))};
    const auto same = [&](const SeenCell& other) { return same_lines(other.figure, cell.figure); };
    if (std::ranges::none_of(cells, same)) cells.push_back(std::move(cell));
  }
  return cells;
}

Look look_on_body(FigureInk ink) {
  if (ink == FigureInk::Seen) return Look::Fault;
  return ink == FigureInk::Cloth ? Look::Before : Look::Guide;
}

void draw_cell(Diagram& d, const SeenCell& cell, Point lower_left) {
  d.place(Placement::shift(lower_left - Point{}));
  for (const FigureLine& line : cell.figure.lines) d.line(line.path, look_on_body(line.ink));
  d.label({0.5 * cell.figure.width, -9.0}, {}, cell.words);
}

}  // namespace

Diagram seen_picture(const FittingRow& row) {
  const std::vector<SeenCell> cells = cells_of(row);
  double wide = 0.0, high = 0.0;
  for (const SeenCell& cell : cells) {
    wide = std::max(wide, cell.figure.width + kCellGap);
    high = std::max(high, cell.figure.height + kWordsRoom);
  }
  const std::size_t columns = std::min(cells.size(), kMostInRow);
  const std::size_t rows = (cells.size() + columns - 1) / columns;
  Diagram d(static_cast<double>(columns) * wide - kCellGap + 2.0 * kRim,
            static_cast<double>(rows) * high + 2.0 * kRim);
  d.show_at(kPixels * (static_cast<double>(columns) * wide - kCellGap + 2.0 * kRim));
  for (std::size_t i = 0; i < cells.size(); ++i) {
    const auto column = static_cast<double>(i % columns);
    const auto below = static_cast<double>(rows - 1 - i / columns);
    draw_cell(d, cells[i], {kRim + column * wide, kRim + kWordsRoom + below * high});
  }
  return d;
}

}  // namespace blockwright_pictures
