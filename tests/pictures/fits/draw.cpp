#include "blockwright/base/number_text.hpp"
#include "blockwright/measure/correction_table.hpp"
#include "blockwright/pattern/pattern.hpp"
#include "darts/sketch.hpp"
#include "fits/crop.hpp"
#include "fits/pictures.hpp"

#include <algorithm>
#include <cmath>

namespace blockwright_pictures {

using namespace blockwright;

namespace {

// The room for the pieces, in the diagram's units.
constexpr double kMargin = 24.0;
constexpr double kRoomBottom = 46.0, kRoomTop = 292.0;
constexpr double kLabelRoom = 110.0;  // beside the pieces of each view
constexpr double kLargest = 2.1;      // of the scale
constexpr double kHeadingLine = 318.0, kCaptionLine = 14.0;
constexpr double kArrowBeside = 7.0, kArrowHead = 5.5, kShortestArrow = 2.0;
constexpr double kAside = 0.3;  // sine from which a label counts as beside its arrow
constexpr double kRim = 12.0;   // mm of the piece about what is shown

// A half piece before and after, as seen on the body from outside: cut with the cloth's right side
// up, pieces lie so. What stood before was drafted for one side, and is put where the half is.
struct Half {
  Half(const Piece& was, const Piece& is)
      : before(was), after(is), put_before(is_mirrored(is) ? Placement::mirror() : Placement()) {}

  Piece before, after;
  Placement put_before;
};

struct ViewHalves {
  std::vector<Half> halves;
  std::size_t marked = 0;  // the half that the marks are on
  Box box;
};

Box part_box(const Piece& piece, Part part) {
  const bool front = piece.name.substr(0, 5) == "front";
  const Point underarm = piece.landmark("underarm_point");
  const Point side_neck = piece.landmark("side_neck_point");
  const Point across = piece.landmark(front ? "across_front_point" : "across_back_point");
  const Point shoulder = piece.landmark("shoulder_point");
  Box box = box_of(flat_outline(piece));
  switch (part) {
    case Part::Whole:
      break;
    case Part::Upper:
      box.bottom = underarm.y - 28.0;
      break;
    case Part::Lower:
      box.top = across.y;
      break;
    case Part::Neck:
      box.bottom = piece.landmark(front ? "front_neck_point" : "nape").y - (front ? 25.0 : 70.0);
      box.right = side_neck.x + 55.0;
      break;
    case Part::Armhole:
      box.left = std::fmin(across.x, shoulder.x) - 60.0;
      box.bottom = underarm.y - 32.0;
      break;
    case Part::Side:
      box.left = 0.55 * underarm.x;
      box.top = across.y;
      break;
  }
  return {box.left - kRim, box.bottom - kRim, box.right + kRim, box.top + kRim};
}

Box placed_box(const Box& box, const Placement& by) {
  Box result;
  result.include(by(Point{box.left, box.bottom}));
  result.include(by(Point{box.right, box.top}));
  return result;
}

bool has_piece(const Pattern& pattern, const std::string& name) {
  return std::any_of(pattern.pieces.begin(), pattern.pieces.end(),
                     [&](const Piece& piece) { return piece.name == name; });
}

// A front is seen from in front, with her right half at the left; a back from behind.
ViewHalves halves_of(const View& view, const Pattern& block, const Pattern& fitted, BodySide side,
                     bool both) {
  ViewHalves result;
  const std::string name = view.piece;
  const Piece& before = block.piece(name);
  if (has_piece(fitted, name)) {
    result.halves.emplace_back(before, fitted.piece(name));
  } else {
    if (both || side == BodySide::Right) {
      result.halves.emplace_back(before, fitted.piece(name + "_right"));
    }
    if (both || side == BodySide::Left) {
      result.halves.emplace_back(before, fitted.piece(name + "_left"));
    }
    result.marked = both && side == BodySide::Left ? 1 : 0;
  }
  for (const Half& half : result.halves) {
    result.box.include(placed_box(part_box(half.before, view.part), half.put_before));
    result.box.include(part_box(half.after, view.part));
  }
  return result;
}

void draw_inside(const Sketch& s, const Path& path, const Box& box, Look look) {
  for (const Path& part : inside(path, box)) s.line(part, look);
}

bool has_dart(const Piece& piece, const std::string& name) {
  return std::any_of(piece.darts.begin(), piece.darts.end(),
                     [&](const Dart& dart) { return dart.name == name; });
}

bool has_line(const Piece& piece, const std::string& name) {
  return std::any_of(piece.balance_lines.begin(), piece.balance_lines.end(),
                     [&](const BalanceLine& line) { return line.name == name; });
}

Path legs_of(const Dart& dart) { return Path::through({dart.legs[0], dart.point, dart.legs[1]}); }

void draw_before(const Sketch& s, const Half& half, const Box& box) {
  const auto draw = [&](const Path& path) {
    draw_inside(s, placed(path, half.put_before), box, Look::Compass);
  };
  // The half may have been drafted on the other side: strokes are compared where they are put.
  const Path after = flat_outline(half.after);
  for (const Edge& edge : half.before.edges) {
    for (const Path& part : differing(placed(edge.path, half.put_before), after)) {
      draw_inside(s, part, box, Look::Compass);
    }
  }
  for (const Dart& dart : half.before.darts) {
    if (!has_dart(half.after, dart.name)) {
      draw(legs_of(dart));
      continue;
    }
    const Path now = legs_of(half.after.dart(dart.name));
    for (const Path& part : differing(placed(legs_of(dart), half.put_before), now)) {
      draw_inside(s, part, box, Look::Compass);
    }
  }
}

void draw_after(const Sketch& s, const Half& half, const Box& box) {
  const auto draw = [&](const Path& path, Look look) { draw_inside(s, path, box, look); };
  bool bowed = false;
  for (const BalanceLine& line : half.after.balance_lines) {
    const bool added = !has_line(half.before, line.name);
    bowed = bowed || added;
    if (added || line.name == "bust_line") draw(line.path, added ? Look::New : Look::Guide);
  }
  for (const Edge& edge : half.after.edges) draw(edge.path, Look::New);
  for (const Dart& dart : half.after.darts) {
    draw(legs_of(dart), bowed && dart.name == "waist" ? Look::Compass : Look::New);
  }
}

// The words with an amount put in the place of a mark.
std::string filled(std::string words, const std::string& mark, double mm) {
  const std::size_t at = words.find(mark);
  if (at == std::string::npos) return words;
  return words.replace(at, mark.size(), fixed(0.1 * std::abs(mm), 1) + " cm");
}

// An arrow from the old place to the new one, beside them on the label's side.
void draw_moved(Diagram& d, const Sketch& s, Point before, Point after, const Mark& mark) {
  const Point from = s(before), to = s(after);
  const Vec way = to - from;
  Vec beside;  // none where the label stands ahead of the arrow or behind it
  Point anchor = midpoint(from, to);
  if (norm(way) > kShortestArrow) {
    const Vec across = left_of(unit(way));
    const double share = dot(across, unit(mark.off));
    if (std::abs(share) > kAside) {
      beside = (share > 0.0 ? kArrowBeside : -kArrowBeside) * across;
    } else {
      anchor = dot(way, mark.off) > 0.0 ? to : from;
    }
    draw_arrow(d, from + beside, to + beside);
  }
  d.dot(to);
  d.label(anchor + beside, mark.off, filled(mark.words, "{}", distance(before, after)));
}

void draw_named(Diagram& d, Point at, const Mark& mark, double mm) {
  d.label(at, mark.off, filled(mark.words, "{}", mm));
}

void draw_mark(Diagram& d, const Sketch& s, const Half& half, const Mark& mark) {
  const Piece &before = half.before, &after = half.after;
  const auto was = [&](Point p) { return half.put_before(p); };
  switch (mark.on) {
    case Mark::On::Landmark:
      draw_moved(d, s, was(before.landmark(mark.what)), after.landmark(mark.what), mark);
      return;
    case Mark::On::DartPoint:
      draw_moved(d, s, was(before.dart(mark.what).point), after.dart(mark.what).point, mark);
      return;
    case Mark::On::Place:
      draw_named(d, s(after.landmark(mark.what)), mark, 0.0);
      return;
    case Mark::On::Line: {
      const Edge& edge = after.edge(mark.what);
      const Point middle = point_at_length(edge.path, 0.5 * length(edge.path));
      draw_named(d, s(middle), mark,
                 sewn_length(after, edge) - sewn_length(before, before.edge(mark.what)));
      return;
    }
    case Mark::On::Mouth: {
      const Dart& dart = after.dart(mark.what);
      const double had = has_dart(before, mark.what) ? before.dart(mark.what).intake() : 0.0;
      draw_named(d, s(midpoint(dart.legs[0], dart.legs[1])), mark, dart.intake() - had);
      return;
    }
  }
}

void draw_view(Diagram& d, const Sketch& s, const View& view, const ViewHalves& shown,
               double asked) {
  for (const Half& half : shown.halves) {
    draw_before(s, half, shown.box);
    draw_after(s, half, shown.box);
  }
  for (Mark mark : view.marks) {
    mark.words = filled(mark.words, "{asked}", asked);
    draw_mark(d, s, shown.halves[shown.marked], mark);
  }
}

std::string caption_of(const View& view, const ViewHalves& shown) {
  const std::string name = view.piece;
  const Half& half = shown.halves[shown.marked];
  if (half.after.name == name) return name;
  const std::string from = name == "front" ? "in front" : "behind";
  const bool left = half.after.name == name + "_left";
  const std::string what =
      shown.halves.size() > 1 ? name + ", both halves" : (left ? "her left " : "her right ") + name;
  return what + ", seen from " + from;
}

double scale_of(const std::vector<ViewHalves>& views) {
  const double column = (kFitWidth - 2.0 * kMargin) / static_cast<double>(views.size());
  double scale = kLargest;
  for (const ViewHalves& view : views) {
    scale = std::min({scale, (column - kLabelRoom) / view.box.width(),
                      (kRoomTop - kRoomBottom) / view.box.height()});
  }
  return scale;
}

}  // namespace

void draw_arrow(Diagram& d, Point from, Point to) {
  const Vec back = -kArrowHead * unit(to - from);
  const Vec aside = 0.35 * left_of(back);
  d.line(from, to, Look::New);
  d.line(Path::through({to + back + aside, to, to + back - aside}), Look::New);
}

void draw_fit(Diagram& d, const FitPicture& picture, const Pattern& block) {
  const RowAmount row{
      CorrectionRow{picture.row}, 1, picture.by, AmountAs::Length, picture.side, picture.place};
  const Pattern fitted = apply_rows(block, {row}).pattern;
  const bool both = picture.views.size() == 1;
  std::vector<ViewHalves> views;
  for (const View& view : picture.views) {
    views.push_back(halves_of(view, block, fitted, picture.side, both));
  }
  const double scale = scale_of(views);
  const double column = (kFitWidth - 2.0 * kMargin) / static_cast<double>(views.size());
  for (std::size_t i = 0; i < views.size(); ++i) {
    const Box& box = views[i].box;
    const double middle = kMargin + (static_cast<double>(i) + 0.5) * column;
    const Sketch s(d, scale, {middle, 0.5 * (kRoomBottom + kRoomTop)},
                   {0.5 * (box.left + box.right), 0.5 * (box.bottom + box.top)});
    draw_view(d, s, picture.views[i], views[i], picture.by);
    d.label({middle, kCaptionLine}, {}, caption_of(picture.views[i], views[i]));
  }
  d.heading({kMargin, kHeadingLine}, std::to_string(picture.row) + "   " + picture.words + " " +
                                         fixed(0.1 * picture.by, 1) + " cm " + picture.read);
  d.label({kFitWidth - kMargin, kHeadingLine + 4.0}, {-0.01, 0.0}, "dashed: before; solid: after");
}

}  // namespace blockwright_pictures
