#pragma once

#include "blockwright/geometry/box.hpp"
#include "blockwright/layout/sheet.hpp"

#include <vector>

namespace blockwright {

/// Where a sheet is printed on. Lines count with the width of the widest line, texts with the room
/// that they take.
class Ink {
 public:
  explicit Ink(const Sheet& sheet);

  /// Round everything printed; empty for an empty sheet.
  [[nodiscard]] const Box& box() const { return box_; }
  /// True if anything is printed inside the window or on its border.
  [[nodiscard]] bool touches(const Box& window) const;

 private:
  struct Chord {
    Point a, b;
  };
  void add(const Chord& chord);
  [[nodiscard]] bool bunch_touches(std::size_t bunch, const Box& reach) const;

  Box box_;
  std::vector<Chord> chords_;
  std::vector<Box> bunches_;
  std::vector<Box> text_boxes_;
};

}  // namespace blockwright
