#pragma once

#include "blockwright/geometry/box.hpp"

#include <cstdint>
#include <optional>
#include <span>
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
  /// The same for a box and what touches its border; what is found free afterwards lies inside it.
  void take_outside(const Box& box);

  /// Takes what is taken in the other. Requires: the same area and cells.
  void take(const FreeSpace& other);
  /// Takes everything nearer than `reach` to the path.
  void take_near(const Path& path, double reach);

  [[nodiscard]] bool is_free(const Box& box) const;

  /// The free box of the given width and height whose middle is nearest to `wish`.
  /// Cost: a few operations per row of 64 cells.
  [[nodiscard]] std::optional<Box> find(Vec size, Point wish) const;

 private:
  using Word = std::uint64_t;  // of 64 cells of a row, the first in its lowest bit
  struct Columns {
    int from, to;  // the last is the one before `to`
  };
  struct Cells {
    int from, to;  // rows, the same
    Columns columns;
  };
  [[nodiscard]] int column(double x) const;
  [[nodiscard]] int row(double y) const;
  [[nodiscard]] Columns columns(double left, double right) const;
  // The cells that the box touches.
  [[nodiscard]] Cells cells(const Box& box) const;
  [[nodiscard]] std::size_t first_word(int row) const;
  // The bits of the columns in the word of the first.
  static Word bits_of(Columns columns);
  // Where the run of cells that are all free, or all taken, ends from the first column on.
  enum class State { Free, Taken };
  static int run_end(std::span<const Word> words, Columns columns, State state);
  void take_cells(int row, Columns columns);
  void take_chord(Point a, Point b);
  // For each open row the columns that are taken in it or above it, in `high` rows together.
  [[nodiscard]] std::vector<Word> taken_in_rows(int high) const;
  // Where `wide` free columns begin, as near to `wish` as may be.
  [[nodiscard]] std::optional<int> free_column(std::span<const Word> taken, int wide,
                                               double wish) const;

  Box area_;
  double cell_;
  int columns_;
  int rows_;
  Cells open_;               // all others are taken, whatever their bits
  std::size_t words_;        // of a row
  std::vector<Word> taken_;  // row by row
};

}  // namespace blockwright
