#include "change_drawing.hpp"

#include "text_placer.hpp"
#include "words.hpp"

#include <algorithm>
#include <utility>

namespace blockwright {
namespace {

// In mm on the page.
constexpr double kPageArrowHead = 2.4;
constexpr double kShortestArrow = 3.0;
constexpr double kAmountText = 3.4;
constexpr double kBesideArrow = 3.0;
// With an arrow at every point, those farthest off and this far from one another are drawn.
constexpr std::size_t kMostArrows = 8;
constexpr double kArrowsApart = 30.0;  // of the piece

std::string together_words(const PieceChange& change, Alignment alignment) {
  if (change.moved.empty() && change.before.empty()) return "unchanged";
  switch (alignment) {
    case Alignment::Waist:
      return "laid together at the centre waist";
    case Alignment::Bust:
      return "laid together at the bust line";
    case Alignment::Neck:
      return "laid together at the neck, on the centre line";
    case Alignment::Still:
      break;
  }
  if (change.still.empty()) return "laid together on the centre line, where most lies alike";
  return "laid together at " + listed(change.still);
}

std::vector<MovedPoint> well_apart(const std::vector<MovedPoint>& points) {
  std::vector<MovedPoint> chosen;
  for (const MovedPoint& point : points) {
    const auto near = [&](const MovedPoint& other) {
      return distance(other.is, point.is) < kArrowsApart;
    };
    if (chosen.size() == kMostArrows) break;
    if (std::none_of(chosen.begin(), chosen.end(), near)) chosen.push_back(point);
  }
  return chosen;
}

Box box_round(const PieceChange& change) {
  Box box;
  for (const auto* lines : {&change.before, &change.kept, &change.moved}) {
    for (const PieceLine& line : *lines) box.include(box_of(line.path));
  }
  return box;
}

ShownChange shown_change(const Piece& piece, const ChangePage& page) {
  const Piece* earlier = earlier_version(piece, page.before);
  ShownChange shown{title_of(piece.name), "new", {.kept = lines_of(piece)}, {}, {}};
  if (earlier != nullptr) {
    shown.change = change_between(piece, *earlier, laid_under(piece, *earlier, page.alignment));
    shown.together = together_words(shown.change, page.alignment);
    shown.arrows = page.every_point ? well_apart(shown.change.points) : shown.change.largest;
  }
  shown.box = box_round(shown.change);
  return shown;
}

bool holds(const Box& box, Point p) {
  return p.x >= box.left && p.x <= box.right && p.y >= box.bottom && p.y <= box.top;
}

/// In the direction of the move, to its end; a short move's arrow begins farther back.
std::pair<Point, Point> arrow_on_page(const MovedPoint& move, const Reduction& reduce,
                                      const Box& room) {
  const Point to = reduce(move.is), from = reduce(move.was);
  const Vec along = unit(to - from);
  double far = kLeastArrow;
  while (far > kShortestArrow && !holds(room, to - far * along)) far -= 1.0;
  if (distance(from, to) >= far) return {from, to};
  return {to - far * along, to};
}

}  // namespace

std::vector<ShownChange> shown_changes(const ChangePage& page) {
  std::vector<ShownChange> shown;
  for (const Piece& piece : page.after.pieces) shown.push_back(shown_change(piece, page));
  return shown;
}

void draw_lines(TextDrawing& drawing, const ShownChange& shown, const Reduction& reduce,
                FreeSpace& space) {
  const auto draw = [&](const std::vector<PieceLine>& lines, LineRole edge, LineRole dart) {
    for (const PieceLine& line : lines) {
      const Path small = reduce(line.path);
      drawing.line(SheetLayer::Stitch, line.dart ? dart : edge, line.name, small);
      space.take(small);
    }
  };
  draw(shown.change.before, LineRole::Before, LineRole::Before);
  draw(shown.change.kept, LineRole::After, LineRole::AfterDart);
  draw(shown.change.moved, LineRole::MovedEdge, LineRole::MovedEdge);
}

void draw_arrows(TextDrawing& drawing, const ShownChange& shown, const Reduction& reduce,
                 const ArrowRoom& room, Unit unit) {
  for (const MovedPoint& move : shown.arrows) {
    const auto [from, to] = arrow_on_page(move, reduce, room.box);
    for (const Path& stroke : arrow(from, to, kPageArrowHead)) {
      drawing.line(SheetLayer::Marks, LineRole::Arrow, move.name, stroke);
      room.space.take(stroke);
    }
  }
  TextPlacer placer(drawing, room.space);
  for (const MovedPoint& move : shown.arrows) {
    const auto [from, to] = arrow_on_page(move, reduce, room.box);
    const std::string far = number_text(Length::mm(distance(move.was, move.is)), unit) + " " +
                            std::string(unit_name(unit));
    placer.block({{far, kAmountText}}, from - kBesideArrow * blockwright::unit(to - from), 0.5);
  }
}

}  // namespace blockwright
