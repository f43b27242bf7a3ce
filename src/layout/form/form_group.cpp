#include "form_parts.hpp"
#include "text_flow.hpp"

#include <algorithm>

namespace blockwright {
namespace {

constexpr double kGroupTitle = 4.2;
constexpr double kTitleRow = 7.0;
constexpr double kRowName = 3.3;
constexpr double kRowText = 2.4;
constexpr double kRowLine = 1.32;  // of the letters' height, from baseline to baseline
constexpr double kRowGap = 2.6;
constexpr double kNumberColumn = 8.5;
constexpr double kNumberRing = 2.7;
constexpr double kBoxWidth = 15.5, kBoxHeight = 8.0, kBoxGap = 1.5;
constexpr double kBoxes = 3.0 * kBoxWidth + 2.0 * kBoxGap;
constexpr double kBeforeBoxes = 3.0;
constexpr double kTableLeft = kFigureColumn + 3.0;
constexpr double kTextLeft = kTableLeft + kNumberColumn;
constexpr double kBoxesLeft = kFormWidth - kBoxes;
constexpr double kTextWidth = kBoxesLeft - kBeforeBoxes - kTextLeft;

/// As large as the column takes it, all of her smaller.
FigureSize size_on_form(TapeFigure figure) {
  if (figure == TapeFigure::Side) return {.scale = 0.068, .number = 2.6};
  return {.scale = figure == TapeFigure::Arm ? 0.19 : 0.112, .number = 2.6};
}

/// In the middle of its column, its top at `top`; gives its height.
double draw_figure(TextDrawing& drawing, TapeFigure figure, double top) {
  const FigureSize size = size_on_form(figure);
  const FigureDrawing drawn = drawing_of(figure, size);
  const Vec by{0.5 * (kFigureColumn - drawn.width), top - drawn.height};
  draw_figure_lines(drawing, drawn, by);
  for (const FigureNumber& number : drawn.numbers) {
    const Box room = room_of(number, size);
    drawing.text(number.text, Point{number.at.x, room.bottom} + by, size.number,
                 TextAnchor::Middle);
  }
  return drawn.height;
}

/// Three to write in; those of an angle bear its unit.
void draw_boxes(TextDrawing& drawing, bool angle, double top) {
  for (int i = 0; i < 3; ++i) {
    const double left = kBoxesLeft + i * (kBoxWidth + kBoxGap);
    drawing.closed(SheetLayer::Marks, LineRole::Frame, "reading",
                   rectangle({left, top - kBoxHeight, left + kBoxWidth, top}));
    if (!angle) continue;
    drawing.text("\u00b0", {left + kBoxWidth - 1.0, top - 0.5 * kBoxHeight}, kRowName,
                 TextAnchor::End);
  }
}

void draw_number(TextDrawing& drawing, const TapeSheetRow& row, double baseline) {
  const Point middle{kTableLeft + kNumberRing + 0.3, baseline + 0.36 * kRowName};
  drawing.text(std::to_string(row.number), {middle.x, baseline}, kRowName, TextAnchor::Middle);
  if (row.early) {
    drawing.closed(SheetLayer::Marks, LineRole::Frame, "early", circle(middle, kNumberRing));
  }
}

/// Number, name and how, with the boxes beside; gives its height.
double draw_row(TextDrawing& drawing, const TapeSheetRow& row, double top) {
  double y = top - kNumberRing - 0.36 * kRowName;
  draw_number(drawing, row, y);
  drawing.text(shortened(drawing.fonts(), row.name, kRowName, kTextWidth), {kTextLeft, y}, kRowName,
               TextAnchor::Start);
  y -= 0.7;
  for (const std::string& line : wrapped(drawing.fonts(), row.how, kRowText, kTextWidth)) {
    y -= kRowLine * kRowText;
    drawing.text(line, {kTextLeft, y}, kRowText, TextAnchor::Start);
  }
  draw_boxes(drawing, row.angle, top);
  double lowest = top - kBoxHeight;
  if (!row.last.empty()) {
    lowest -= kRowLine * kRowText;
    drawing.text(shortened(drawing.fonts(), row.last, kRowText, kBoxes), {kBoxesLeft, lowest},
                 kRowText, TextAnchor::Start);
  }
  return top - std::min(y - 0.4 * kRowText, lowest);
}

}  // namespace

FormPart form_group(const TapeSheetGroup& group, TextFonts& fonts) {
  FormPart part;
  TextDrawing drawing(part.drawing, fonts);
  drawing.text(std::string(figure_title(group.figure)), {0.0, -kGroupTitle}, kGroupTitle,
               TextAnchor::Start);
  const double figure = kTitleRow + draw_figure(drawing, group.figure, -kTitleRow);
  double y = 0.0;
  for (const TapeSheetRow& row : group.rows) y -= draw_row(drawing, row, y) + kRowGap;
  part.height = std::max(figure, -y - kRowGap);
  return part;
}

}  // namespace blockwright
