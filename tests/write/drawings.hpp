#pragma once

#include "blockwright/layout/print_plan.hpp"

#include <string>
#include <vector>

namespace blockwright_tests {

using namespace blockwright;

/// A sheet with all roles, layers and scripts: two pieces, the wardrobe's labels, one outline of a
/// previous version. 400 x 300 mm.
Sheet sample_sheet();

/// The sample sheet on a map page and 2 x 2 A4 pages in portrait that share 10 mm.
PrintPlan sample_plan();

/// A sheet of the given size cut into rows x columns windows that share `overlap` mm, each on a
/// page with 10 mm margins, after a map page. Columns from the left, rows from the top.
PrintPlan tiled_plan(const Sheet& sheet, int rows, int columns, double overlap);

/// One page as large as the sheet.
PrintPlan whole_plan(const Sheet& sheet);

Stroke line(Point a, Point b, LineRole role, SheetLayer layer);
/// A disc, drawn as a short thick stroke would be: a circle outline in the given role.
Stroke circle(Point centre, double radius, LineRole role, SheetLayer layer);
Stroke rectangle(const Box& box, LineRole role, SheetLayer layer);
SheetText label(Point at, const std::string& text);

/// Names that have broken programs: markup, quotes, path parts, control characters, right-to-left
/// letters, broken UTF-8, an empty one and one of 300 letters.
const std::vector<std::string>& nasty_names();

}  // namespace blockwright_tests
