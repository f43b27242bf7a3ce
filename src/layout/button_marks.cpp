#include "button_marks.hpp"

#include <string>

namespace blockwright {
namespace {

// Common practice, no source.
constexpr double kButtonCross = 6.0;
constexpr double kHoleEnd = 5.0;

std::string numbered(const char* what, std::size_t i) {
  return std::string(what) + std::to_string(i + 1);
}

Path hole_end(Point at, Vec across) {
  return Path::through({at - 0.5 * kHoleEnd * across, at + 0.5 * kHoleEnd * across});
}

}  // namespace

void draw_button_marks(const Piece& piece, Drawing& drawing) {
  if (!piece.stand) return;
  const ButtonStand& stand = *piece.stand;
  drawing.line(SheetLayer::Marks, LineRole::BalanceLine, "centre_front", Path({stand.centre}));
  const auto draw = [&](const std::string& name, const Path& path) {
    drawing.line(SheetLayer::Marks, LineRole::Hole, name, path);
  };
  for (std::size_t i = 0; i < stand.buttons.size(); ++i) {
    for (const Path& stroke : cross_mark(stand.buttons[i], kButtonCross)) {
      draw(numbered("button_", i), stroke);
    }
  }
  for (std::size_t i = 0; i < stand.buttonholes.size(); ++i) {
    const Segment& hole = stand.buttonholes[i];
    const Vec across = left_of(unit(hole.b - hole.a));
    const std::string name = numbered("buttonhole_", i);
    draw(name, Path({hole}));
    draw(name, hole_end(hole.a, across));
    draw(name, hole_end(hole.b, across));
  }
}

}  // namespace blockwright
