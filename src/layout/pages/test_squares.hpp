#pragma once

#include "blockwright/geometry/box.hpp"
#include "drawing.hpp"

namespace blockwright {

/// The squares of the first page, in mm: one for either tape.
inline constexpr double kMetricSquare = 100.0;
inline constexpr double kInchSquare = 4.0 * 25.4;
/// The square of every page.
inline constexpr double kSmallSquare = 20.0;

/// How the two squares of the first page lie: next to each other, or, on paper too narrow for that,
/// the 100 mm square a step up and to the right of the 4 in one, so that nobody takes the one for
/// the other on a print that is a little too small.
enum class SquaresLie { SideBySide, Stepped };

/// Width and height of the field that both squares fill together, in mm.
Vec squares_field(SquaresLie lie);

/// Draws both squares into the field with this upper left corner, with what to do about them
/// inside.
void draw_test_squares(TextDrawing& drawing, Point upper_left, SquaresLie lie);

/// Room for other text inside the 4 in square of squares that lie side by side.
Box room_in_squares(Point upper_left);

/// Draws the small square of a page with the page's label inside.
void draw_small_square(TextDrawing& drawing, Point at, const std::string& label);

}  // namespace blockwright
