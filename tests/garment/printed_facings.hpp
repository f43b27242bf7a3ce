#pragma once

#include "blockwright/dart/truing.hpp"
#include "blockwright/geometry/box.hpp"
#include "blockwright/geometry/intersections.hpp"
#include "blockwright/layout/print_plan.hpp"
#include "support/blocks.hpp"

#include <catch2/catch.hpp>

#include <vector>

namespace blockwright_tests {

/// Whether a garment with facings is sound as it is printed: its seams walk, every piece is cut
/// round simply, and none lies on another.
inline void check_printed(const blockwright::Pattern& finished) {
  using namespace blockwright;
  const Pattern printed = true_darts(finished).pattern;
  CHECK(errors_of(printed) == "");
  PrintOptions options;
  options.cut = CutStyle::Garment;
  std::vector<Box> boxes;
  for (const LaidPiece& laid : lay_out(printed, options, {}).pieces) {
    for (const Stroke& stroke : laid.lines.strokes) {
      if (stroke.role != LineRole::CutLine) continue;
      CHECK(distance(stroke.path.start(), stroke.path.end()) < 1e-9);
      CHECK(!find_crossing(stroke.path, 0.01));
      const Box box = box_of(placed(stroke.path, Placement::shift(laid.at)));
      for (const Box& other : boxes) CHECK(!box.overlaps(other));
      boxes.push_back(box);
    }
  }
  CHECK(boxes.size() == printed.pieces.size());
}

}  // namespace blockwright_tests
