#pragma once

#include "blockwright/figure/tape_figure.hpp"
#include "blockwright/measure/correction_table.hpp"

#include <string>
#include <string_view>

namespace blockwright {

// Drawn figures of a body in its toile with a fault on it: tight folds as short strokes that point
// to where cloth is lacking, loose folds along what is too much, an edge that lies elsewhere or
// stands off, an arrow where cloth sags, rides up or is dragged.

/// A row of the fitting catalogue in one direction, as corrections ask for it.
struct SeenRow {
  CorrectionRow row{};
  int sign = 1;                    ///< -1: the fault that the row's reverse mends
  std::string_view place = {};     ///< for rows of several darts or seams; empty: the usual one
  BodySide side = BodySide::Both;  ///< the half of the body that it is seen on
};

/// The fault on a body, from neck to waist. `scale`: mm of the drawing for a mm of the body. Every
/// row has one, and its reverse where words for it are there. From in front her left is at the
/// right, from behind at the left; rows of one side, without a side, are on her right.
FigureDrawing seen_figure(const SeenRow& seen, double scale);
/// What the figure shows, in words: "the waist rides up in front".
std::string seen_words(const SeenRow& seen);

}  // namespace blockwright
