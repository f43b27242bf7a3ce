#include "form_parts.hpp"
#include "text_flow.hpp"

#include <algorithm>

namespace blockwright {
namespace {

constexpr double kPointsTitle = 4.2;
constexpr double kPointsTitleRow = 6.5;
constexpr double kPointText = 2.6;
constexpr double kPointLine = 1.32 * kPointText;
constexpr double kPointDot = 0.55;
constexpr double kLetterColumn = 5.0;
constexpr FigureSize kPointsSize{.scale = 0.052, .number = 2.6};

LineRole role_of_ink(FigureInk ink) {
  switch (ink) {
    case FigureInk::Body:
      return LineRole::BodyLine;
    case FigureInk::Detail:
      return LineRole::BodyDetail;
    case FigureInk::Guide:
    case FigureInk::HiddenTape:
      return LineRole::HiddenTape;
    case FigureInk::Tape:
      return LineRole::Tape;
    case FigureInk::Held:
    case FigureInk::ReadOff:
      return LineRole::TapeEnd;
    case FigureInk::Cloth:
      return LineRole::Cloth;
    case FigureInk::Seen:
      return LineRole::SeenFault;
  }
  return LineRole::Frame;
}

/// Writers fill nothing: a second ring makes a dot of the first.
void fill_ring(TextDrawing& drawing, const Path& ring) {
  const Box box = box_of(ring);
  const Point middle{0.5 * (box.left + box.right), 0.5 * (box.bottom + box.top)};
  drawing.line(SheetLayer::Marks, LineRole::TapeEnd, "", circle(middle, 0.2 * box.width()));
}

/// From a point to its letter's baseline: beside her, or on the body where no line runs.
Vec letter_off(std::string_view point) {
  if (point == "side neck point" || point == "shoulder point") return {2.0, 0.7};
  if (point == "natural waist") return {-2.4, 1.0};
  if (point == "front neck point" || point == "nape") return {0.0, -3.2};
  return {-2.4, -0.9};
}

std::string letter_of(std::size_t i) { return {static_cast<char>('a' + i)}; }

/// The figure with its upper left corner at `at`.
double draw_lettered(TextDrawing& drawing, TapeFigure figure,
                     const std::vector<TapeSheetPoint>& points, Point at) {
  FigureDrawing body = body_of(figure, kPointsSize);
  if (figure == TapeFigure::Back) {
    std::erase_if(body.lines, [](const FigureLine& line) { return line.ink == FigureInk::Guide; });
  }
  const Vec by{at.x, at.y - body.height};
  draw_figure_lines(drawing, body, by);
  for (const BodyPoint& point : points_of(figure, kPointsSize)) {
    const auto row = std::ranges::find(points, point.name, &TapeSheetPoint::name);
    if (row == points.end()) continue;
    const Path dot = circle(point.at + by, kPointDot);
    drawing.line(SheetLayer::Marks, LineRole::TapeEnd, "point", dot);
    fill_ring(drawing, dot);
    drawing.text(letter_of(static_cast<std::size_t>(row - points.begin())),
                 point.at + by + letter_off(point.name), kPointText, TextAnchor::Middle);
  }
  return body.height;
}

/// What the letters mean, from `top` down; gives the height.
double draw_meanings(TextDrawing& drawing, const std::vector<TapeSheetPoint>& points, double top) {
  const double left = kFigureColumn + 6.0, text = left + kLetterColumn;
  double y = top;
  for (std::size_t i = 0; i < points.size(); ++i) {
    drawing.text(letter_of(i), {left, y - kPointText}, kPointText, TextAnchor::Start);
    const std::string words = points[i].name + ": " + points[i].how;
    for (const std::string& line : wrapped(drawing.fonts(), words, kPointText, kFormWidth - text)) {
      drawing.text(line, {text, y - kPointText}, kPointText, TextAnchor::Start);
      y -= kPointLine;
    }
    y -= 1.0;
  }
  return top - y;
}

}  // namespace

void draw_figure_lines(TextDrawing& drawing, const FigureDrawing& figure, Vec by) {
  for (const FigureLine& line : figure.lines) {
    const Path path = placed(line.path, Placement::shift(by));
    drawing.line(SheetLayer::Marks, role_of_ink(line.ink), "", path);
    if (line.ink == FigureInk::Held) fill_ring(drawing, path);
  }
}

FormPart form_points(const std::vector<TapeSheetPoint>& points, TextFonts& fonts) {
  FormPart part;
  TextDrawing drawing(part.drawing, fonts);
  drawing.text("Points to mark first", {0.0, -kPointsTitle}, kPointsTitle, TextAnchor::Start);
  const double top = -kPointsTitleRow;
  const double front = draw_lettered(drawing, TapeFigure::Front, points, {0.0, top});
  const double back = draw_lettered(drawing, TapeFigure::Back, points, {0.5 * kFigureColumn, top});
  const double text = draw_meanings(drawing, points, top);
  part.height = kPointsTitleRow + std::max({front, back, text});
  return part;
}

}  // namespace blockwright
