#include "pages.hpp"

#include <algorithm>

namespace blockwright {
namespace {

constexpr double kSquareStep = 10.0;
constexpr double kInside = 5.0;  // clear paper between square and text, mm
constexpr double kSizeText = 4.0;
constexpr double kLabelInset = 3.0;
constexpr double kLabelDrop = 6.0;
constexpr double kLabelText = 8.0;
constexpr double kLabelRoom = 17.0;
constexpr double kSmallSizeText = 2.8;

void draw_square(Drawing& drawing, const std::string& name, const Box& box) {
  drawing.closed(SheetLayer::Marks, LineRole::TestSquare, name, rectangle(box));
}

// From the corner of the 4 in square to that of the 100 mm one.
Vec step_of(SquaresLie lie) {
  if (lie == SquaresLie::SideBySide) return {kInchSquare + kGutter, 0.0};
  return {kSquareStep, kSquareStep};
}

}  // namespace

Vec squares_field(SquaresLie lie) {
  const Vec step = step_of(lie);
  return {step.x + kMetricSquare, std::max(kInchSquare, step.y + kMetricSquare)};
}

void draw_test_squares(TextDrawing& drawing, Point upper_left, SquaresLie lie) {
  const Vec step = step_of(lie);
  const Point at = upper_left - Vec{0.0, squares_field(lie).y};
  const Box inches = square_at(at, kInchSquare), metric = square_at(at + step, kMetricSquare);
  draw_square(drawing, "test square 4 in", inches);
  draw_square(drawing, "test square 100 mm", metric);
  drawing.text("4 in", {inches.left + kLabelInset, inches.bottom + kLabelInset}, kSizeText,
               TextAnchor::Start);
  drawing.text("100 mm", {metric.right - kLabelInset, metric.top - kLabelDrop}, kSizeText,
               TextAnchor::End);
  const Point corner = {metric.left + kInside, metric.bottom + kInside};
  const double side = kInchSquare - kSquareStep - 2.0 * kInside;
  TextFlow flow({{"Measure before you cut", 5.0, 0.0, true},
                 {"From the middle of one line to the middle of the other, across and upwards.",
                  3.2, 3.0, false},
                 {"If they differ, print again at 100 %, with no scaling and no \u201cfit to "
                  "page\u201d.",
                  3.2, 3.0, false}},
                1.0);
  flow.pour(drawing, square_at(corner, side));
}

Box room_in_squares(Point upper_left) {
  return {upper_left.x + kInside, upper_left.y - kInchSquare + kInside + kSizeText,
          upper_left.x + kInchSquare - kInside, upper_left.y - kInside};
}

void draw_small_square(TextDrawing& drawing, Point at, const std::string& label) {
  draw_square(drawing, "test square 20 mm", square_at(at, kSmallSquare));
  const double height =
      std::min(kLabelText, kLabelText * kLabelRoom / drawing.fonts().room(label, kLabelText).width);
  const double middle = at.x + 0.5 * kSmallSquare;
  drawing.text(label, {middle, at.y + 8.5}, height, TextAnchor::Middle);
  drawing.text("20 mm", {middle, at.y + 2.5}, kSmallSizeText, TextAnchor::Middle);
}

}  // namespace blockwright
