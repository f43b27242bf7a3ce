#include "drawing.hpp"

#include <algorithm>

namespace blockwright {
namespace {

// Handle length of a quarter circle of radius 1, the usual approximation 4/3 (sqrt(2) - 1).
constexpr double kQuarterHandle = 0.5522847498307936;
// An arrow's barb stands this much of its length beside the shaft.
constexpr double kBarbSlant = 0.3;

CubicCurve quarter(Point centre, Vec from, Vec to) {
  const Point a = centre + from, b = centre + to;
  return {a, a + kQuarterHandle * to, b + kQuarterHandle * from, b};
}

}  // namespace

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

Path circle(Point centre, double radius) {
  const Vec right = {radius, 0.0}, up = {0.0, radius};
  Path path;
  path.add(quarter(centre, right, up));
  path.add(quarter(centre, up, -right));
  path.add(quarter(centre, -right, -up));
  path.add(quarter(centre, -up, right));
  return path;
}

Path rectangle(const Box& box) {
  const Point start = {box.left, box.bottom};
  return Path::through(
      {start, {box.right, box.bottom}, {box.right, box.top}, {box.left, box.top}, start});
}

Box square_at(Point lower_left, double side) {
  return {lower_left.x, lower_left.y, lower_left.x + side, lower_left.y + side};
}

std::vector<Path> cross_mark(Point centre, double size) {
  const Vec across = {0.5 * size, 0.0}, up = {0.0, 0.5 * size};
  return {Path::through({centre - across, centre + across}),
          Path::through({centre - up, centre + up})};
}

Path arrow_head(Point tip, Vec pointing, double size) {
  const Vec along = unit(pointing);
  const Point root = tip - size * along;
  const Vec aside = kBarbSlant * size * left_of(along);
  return Path::through({root + aside, tip, root - aside});
}

std::vector<Path> arrow(Point from, Point to, double head) {
  return {Path::through({from, to}),
          arrow_head(to, to - from, std::min(head, 0.5 * distance(from, to)))};
}

}  // namespace blockwright
