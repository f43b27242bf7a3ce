#include "drawing.hpp"

namespace blockwright {

void Drawing::line(SheetLayer layer, LineRole role, const std::string& name, const Path& path) {
  sheet_.strokes.push_back({layer, role, piece_, name, path, false});
}

void Drawing::closed(SheetLayer layer, LineRole role, const std::string& name, const Path& path) {
  sheet_.strokes.push_back({layer, role, piece_, name, path, true});
}

void Drawing::text(const std::string& text, Point at, double height, TextAnchor anchor,
                   Angle turn) {
  sheet_.texts.push_back({SheetLayer::Text, piece_, text, at, height, anchor, turn});
}

Sheet shifted(const Sheet& drawing, Vec by) {
  const Placement shift = Placement::shift(by);
  Sheet moved = drawing;
  for (Stroke& stroke : moved.strokes) stroke.path = placed(stroke.path, shift);
  for (SheetText& text : moved.texts) text.at = shift(text.at);
  return moved;
}

void add(Sheet& sheet, const Sheet& drawing) {
  sheet.strokes.insert(sheet.strokes.end(), drawing.strokes.begin(), drawing.strokes.end());
  sheet.texts.insert(sheet.texts.end(), drawing.texts.begin(), drawing.texts.end());
}

}  // namespace blockwright
