#pragma once

#include "blockwright/layout/tape_sheet.hpp"
#include "drawing.hpp"

#include <string_view>
#include <vector>

namespace blockwright {

/// Sizes of the form, mm.
inline constexpr double kFormWidth = 189.0;  ///< of all that is printed; an A4 page's within 10 mm
inline constexpr double kFigureColumn = 73.0;  ///< of it, for the figures
inline constexpr double kBeforeGroup = 6.0;

/// A part of the form, its upper left corner at the origin, y up: what lies lower is negative.
struct FormPart {
  Sheet drawing;
  double height = 0.0;
};

/// The line at the foot of a page. A long client's name is shortened, what follows is not.
struct FormFoot {
  std::string page;       ///< "Page 1 of 3"
  std::string client;     ///< may be empty
  std::string what;       ///< to do with the form
  bool to_write = false;  ///< a line to write the name on
};

/// The title, and where name, date, taker and unit are written; then the cautions.
FormPart form_head(const TapeSheet& form, TextFonts& fonts);
/// The lines of a figure, moved.
void draw_figure_lines(TextDrawing& drawing, const FigureDrawing& figure, Vec by);
/// Her from in front and behind, with lettered points, and what the letters mean.
FormPart form_points(const std::vector<TapeSheetPoint>& points, TextFonts& fonts);
/// A figure and its table.
FormPart form_group(const TapeSheetGroup& group, TextFonts& fonts);
/// The line at the foot of a page.
FormPart form_foot(const FormFoot& foot, TextFonts& fonts);

}  // namespace blockwright
