#include "test_squares.hpp"

#include "marks.hpp"
#include "text_flow.hpp"
#include "text_measure.hpp"

namespace blockwright {
namespace {

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

}  // namespace

void draw_test_squares(Drawing& drawing, Point at) {
  const Box inches = square_at(at, kInchSquare);
  const Box metric = square_at(at + Vec{kSquareStep, kSquareStep}, kMetricSquare);
  draw_square(drawing, "test square 4 in", inches);
  draw_square(drawing, "test square 100 mm", metric);
  drawing.text("lower square: 4 in", {inches.left + kLabelInset, inches.bottom + kLabelInset},
               kSizeText, TextAnchor::Start);
  drawing.text("upper square: 100 mm", {metric.right - kLabelInset, metric.top - kLabelDrop},
               kSizeText, TextAnchor::End);
  const Box frame = {metric.left + kInside, metric.bottom + kInside, inches.right - kInside,
                     inches.top - kInside};
  TextFlow flow({{"Measure before you cut", 5.0, 0.0, true},
                 {"From the middle of one line to the middle of the other, across and upwards.",
                  3.2, 3.0, false},
                 {"If they differ, print again at 100 %, with no scaling and no \u201cfit to "
                  "page\u201d.",
                  3.2, 3.0, false}},
                1.0);
  flow.pour(drawing, frame);
}

void draw_small_square(Drawing& drawing, Point at, const std::string& label) {
  draw_square(drawing, "test square 20 mm", square_at(at, kSmallSquare));
  const double height =
      std::min(kLabelText, kLabelText * kLabelRoom / text_width(label, kLabelText));
  const double middle = at.x + 0.5 * kSmallSquare;
  drawing.text(label, {middle, at.y + 8.5}, height, TextAnchor::Middle);
  drawing.text("20 mm", {middle, at.y + 2.5}, kSmallSizeText, TextAnchor::Middle);
}

}  // namespace blockwright
