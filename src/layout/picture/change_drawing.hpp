#pragma once

#include "blockwright/layout/change_page.hpp"
#include "drawing.hpp"
#include "free_space.hpp"
#include "piece_change.hpp"
#include "reduction.hpp"

#include <string>
#include <vector>

namespace blockwright {

/// A piece over its earlier version, to be drawn small.
struct ShownChange {
  std::string name;      ///< "Front"
  std::string together;  ///< where both are laid together, or that nothing moved
  PieceChange change;
  std::vector<MovedPoint> arrows;
  Box box;  ///< of all lines
};

std::vector<ShownChange> shown_changes(const ChangePage& page);

/// The lines, and in `space` what they take.
void draw_lines(TextDrawing& drawing, const ShownChange& shown, const Reduction& reduce,
                FreeSpace& space);
/// So long an arrow is drawn, however small the move: it begins that far behind the move's end, on
/// a crowded edge of the room less far.
inline constexpr double kLeastArrow = 8.0;

/// Where the arrows may be, and what is free of it.
struct ArrowRoom {
  Box box;
  FreeSpace& space;
};
/// The arrows, each with how far it is where there is room.
void draw_arrows(TextDrawing& drawing, const ShownChange& shown, const Reduction& reduce,
                 const ArrowRoom& room, Unit unit);

}  // namespace blockwright
