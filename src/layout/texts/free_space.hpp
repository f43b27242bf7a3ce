#pragma once

#include "blockwright/geometry/box.hpp"
#include "blockwright/geometry/path.hpp"

#include <cstdint>
#include <optional>
#include <vector>

namespace blockwright {

/// Where on a drawing there is room for a text or a mark: a grid of small cells, each free or
/// taken. Cells that anything touches are taken, so what is found free is free.
class FreeSpace {
 public:
  /// All cells inside `area` are free; everything outside it is taken. Requires: cell > 0.
  FreeSpace(const Box& area, double cell);

  void take(const Box& box);
  /// Takes the cells that the path runs through.
  void take(const Path& path);
  /// Takes everything that does not lie inside the closed outline.
  void take_outside(const Path& closed);

  /// Takes what is taken in the other. Requires: the same area and cells.
  void take(const FreeSpace& other);
  /// Takes everything nearer than `reach` to the path.
  void take_near(const Path& path, double reach);

  [[nodiscard]] bool is_free(const Box& box) const;

  /// The free box of the given size whose middle is nearest to `wish`.
  /// Cost: a few operations per row of 64 cells.
  [[nodiscard]] std::optional<Box> find(double width, double height, Point wish) const;

 private:
  using Words = std::vector<std::uint64_t>;
  [[nodiscard]] int column(double x) const;
  [[nodiscard]] int row(double y) const;
  // Cells of a row, from a column to before another; both may not lie outside.
  void take_cells(int row, int from, int to);
  void take_chord(Point a, Point b);
  void take_row_outside(int row, std::vector<double> crossings);
  // Columns that are taken in any of the rows.
  [[nodiscard]] Words taken_in_rows(int row, int high) const;
  // Where `wide` free columns begin, as near to `wish` as may be.
  [[nodiscard]] std::optional<int> free_column(const Words& taken, int wide, double wish) const;

  Box area_;
  double cell_;
  int columns_;
  int rows_;
  std::size_t words_;  // of a row
  Words taken_;        // row by row, a bit a cell
};

}  // namespace blockwright
