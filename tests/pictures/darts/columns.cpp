#include "blockwright/base/number_text.hpp"
#include "darts/pictures.hpp"

#include <algorithm>
#include <cmath>

namespace blockwright_pictures {

using namespace blockwright;

namespace {

constexpr double kCaptionFeed = 11.0;  // the diagram's

}  // namespace

Sketch in_column(Diagram& d, int column, const Box& box) {
  const double scale = std::fmin(kRoomWide / box.width(), kRoomHigh / box.height());
  return {d, scale, {kLeft + column * kColumn, kBottom}, {box.left, box.bottom}};
}

void head(Diagram& d, int column, const std::string& heading, const std::string& caption) {
  const double left = kLeft + column * kColumn;
  d.heading({left, kHeadingLine}, heading);
  const auto breaks = std::count(caption.begin(), caption.end(), '\n');
  const double middle = kCaptionLine - 0.5 * kCaptionFeed * static_cast<double>(breaks);
  d.label({left - 1.0, middle}, {1.0, 0.0}, caption);
}

std::string degrees(Angle angle) { return fixed(angle.degrees(), 1) + "°"; }

std::string cm(double mm) { return fixed(0.1 * mm, 1) + " cm"; }

}  // namespace blockwright_pictures
