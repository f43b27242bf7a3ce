#pragma once

#include "text_flow.hpp"
#include "tiling.hpp"

#include <string>
#include <vector>

namespace blockwright {

/// What pages show besides the pieces: test squares, a miniature, titles and notes; then the pages.

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

/// What the miniature takes of the room, in its upper left corner.
Box miniature_frame(const Tiling& tiling, const Box& room);

/// Draws the whole layout small into such a frame: the pieces' cut lines and names under the grid
/// of pages with their labels.
void draw_miniature(TextDrawing& page, const Tiling& tiling, const Layout& layout,
                    const Box& frame);

/// Whose pattern it is, of which session, how it is cut.
std::string plan_title(const Layout& layout);

/// Sets the same in two lines at the top of a frame, shortened to its width; the second one goes on
/// with `more`. They take kTitleRoom mm of it.
inline constexpr double kTitleRoom = 16.0;
void draw_title(TextDrawing& drawing, const Box& frame, const Layout& layout,
                const std::string& more = {});

/// What the notes are for: pages to be joined, or one page.
enum class NotesFor { JoinedPages, OnePage };

/// Cautions, piece list, allowance, ease, and what was estimated; for several pages also how to
/// join them.
std::vector<Paragraph> note_paragraphs(const Layout& layout, NotesFor pages);

/// The first page: whose pattern it is, the test squares, a miniature of the whole with the pages'
/// labels, pieces, ease, estimates and cautions. What has no room goes on to "map 2", "map 3" ...
std::vector<Page> map_pages(const Tiling& tiling, const Layout& layout, TextFonts& fonts);

/// The pages of the tiles, each with its frame, match marks where it joins neighbours, their
/// labels, the small square with the page's own label, and a line of text at the foot that also
/// names the pieces on the page. Labels and square go where the drawing leaves room.
std::vector<Page> tile_pages(const Tiling& tiling, const Sheet& sheet, const Layout& layout,
                             TextFonts& fonts);

}  // namespace blockwright
