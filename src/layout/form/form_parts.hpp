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

/// The title, and where name, date, taker and unit are written; then the cautions.
FormPart form_head(const TapeSheet& form, TextFonts& fonts);
/// A figure and its table.
FormPart form_group(const TapeSheetGroup& group, TextFonts& fonts);
/// The line at the foot of a page.
FormPart form_foot(const std::string& text, TextFonts& fonts);

}  // namespace blockwright
