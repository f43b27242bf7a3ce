#pragma once

#include "blockwright/geometry/box.hpp"
#include "drawing.hpp"
#include "free_space.hpp"

#include <string>
#include <vector>

namespace blockwright {

/// How far letters reach above and below their baseline, in shares of the em (DejaVu Sans, accents
/// on capitals included).
inline constexpr double kLettersAbove = 0.93;
inline constexpr double kLettersBelow = 0.24;

/// Boxes that together cover a line of text where it would print, turned or not.
std::vector<Box> boxes_of(const SheetText& text);

/// Sets texts where nothing else is, and remembers where they stand.
class TextPlacer {
 public:
  TextPlacer(Sheet& sheet, std::string piece, FreeSpace& space)
      : sheet_(sheet), piece_(std::move(piece)), space_(space) {}

  /// Sets the text beside a line, at the first free place of: the middle, then further and further
  /// from it; left of the line before right of it, as seen reading along it; then the same a little
  /// further from the line. Nothing is set if there is no room. Returns whether it was set.
  bool beside(const Path& line, const std::string& text, double height);

  /// Sets the text beside a line, left of it, at a share of its length, whatever is there.
  void set_beside(const Path& line, double share, const std::string& text, double height);

  /// Sets lines of text as one block, left-aligned, as near to `wish` as there is room. Each line
  /// has its own height; `margin` mm round the block stay clear. Returns whether it was set.
  struct Line {
    std::string text;
    double height;
  };
  bool block(const std::vector<Line>& lines, Point wish, double margin);

 private:
  [[nodiscard]] bool fits(const SheetText& text) const;
  bool beside_at(const Path& line, double gap, const std::string& text, double height);
  void set(SheetText text);

  Sheet& sheet_;
  std::string piece_;
  FreeSpace& space_;
};

}  // namespace blockwright
