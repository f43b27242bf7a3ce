#include "drawing.hpp"

namespace blockwright {

void Drawing::line(SheetLayer layer, LineRole role, const std::string& name, const Path& path) {
  sheet_.strokes.push_back({layer, role, piece_, name, path, false});
}

void Drawing::closed(SheetLayer layer, LineRole role, const std::string& name, const Path& path) {
  sheet_.strokes.push_back({layer, role, piece_, name, path, true});
}

SheetText TextDrawing::measured(const std::string& text, double height) {
  SheetText measured;
  measured.piece = piece_;
  measured.text = text;
  measured.height = height;
  measured.room = fonts_.room(text, height);
  return measured;
}

void TextDrawing::text(const std::string& text, Point at, double height, TextAnchor anchor) {
  SheetText set = measured(text, height);
  set.at = at;
  set.anchor = anchor;
  add(std::move(set));
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
