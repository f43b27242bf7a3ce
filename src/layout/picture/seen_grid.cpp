#include "seen_grid.hpp"

#include "form_parts.hpp"
#include "reduction.hpp"
#include "text_flow.hpp"

#include <algorithm>
#include <array>
#include <numeric>

namespace blockwright {
namespace {

// Of a column, in mm: of its words no line is shorter.
constexpr double kSeenWide = 30.0, kSeenWideOnPage = 42.0;
constexpr double kSeenText = 2.7, kCureText = 3.0;
constexpr double kSeenLine = 1.25;  // from baseline to baseline, in heights
constexpr std::size_t kSeenColumns = 2;
constexpr std::array kSeenScales = {1.0, 0.85, kSmallestSeen};

/// Of all figures.
Vec largest_of(SeenFigures seen) {
  Vec size;
  for (const SeenOnPage& one : seen) {
    size.x = std::max(size.x, one.figure.width);
    size.y = std::max(size.y, one.figure.height);
  }
  return size;
}

struct SeenText {
  std::string text;
  double height;
};

std::vector<SeenText> lines_under(const SeenOnPage& seen, const SeenGrid& grid, TextFonts& fonts) {
  std::vector<SeenText> lines;
  const auto set = [&](const std::string& words, double height) {
    for (const std::string& line : wrapped(fonts, words, height, grid.wide)) {
      lines.push_back({line, height});
    }
  };
  const bool is_named = grid.words == SeenWords::CureAndSeen || seen.number.empty();
  if (grid.words == SeenWords::CureAndSeen) set(seen.cure, kCureText);
  set(is_named ? seen.words : "for " + seen.number + ", " + seen.words, kSeenText);
  return lines;
}

double height_of_lines(const std::vector<SeenText>& lines) {
  double high = 0.4 * kSeenLine * kSeenText;
  for (const SeenText& line : lines) high += kSeenLine * line.height;
  return high;
}

FigureDrawing scaled_figure(FigureDrawing figure, double scale) {
  const Reduction smaller{scale, {}, {}};
  for (FigureLine& line : figure.lines) line.path = smaller(line.path);
  return figure;
}

/// `middle`: of the figure's foot.
void draw_one(TextDrawing& drawing, const SeenOnPage& seen, const SeenGrid& grid, Point middle) {
  const FigureDrawing figure = scaled_figure(seen.figure, grid.scale);
  draw_figure_lines(drawing, figure, {middle.x - 0.5 * grid.scale * figure.width, middle.y});
  double y = middle.y;
  for (const SeenText& line : lines_under(seen, grid, drawing.fonts())) {
    y -= kSeenLine * line.height;
    drawing.text(line.text, {middle.x, y}, line.height, TextAnchor::Middle);
  }
}

}  // namespace

double width_of(const SeenGrid& grid) {
  return static_cast<double>(grid.columns) * (grid.wide + kSeenGap) - kSeenGap;
}

std::vector<double> row_heights(SeenFigures seen, const SeenGrid& grid, TextFonts& fonts) {
  const double figure = grid.scale * largest_of(seen).y;
  std::vector<double> rows((seen.size() + grid.columns - 1) / grid.columns, figure);
  for (std::size_t i = 0; i < seen.size(); ++i) {
    double& row = rows[i / grid.columns];
    row = std::max(row, figure + height_of_lines(lines_under(seen[i], grid, fonts)));
  }
  return rows;
}

double height_of(const std::vector<double>& rows) {
  const double gaps = static_cast<double>(std::max<std::size_t>(rows.size(), 1) - 1) * kSeenGap;
  return std::accumulate(rows.begin(), rows.end(), gaps);
}

std::optional<SeenGrid> seen_at_right(SeenFigures seen, const Box& frame, double beside,
                                      TextFonts& fonts) {
  for (const double scale : kSeenScales) {
    SeenGrid grid{scale, kSeenColumns, std::max(scale * largest_of(seen).x, kSeenWide)};
    grid.columns = std::min(grid.columns, seen.size());
    while (grid.columns > 1 && width_of(grid) + beside > frame.width()) --grid.columns;
    if (width_of(grid) + beside > frame.width()) continue;
    if (height_of(row_heights(seen, grid, fonts)) <= frame.height()) return grid;
  }
  return std::nullopt;
}

SeenGrid seen_on_page(SeenFigures seen, double width) {
  const double least = std::max(largest_of(seen).x, kSeenWideOnPage);
  const double fit = std::max((width + kSeenGap) / (least + kSeenGap), 1.0);
  SeenGrid grid{1.0, static_cast<std::size_t>(fit), 0.0, SeenWords::CureAndSeen};
  const auto columns = static_cast<double>(grid.columns);
  grid.wide = (width - (columns - 1.0) * kSeenGap) / columns;
  return grid;
}

void draw_seen(TextDrawing& drawing, SeenFigures seen, const SeenGrid& grid, Point upper_left) {
  const std::vector<double> rows = row_heights(seen, grid, drawing.fonts());
  const double figure = grid.scale * largest_of(seen).y;
  double top = upper_left.y;
  for (std::size_t i = 0; i < seen.size(); ++i) {
    const std::size_t column = i % grid.columns;
    if (column == 0 && i > 0) top -= rows[i / grid.columns - 1] + kSeenGap;
    const double left = upper_left.x + static_cast<double>(column) * (grid.wide + kSeenGap);
    draw_one(drawing, seen[i], grid, {left + 0.5 * grid.wide, top - figure});
  }
}

}  // namespace blockwright
