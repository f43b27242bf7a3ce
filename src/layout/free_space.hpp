#pragma once

#include "blockwright/geometry/box.hpp"
#include "blockwright/geometry/path.hpp"

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

  [[nodiscard]] bool is_free(const Box& box) const;

  /// The free box of the given size whose middle is nearest to `wish`.
  /// Cost: a few operations per cell; sums over the cells are kept until something more is taken.
  [[nodiscard]] std::optional<Box> find(double width, double height, Point wish);

 private:
  // Numbers of taken cells below and left of each grid corner, row by row: they tell at once how
  // many cells of a block are taken.
  struct Sums {
    std::size_t stride = 0;
    std::vector<int> corner;
    [[nodiscard]] int in(int column, int row, int wide, int high) const;
  };
  [[nodiscard]] int column(double x) const;
  [[nodiscard]] int row(double y) const;
  [[nodiscard]] std::size_t index(int column, int row) const;
  const Sums& taken_sums();
  void take_cell(int column, int row);
  void take_chord(Point a, Point b);
  void take_row_outside(int row, std::vector<double> crossings);

  Box area_;
  double cell_;
  int columns_;
  int rows_;
  std::vector<char> taken_;
  std::optional<Sums> sums_;  // of the cells as they are; nothing after a change
};

}  // namespace blockwright
