#include "drawing.hpp"

namespace blockwright {

SheetText TextDrawing::measured(const std::string& text, double height) {
  return {
      .piece = piece_, .text = text, .at = {}, .height = height, .room = fonts_.room(text, height)};
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
