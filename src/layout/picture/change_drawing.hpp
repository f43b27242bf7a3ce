#pragma once

#include "blockwright/layout/change_page.hpp"
#include "drawing.hpp"
#include "free_space.hpp"
#include "piece_change.hpp"
#include "reduction.hpp"

#include <string>
#include <vector>

namespace blockwright {

/// An arrow at a place that moved, and what is written at it.
struct ShownArrow {
  MovedPoint move;
  std::vector<std::string> words;
};

/// The lines and points that a correction speaks of and nothing is stitched by: the bust line, the
/// bust and blade points.
struct ShownLevels {
  std::vector<PieceLine> lines;
  std::vector<Landmark> points;
};

/// A piece over its earlier version, to be drawn small.
struct ShownChange {
  std::string name;      ///< "Front"
  std::string whole;     ///< "front", of that piece or of one half of it
  std::string side;      ///< "_left" of the left half; of a whole piece empty
  std::string together;  ///< where both are laid together, or that nothing moved
  bool changed = true;
  PieceChange change;
  ShownLevels before, now;
  std::vector<ShownArrow> arrows;
  Path outline;
  Box box;  ///< of all lines
};

std::vector<ShownChange> shown_changes(const ChangePage& page);

/// The lines, and in `space` what they take.
void draw_lines(TextDrawing& drawing, const ShownChange& shown, const Reduction& reduce,
                FreeSpace& space);
/// The words of what is drawn lightly, where there is room.
void name_levels(TextDrawing& drawing, const ShownChange& shown, const Reduction& reduce,
                 FreeSpace& space);
/// So long an arrow is drawn, however small the move: it begins that far behind the move's end, on
/// a crowded edge of the room less far.
inline constexpr double kLeastArrow = 8.0;

/// An arrow on the page, and the words to be set at it: outside the piece where there is room.
struct DrawnArrow {
  Point from, to;
  std::vector<std::string> words;
};
/// The arrows, each beside the lines that it would lie on, inside the room.
std::vector<DrawnArrow> draw_arrows(TextDrawing& drawing, const ShownChange& shown,
                                    const Reduction& reduce, const Box& room, FreeSpace& space);
/// The words of the arrows of a piece, away from the other pieces.
void write_amounts(TextDrawing& drawing, const std::vector<DrawnArrow>& arrows, const Path& outline,
                   const std::vector<Path>& others, FreeSpace& space);

}  // namespace blockwright
