#pragma once

#include "blockwright/layout/sheet.hpp"

#include <string>
#include <utility>
#include <vector>

namespace blockwright {

/// Adds lines of one piece (or, unnamed, of the page) to a sheet.
class Drawing {
 public:
  explicit Drawing(Sheet& sheet, std::string piece = {})
      : sheet_(sheet), piece_(std::move(piece)) {}

  void line(SheetLayer layer, LineRole role, const std::string& name, const Path& path) {
    sheet_.strokes.push_back({layer, role, piece_, name, path, false});
  }
  void closed(SheetLayer layer, LineRole role, const std::string& name, const Path& path) {
    sheet_.strokes.push_back({layer, role, piece_, name, path, true});
  }

 protected:
  Sheet& sheet_;
  std::string piece_;
};

/// The same with texts, measured in the fonts that they will be written in.
class TextDrawing : public Drawing {
 public:
  TextDrawing(Sheet& sheet, TextFonts& fonts, std::string piece = {})
      : Drawing(sheet, std::move(piece)), fonts_(fonts) {}

  [[nodiscard]] TextFonts& fonts() { return fonts_; }
  /// A text that is not yet on the sheet.
  SheetText measured(const std::string& text, double height);
  void add(SheetText text) { sheet_.texts.push_back(std::move(text)); }
  void text(const std::string& text, Point at, double height, TextAnchor anchor);

 private:
  TextFonts& fonts_;
};

/// Everything on the drawing moved.
Sheet shifted(const Sheet& drawing, Vec by);
/// Adds one drawing's lines and texts to another.
void add(Sheet& sheet, const Sheet& drawing);

/// Shapes that marks are made of, in mm.

/// A circle as four cubics, anticlockwise from its rightmost point; true to 0.03 % of the radius.
Path circle(Point centre, double radius);
/// The four sides of a box, anticlockwise from its lower left corner, closed.
Path rectangle(const Box& box);
Box square_at(Point lower_left, double side);
/// Two strokes that cross upright in the middle.
std::vector<Path> cross_mark(Point centre, double size);
/// The head of an arrow as one path: barb, tip, barb. `pointing` need not be of unit length.
Path arrow_head(Point tip, Vec pointing, double size);
/// Shaft and head of an arrow; the head is no longer than half the shaft. Requires: `from` is not
/// `to`.
std::vector<Path> arrow(Point from, Point to, double head);

}  // namespace blockwright
