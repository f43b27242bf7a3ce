#pragma once

#include "blockwright/layout/sheet.hpp"

#include <string>
#include <utility>

namespace blockwright {

/// Adds lines and texts of one piece (or, unnamed, of the page) to a sheet.
class Drawing {
 public:
  explicit Drawing(Sheet& sheet, std::string piece = {})
      : sheet_(sheet), piece_(std::move(piece)) {}

  void line(SheetLayer layer, LineRole role, const std::string& name, const Path& path);
  void closed(SheetLayer layer, LineRole role, const std::string& name, const Path& path);
  void text(const std::string& text, Point at, double height, TextAnchor anchor, Angle turn = {});

 private:
  Sheet& sheet_;
  std::string piece_;
};

/// Everything on the drawing moved.
Sheet shifted(const Sheet& drawing, Vec by);
/// Adds one drawing's lines and texts to another.
void add(Sheet& sheet, const Sheet& drawing);

}  // namespace blockwright
