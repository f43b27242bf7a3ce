#include "change_drawing.hpp"

#include "blockwright/block/kinds.hpp"
#include "blockwright/geometry/intersections.hpp"
#include "text_placer.hpp"
#include "words.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>
#include <optional>
#include <utility>

namespace blockwright {
namespace {

// In mm on the page.
constexpr double kPageArrowHead = 2.4;
constexpr double kShortestArrow = 3.0;
constexpr double kAmountText = 3.4;
constexpr double kLevelText = 2.4;
constexpr double kLevelCross = 2.2;
// An arrow ends so far before a line that it points at; it lies on a line that is nearer than
// kOnArrow to it, and this far beside it where most of it would.
constexpr double kBeforeLine = 0.9;
constexpr double kOnArrow = 0.5;
constexpr double kBesideLine = 2.2;
constexpr double kMostOnLines = 0.2;
constexpr int kAskedOnArrow = 16;
// Clear paper round an amount, and between it and another piece.
constexpr TextPlacer::Margins kRoundAmount{1.0, 0.4};
constexpr double kOffOtherPiece = 3.5;
// From an arrow to its amount; a place inside the piece is as good as one that much farther off.
constexpr double kBehindArrow = 0.3;
constexpr double kBesideArrow = 1.2;
constexpr double kInsideIsAsFar = 4.0;
constexpr double kNoNearer = 0.2;
// So much farther off it may be for clear paper round it.
constexpr double kWorthRoom = 2.0;
// With an arrow at every point, those farthest off and this far from one another are drawn.
constexpr std::size_t kMostArrows = 8;
constexpr double kArrowsApart = 30.0;  // of the piece
// Stretches of one line shorter than this, between moved ones, lie where old and new cross, mm.
constexpr double kCrossing = 90.0;
// A moved stretch shorter than this that hardly moved by enough is a blot on its line, mm.
constexpr double kStub = 15.0;
// An amount is not shown where the place lies as near to the old one, mm.
constexpr double kNotMoved = 0.5;
// Places of the piece nearer than this to one another share an arrow, mm.
constexpr double kOnePlace = 6.0;
// Of outlines, on the page, mm.
constexpr double kOutlineTolerance = 0.05;
constexpr double kInsideEvery = 0.8;

/// What nothing is stitched by may move where no line does, such as the bust line of a back.
std::string unmoved_words(const PieceChange& change, const ShownLevels& before) {
  if (!before.lines.empty()) return "unchanged but for the bust line";
  return change.largest.empty() ? "unchanged" : "hardly changed: nothing to see at this size";
}

std::string together_words(const PieceChange& change, Alignment alignment) {
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

Box box_round(const ShownChange& shown) {
  Box box;
  const PieceChange& change = shown.change;
  for (const auto* lines : {&change.before, &change.kept, &change.moved}) {
    for (const PieceLine& line : *lines) box.include(box_of(line.path));
  }
  return box;
}

ShownLevels levels_of(const Piece& piece, const Placement& lies = {}) {
  ShownLevels levels;
  if (const BalanceLine* bust = find_line(piece, LineUse::Bust)) {
    levels.lines.push_back({bust->name, placed(bust->path, lies)});
  }
  for (const KindLandmark& point : kind_of(piece).landmarks) {
    if (point.on != PointOn::Apex) continue;
    const auto* at = find_named(piece.landmarks, point.name);
    if (at != nullptr) levels.points.push_back({at->name, lies(at->at)});
  }
  return levels;
}

/// Those that lie elsewhere than now.
ShownLevels elsewhere(const ShownLevels& before, const ShownLevels& now, MovedFrom from) {
  ShownLevels moved{parts(before.lines, LinesAsked(now.lines), Lies::Off, from), {}};
  for (const Landmark& point : before.points) {
    const auto* is = find_named(now.points, point.name);
    if (is != nullptr && distance(is->at, point.at) > from.by) moved.points.push_back(point);
  }
  return moved;
}

std::string distance_words(const MovedPoint& move, Unit unit) {
  return number_text(Length::mm(distance(move.was, move.is)), unit) + " " +
         std::string(unit_name(unit));
}

/// Where an amount shows: at its own place of a line that others moved too, or at the named place.
std::optional<MovedPoint> shown_place(const ShownAmount& amount, const Piece& piece,
                                      const LinesAsked& before,
                                      const std::vector<MovedPoint>& places) {
  const auto* edge = amount.share ? find_named(piece.edges, amount.place) : nullptr;
  if (edge != nullptr) {
    const double along = cut_from_closed(piece, *edge, *amount.share * sewn_length(piece, *edge));
    const Point is = point_at_length(edge->path, along);
    return MovedPoint{amount.place, before.nearest(is).point, is};
  }
  const auto* place = find_named(places, amount.place);
  return place == nullptr ? std::nullopt : std::optional(*place);
}

/// Amounts at one place share an arrow.
std::vector<ShownArrow> arrows_of_amounts(const std::vector<ShownAmount>& amounts,
                                          const Piece& piece, const Piece& earlier,
                                          const Placement& lies) {
  const std::vector<MovedPoint> places = moved_places(piece, earlier, lies);
  const LinesAsked before(lines_of(earlier, lies));
  std::vector<ShownArrow> arrows;
  for (const ShownAmount& amount : amounts) {
    if (amount.piece != piece.name) continue;
    const auto place = shown_place(amount, piece, before, places);
    if (!place || distance(place->was, place->is) < kNotMoved) continue;
    const auto there = std::ranges::find_if(arrows, [&](const ShownArrow& arrow) {
      return distance(arrow.move.is, place->is) < kOnePlace;
    });
    if (there == arrows.end()) {
      arrows.push_back({*place, amount.words});
    } else {
      there->words.insert(there->words.end(), amount.words.begin(), amount.words.end());
    }
  }
  return arrows;
}

std::vector<ShownArrow> arrows_of(const Piece& piece, const Piece& earlier, const Placement& lies,
                                  const PieceChange& change, const ChangePage& page) {
  if (!page.amounts.empty()) return arrows_of_amounts(page.amounts, piece, earlier, lies);
  std::vector<ShownArrow> arrows;
  for (const MovedPoint& move : page.every_point ? well_apart(change.points) : change.largest) {
    arrows.push_back({move, {distance_words(move, page.unit)}});
  }
  return arrows;
}

/// A piece over its earlier version as it is laid.
struct LaidOver {
  const Piece* earlier = nullptr;
  Placement lies;
};
LaidOver laid_over(const Piece& piece, const ChangePage& page) {
  const Piece* earlier = earlier_version(piece, page.before);
  if (earlier == nullptr) return {};
  return {earlier, laid_under(piece, *earlier, page.alignment)};
}

ShownChange shown_change(const Piece& piece, const LaidOver& over, const ChangePage& page,
                         MovedFrom from) {
  ShownChange shown{.name = title_of(piece.name),
                    .whole = std::string(sided_name(piece.name).whole),
                    .side = std::string(sided_name(piece.name).side),
                    .together = "new",
                    .change = {.kept = lines_of(piece)},
                    .before = {},
                    .now = levels_of(piece),
                    .arrows = {},
                    .outline = flat_outline(piece),
                    .box = {}};
  if (over.earlier != nullptr) {
    shown.change = change_between(piece, *over.earlier, over.lies, from);
    shown.arrows = arrows_of(piece, *over.earlier, over.lies, shown.change, page);
    shown.before = elsewhere(levels_of(*over.earlier, over.lies), shown.now, from);
    const bool still = shown.change.moved.empty() && shown.change.before.empty();
    shown.together = still ? unmoved_words(shown.change, shown.before)
                           : together_words(shown.change, page.alignment);
    shown.changed = !still || !shown.before.lines.empty() || !shown.change.largest.empty();
  }
  shown.box = box_round(shown);
  return shown;
}

void draw_levels(TextDrawing& drawing, const ShownLevels& levels, LineRole role,
                 const Reduction& reduce, FreeSpace& space) {
  const auto draw = [&](const std::string& name, const Path& small) {
    drawing.line(SheetLayer::Marks, role, name, small);
    space.take(small);
  };
  for (const PieceLine& line : levels.lines) draw(line.name, reduce(line.path));
  for (const Landmark& point : levels.points) {
    for (const Path& stroke : cross_mark(reduce(point.at), kLevelCross)) draw(point.name, stroke);
  }
}

bool holds(const Box& box, Point p) {
  return p.x >= box.left && p.x <= box.right && p.y >= box.bottom && p.y <= box.top;
}

struct ArrowOnPage {
  Point from, to;
};

/// In the direction of the move, to its end; a short move's arrow begins farther back.
ArrowOnPage arrow_on_page(Point from, Point to, const Box& room) {
  const Vec along = unit(to - from);
  double far = kLeastArrow;
  while (far > kShortestArrow && !holds(room, to - far * along)) far -= 1.0;
  if (distance(from, to) >= far) return {from, to};
  return {to - far * along, to};
}

ArrowOnPage shifted(const ArrowOnPage& arrow, Vec by) { return {arrow.from + by, arrow.to + by}; }

/// How much of its shaft lies on lines, head and tip left out.
double share_on(const ArrowOnPage& arrow, const LinesAsked& lines) {
  int on = 0;
  for (int i = 0; i < kAskedOnArrow; ++i) {
    const double share = (i + 0.5) / kAskedOnArrow;
    const Point here = arrow.from + share * (arrow.to - arrow.from);
    if (distance(here, arrow.to) > kOnArrow && lines.nearest(here).distance < kOnArrow) ++on;
  }
  return static_cast<double>(on) / kAskedOnArrow;
}

/// A little before the line that it points at; where its shaft would lie on a line, beside that
/// and outside the piece.
ArrowOnPage beside_lines(const ArrowOnPage& arrow, const LinesAsked& lines, const Path& outline,
                         const Box& room) {
  const Vec along = unit(arrow.to - arrow.from);
  if (share_on(arrow, lines) <= kMostOnLines) return shifted(arrow, -kBeforeLine * along);
  ArrowOnPage best = shifted(arrow, -kBeforeLine * along);
  double least = std::numeric_limits<double>::infinity();
  for (const double aside : {kBesideLine, -kBesideLine}) {
    const ArrowOnPage there = shifted(arrow, aside * left_of(along));
    const bool inside = contains(outline, midpoint(there.from, there.to), kOutlineTolerance);
    const bool off_page = !holds(room, there.from) || !holds(room, there.to);
    const double cost = share_on(there, lines) + (inside ? 0.5 : 0.0) + (off_page ? 10.0 : 0.0);
    if (cost < least) {
      least = cost;
      best = there;
    }
  }
  return best;
}

LinesAsked lines_on_page(const ShownChange& shown, const Reduction& reduce) {
  std::vector<PieceLine> small;
  for (const auto* lines : {&shown.change.before, &shown.change.kept, &shown.change.moved}) {
    for (const PieceLine& line : *lines) small.push_back({line.name, reduce(line.path), line.dart});
  }
  for (const PieceLine& line : shown.now.lines) small.push_back({line.name, reduce(line.path)});
  return LinesAsked(small);
}

/// Everything inside a closed outline.
void take_inside(FreeSpace& space, const Path& outline) {
  const Box box = box_of(outline);
  for (double y = box.bottom + 0.5 * kInsideEvery; y < box.top; y += kInsideEvery) {
    std::vector<double> cuts;
    for (const LineCrossing& at : intersections(outline, {0.0, y}, {1.0, 0.0})) {
      cuts.push_back(at.point.x);
    }
    std::ranges::sort(cuts);
    for (std::size_t i = 0; i + 1 < cuts.size(); i += 2) {
      space.take(Box{cuts[i], y - 0.5 * kInsideEvery, cuts[i + 1], y + 0.5 * kInsideEvery});
    }
  }
}

double reach_along(Vec size, Vec along) {
  return 0.5 * (std::abs(along.x) * size.x + std::abs(along.y) * size.y);
}

std::vector<TextPlacer::Line> lines_of(const DrawnArrow& arrow) {
  std::vector<TextPlacer::Line> lines;
  for (const std::string& words : arrow.words) lines.push_back({words, kAmountText});
  return lines;
}

/// Where the words may stand: beyond either end of an arrow, or on either side of its middle.
std::array<Point, 4> wishes_of(const DrawnArrow& arrow, Vec size) {
  const Vec along = unit(arrow.to - arrow.from), aside = left_of(along);
  const double ahead = reach_along(size, along), off = reach_along(size, aside) + kBesideArrow;
  const Point middle = midpoint(arrow.from, arrow.to);
  return {arrow.from - (ahead + kBehindArrow) * along,
          arrow.to + (ahead + 2.0 * kBeforeLine) * along, middle + off * aside,
          middle - off * aside};
}

/// A place for the words, and how far it is from the arrow.
struct AmountPlace {
  Point wish;
  double off = std::numeric_limits<double>::infinity();
  bool outside = false;
};

double gap_between(const Box& box, const DrawnArrow& arrow) {
  double least = std::numeric_limits<double>::infinity();
  for (int i = 0; i <= kAskedOnArrow; ++i) {
    const Point on = between(arrow.from, arrow.to, static_cast<double>(i) / kAskedOnArrow);
    const double x = std::max({box.left - on.x, 0.0, on.x - box.right});
    const double y = std::max({box.bottom - on.y, 0.0, on.y - box.top});
    least = std::min(least, std::hypot(x, y));
  }
  return least;
}

/// The place nearest to the arrow, outside of the piece where that is not much farther.
AmountPlace place_of(const DrawnArrow& arrow, Vec size, const FreeSpace& outside,
                     const FreeSpace& anywhere) {
  AmountPlace best;
  for (const Point wish : wishes_of(arrow, size)) {
    for (const bool out : {true, false}) {
      const auto found = (out ? outside : anywhere).find(size, wish);
      if (!found) continue;
      const double off = gap_between(*found, arrow) + (out ? 0.0 : kInsideIsAsFar);
      if (off < best.off - kNoNearer) best = {wish, off, out};
    }
  }
  return best;
}

}  // namespace

std::vector<std::string> laid_together_words(const Pattern& now, Alignment alignment,
                                             const Pattern& earlier) {
  std::vector<std::string> words;
  for (const Piece& piece : now.pieces) {
    const Piece* old = earlier_version(piece, earlier);
    if (old == nullptr) continue;
    const PieceChange change = change_between(piece, *old, laid_under(piece, *old, alignment));
    words.push_back(title_of(piece.name) + " " + together_words(change, alignment));
  }
  return words;
}

std::vector<ShownChange> shown_changes(const ChangePage& page) {
  std::vector<ShownChange> shown;
  std::vector<LaidOver> over;
  double most = 0.0;
  for (const Piece& piece : page.after.pieces) {
    const LaidOver& laid = over.emplace_back(laid_over(piece, page));
    if (laid.earlier != nullptr) {
      most = std::max(most, largest_move(piece, *laid.earlier, laid.lies));
    }
  }
  const MovedFrom from{std::max(kMovedAtAll.by, std::min(kSeenMove, kSeenShare * most)), kCrossing,
                       kStub};
  for (std::size_t i = 0; i < over.size(); ++i) {
    shown.push_back(shown_change(page.after.pieces[i], over[i], page, from));
  }
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
  draw_levels(drawing, shown.before, LineRole::LevelBefore, reduce, space);
  draw_levels(drawing, shown.now, LineRole::Level, reduce, space);
}

void name_levels(TextDrawing& drawing, const ShownChange& shown, const Reduction& reduce,
                 FreeSpace& space) {
  TextPlacer placer(drawing, space);
  for (const PieceLine& line : shown.now.lines) {
    placer.beside(reduce(line.path), plain_name(line.name), kLevelText);
  }
}

std::vector<DrawnArrow> draw_arrows(TextDrawing& drawing, const ShownChange& shown,
                                    const Reduction& reduce, const Box& room, FreeSpace& space) {
  std::vector<DrawnArrow> arrows;
  const LinesAsked lines = lines_on_page(shown, reduce);
  const Path outline = reduce(shown.outline);
  for (const ShownArrow& shows : shown.arrows) {
    const ArrowOnPage straight = arrow_on_page(reduce(shows.move.was), reduce(shows.move.is), room);
    const auto [from, to] = beside_lines(straight, lines, outline, room);
    for (const Path& stroke : arrow(from, to, kPageArrowHead)) {
      drawing.line(SheetLayer::Marks, LineRole::Arrow, shows.move.name, stroke);
      space.take(stroke);
    }
    arrows.push_back({from, to, shows.words});
  }
  return arrows;
}

void write_amounts(TextDrawing& drawing, const std::vector<DrawnArrow>& arrows, const Path& outline,
                   const std::vector<Path>& others, FreeSpace& space) {
  TextPlacer placer(drawing, space);
  for (const DrawnArrow& arrow : arrows) {
    FreeSpace anywhere = space;
    for (const Path& other : others) {
      anywhere.take_near(other, kOffOtherPiece);
      take_inside(anywhere, other);
    }
    FreeSpace outside = anywhere;
    take_inside(outside, outline);
    const auto lines = lines_of(arrow);
    const auto [wished, least] = kRoundAmount;
    const AmountPlace roomy = place_of(arrow, placer.size_of(lines, wished), outside, anywhere);
    const AmountPlace tight = place_of(arrow, placer.size_of(lines, least), outside, anywhere);
    const bool is_tight = roomy.off > tight.off + kWorthRoom;
    const AmountPlace& place = is_tight ? tight : roomy;
    if (std::isinf(place.off)) continue;
    const double margin = is_tight ? least : wished;
    placer.block(lines, place.wish, {margin, margin}, place.outside ? outside : anywhere);
  }
}

}  // namespace blockwright
