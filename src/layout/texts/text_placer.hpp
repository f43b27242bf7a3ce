#pragma once

#include "drawing.hpp"
#include "free_space.hpp"

#include <string>
#include <vector>

namespace blockwright {

/// Boxes that together cover a line of text where it would print, turned or not.
std::vector<Box> boxes_of(const SheetText& text);

/// Sets texts where nothing else is, and remembers where they are.
class TextPlacer {
 public:
  TextPlacer(TextDrawing& drawing, FreeSpace& space) : drawing_(drawing), space_(space) {}

  [[nodiscard]] TextFonts& fonts() { return drawing_.fonts(); }

  /// Sets the text beside a line, at the first free place of: the middle, then further and further
  /// from it; left of the line before right of it, as seen reading along it; then the same a little
  /// further from the line. Nothing is set if there is no room. Returns whether it was set.
  bool beside(const Path& line, const std::string& text, double height);

  /// Sets the text beside a line, left of it, at a share of its length, whatever is there.
  void set_beside(const Path& line, double share, const std::string& text, double height);

  /// Sets lines of text as one block, left-aligned, as near to `wish` as there is room. Each line
  /// has its own height; round the block stays clear paper, the wished or else the least. Returns
  /// whether it was set.
  struct Line {
    std::string text;
    double height;
  };
  struct Margins {
    double wished, least;  // mm
  };
  bool block(const std::vector<Line>& lines, Point wish, double margin) {
    return block(lines, wish, {margin, margin}, space_);
  }
  /// The same where `room` is free. Requires: nothing is free there that is taken here.
  bool block(const std::vector<Line>& lines, Point wish, Margins margins, const FreeSpace& room);
  /// The room that such a block takes.
  [[nodiscard]] Vec size_of(const std::vector<Line>& lines, double margin) const;

 private:
  [[nodiscard]] bool fits(const SheetText& text) const;
  bool beside_at(const Path& line, double gap, SheetText text);
  void set(SheetText text);

  TextDrawing& drawing_;
  FreeSpace& space_;
};

}  // namespace blockwright
