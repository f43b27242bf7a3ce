#pragma once

#include "blockwright/geometry/point.hpp"
#include "drawing.hpp"

namespace blockwright {

/// The squares of the first page, in mm: one for either tape.
inline constexpr double kMetricSquare = 100.0;
inline constexpr double kInchSquare = 4.0 * 25.4;
/// The square of every page.
inline constexpr double kSmallSquare = 20.0;

/// How far the 100 mm square stands up and to the right of the 4 in one: apart, so that nobody
/// takes the one for the other on a print that is a little too small.
inline constexpr double kSquareStep = 10.0;
/// Side of the field that both squares fill together.
inline constexpr double kSquaresSide = kMetricSquare + kSquareStep;

/// Draws the 4 in square with its lower left corner at `at` and the 100 mm square a step up and to
/// the right of it, with what to do about them inside both.
void draw_test_squares(Drawing& drawing, Point at);

/// Draws the small square of a page with the page's label inside.
void draw_small_square(Drawing& drawing, Point at, const std::string& label);

}  // namespace blockwright
