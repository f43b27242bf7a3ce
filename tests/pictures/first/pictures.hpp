#pragma once

#include "blockwright/pattern/pattern.hpp"
#include "diagram.hpp"

namespace blockwright_pictures {

inline constexpr double kFirstWidth = 780.0;
inline constexpr double kPagesHeight = 300.0;
inline constexpr double kMarkHeight = 250.0;

/// The pictures of docs/first-bodice.md. The test squares under a ruler, the pages of a toile, and
/// how two of them are joined:
void draw_pages(Diagram& d, const blockwright::Pattern& block);
/// A fault on the body, and how its amount is marked on the cloth:
void draw_mark(Diagram& d);

}  // namespace blockwright_pictures
