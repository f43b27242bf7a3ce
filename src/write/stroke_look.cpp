#include "stroke_look.hpp"

namespace blockwright::writing {
namespace {

// Common practice for a line that is only compared with; numbers are our own choice.
constexpr double kPreviousGrey = 0.5;
constexpr double kDotOn = 0.8;
constexpr double kDotOff = 1.2;

}  // namespace

StrokeLook look_of(const Stroke& stroke) {
  LineStyle style = style_of(stroke.role);
  if (stroke.layer == SheetLayer::Previous) return {style.width, {kDotOn, kDotOff}, kPreviousGrey};
  return {style.width, std::move(style.dashes), 0.0};
}

bool shown_at_first(const Sheet& sheet, SheetLayer layer) {
  return layer != SheetLayer::Previous || sheet.shows_previous;
}

}  // namespace blockwright::writing
