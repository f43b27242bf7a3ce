#pragma once

#include "blockwright/layout/change_page.hpp"
#include "drawing.hpp"

#include <optional>
#include <span>
#include <vector>

namespace blockwright {

/// Figures of what was seen on one page.
using SeenFigures = std::span<const SeenOnPage>;

/// Whether each figure says what mends it, besides what it shows.
enum class SeenWords { Seen, CureAndSeen };

/// How figures of what was seen stand: in rows, each with its words under it.
struct SeenGrid {
  double scale = 1.0;  ///< of the figures
  std::size_t columns = 1;
  double wide = 0.0;  ///< of a column, in mm
  SeenWords words = SeenWords::Seen;
};

/// Clear paper between columns and between rows, in mm.
inline constexpr double kSeenGap = 4.0;
/// Figures are drawn so much smaller, where that gives all of them room. Ours: folds are still told
/// apart.
inline constexpr double kSmallestSeen = 0.7;

double width_of(const SeenGrid& grid);
/// Of its rows, words and all, one below another.
std::vector<double> row_heights(SeenFigures seen, const SeenGrid& grid, TextFonts& fonts);
double height_of(const std::vector<double>& rows);

/// All figures with all their words at the right of a frame, as large as they fit, in at most two
/// columns; `beside` of the frame's width is left for other words. Nothing where they have no room.
/// Requires: at least one.
std::optional<SeenGrid> seen_at_right(SeenFigures seen, const Box& frame, double beside,
                                      TextFonts& fonts);
/// As many columns as a page is wide.
SeenGrid seen_on_page(SeenFigures seen, double width);

void draw_seen(TextDrawing& drawing, SeenFigures seen, const SeenGrid& grid, Point upper_left);

}  // namespace blockwright
