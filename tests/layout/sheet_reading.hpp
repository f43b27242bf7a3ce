#pragma once

#include "blockwright/geometry/box.hpp"
#include "blockwright/layout/print_plan.hpp"

#include <string>
#include <vector>

namespace blockwright_tests {

using namespace blockwright;

/// The room that a text takes on the paper, as a closed outline (turned with it): an em below 1
/// from descender to the top of accented capitals, as wide as the layer reckons.
Path room_of(const SheetText& text);
/// True if the two closed outlines share a point.
bool touch(const Path& a, const Path& b);
/// True if the line runs through the room of the text.
bool runs_through(const Path& line, const SheetText& text);

/// The first text that overlaps another text or a line of the sheet, or "" if all stand free.
std::string text_in_the_way(const Sheet& sheet);

/// The first text that lies partly inside the window and partly outside it, or "".
std::string cut_text(const Sheet& sheet, const Box& window);
/// The first piece that the page shows and does not name, or "".
std::string unnamed_piece(const PrintPlan& plan, const Page& page);
/// The first piece of which the page shows so much or more, in mm2, without its name, or the first
/// line of it, inside, or "".
std::string large_unnamed_part(const PrintPlan& plan, const Page& page, double large = 12000.0);

/// Round everything drawn, texts included; line widths are not counted.
Box drawn_box(const Sheet& sheet);

std::vector<const Stroke*> strokes_of(const Sheet& sheet, LineRole role,
                                      const std::string& piece = {});
std::vector<const Stroke*> strokes_named(const Sheet& sheet, const std::string& name);
/// All texts of a sheet, one a line.
std::string all_text(const Sheet& sheet);
bool is_square(const Stroke& stroke, double side);

}  // namespace blockwright_tests
