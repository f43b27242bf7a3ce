#pragma once

#include "blockwright/layout/print_plan.hpp"

#include <string>
#include <vector>

namespace blockwright {

/// Where a piece is on the sheet. Lines count with the width of the widest line.
class PieceInk {
 public:
  explicit PieceInk(const LaidPiece& piece);

  [[nodiscard]] const std::string& piece() const { return piece_; }
  /// Round everything drawn.
  [[nodiscard]] const Box& box() const { return box_; }
  /// True if a part of the piece lies inside the window or on its border.
  [[nodiscard]] bool touches(const Box& window) const;

 private:
  struct Chord {
    Point a, b;
  };
  void add(const Chord& chord);
  [[nodiscard]] bool bunch_touches(std::size_t bunch, const Box& reach) const;

  std::string piece_;
  Path outline_;
  Box box_;
  std::vector<Chord> chords_;
  std::vector<Box> bunches_;
};

/// Where a layout is printed on.
class Ink {
 public:
  explicit Ink(const Layout& layout);

  /// Round everything drawn; empty for an empty layout.
  [[nodiscard]] const Box& box() const { return box_; }
  [[nodiscard]] bool touches(const Box& window) const;
  /// The names of the pieces that touch the window.
  [[nodiscard]] std::vector<std::string> pieces_in(const Box& window) const;

 private:
  std::vector<PieceInk> pieces_;
  Box box_;
};

}  // namespace blockwright
