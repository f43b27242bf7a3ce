#pragma once

#include "blockwright/layout/print_plan.hpp"
#include "drawing.hpp"
#include "text_flow.hpp"

#include <string>
#include <vector>

namespace blockwright {

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

}  // namespace blockwright
