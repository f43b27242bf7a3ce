#include "test_squares.hpp"

#include "marks.hpp"
#include "text_flow.hpp"
#include "text_measure.hpp"

namespace blockwright {
namespace {

constexpr double kInside = 5.0;  // clear paper between square and text, mm
constexpr double kSizeText = 4.0;
constexpr double kLabelText = 8.0;
constexpr double kLabelRoom = 17.0;
constexpr double kSmallSizeText = 2.8;

void draw_square(Drawing& drawing, const std::string& name, const Box& box) {
  drawing.closed(SheetLayer::Marks, LineRole::TestSquare, name, rectangle(box));
}

}  // namespace

void draw_test_squares(Drawing& drawing, Point at) {
  const double rim = 0.5 * (kInchSquare - kMetricSquare);
  const Box inner = square_at(at + Vec{rim, rim}, kMetricSquare);
  draw_square(drawing, "test square 4 in", square_at(at, kInchSquare));
  draw_square(drawing, "test square 100 mm", inner);
  const Box frame = {inner.left + kInside, inner.bottom + kInside, inner.right - kInside,
                     inner.top - kInside};
  TextFlow flow({{"Measure before you cut", 5.0, 0.0, true},
                 {"inner square: 100 mm", kSizeText, 3.0, false},
                 {"outer square: 4 in", kSizeText, 0.0, false},
                 {"from the middle of one line to the middle of the other, across and upwards.",
                  3.2, 1.0, false},
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
