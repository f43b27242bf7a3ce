#include "blockwright/dart/drawn_neckline.hpp"

#include "blockwright/block/neckline.hpp"
#include "blockwright/geometry/solve.hpp"
#include "drawn_edges.hpp"
#include "moving.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <utility>

namespace blockwright {
namespace {

constexpr const char* kNecklineCode = "garment.neckline";
constexpr const char* kNeckline = "neckline";
constexpr Angle kHalfTurn = Angle::degrees(180.0);
constexpr Vec kUpright{0.0, -1.0};  // down the centre line

// --- the usual design of each shape --------------------------------------------------------------

struct UsualNeckline {
  double shoulder_share, depth_share, back_depth, closer;
};

// By eye, ours; `closer` is common practice, no source, for an edge as deep as that.
constexpr std::array<UsualNeckline, 6> kUsual = {{{0.15, 0.12, 8.0, 0.0},      // round
                                                  {0.25, 0.40, 20.0, 5.0},     // scoop
                                                  {0.55, 0.05, 25.0, 4.0},     // boat
                                                  {0.15, 0.70, 12.0, 8.0},     // V
                                                  {0.40, 0.50, 30.0, 8.0},     // square
                                                  {0.40, 0.60, 30.0, 10.0}}};  // sweetheart

const UsualNeckline& usual(NeckShape shape) { return kUsual.at(static_cast<std::size_t>(shape)); }

bool is_curved(NeckShape shape) { return shape == NeckShape::Round || shape == NeckShape::Scoop; }

// A round edge gapes the more the deeper it is. Common practice, no source: nothing to 3 cm deep, 5
// mm from 6 cm on.
double usual_closer(NeckShape shape, double depth) {
  constexpr double shallow = 30.0, deep = 60.0;
  if (!is_curved(shape)) return usual(shape).closer;
  return usual(NeckShape::Scoop).closer *
         std::clamp((depth - shallow) / (deep - shallow), 0.0, 1.0);
}

// --- where it runs -------------------------------------------------------------------------------

// A piece as it is drafted, and the edges beside its neckline.
struct Upper {
  Opened open;
  std::size_t neckline, shoulder, centre;

  [[nodiscard]] const std::string& piece() const { return open.piece.name; }
  [[nodiscard]] Path& last_of_shoulder() { return open.edges[shoulder].stretches.back(); }
  [[nodiscard]] const Path& last_of_shoulder() const {
    return open.edges[shoulder].stretches.back();
  }
  [[nodiscard]] Path& first_of_centre() { return open.edges[centre].stretches.front(); }
  [[nodiscard]] const Path& first_of_centre() const { return open.edges[centre].stretches.front(); }
};

Upper upper_of(const Piece& piece) {
  const Edge* between = find_part(piece, BlockEdge::Shoulder);
  if (between == nullptr || !between->part.empty()) {
    refuse(kNecklineCode, piece.name, "its shoulder is cut away by a top edge",
           "draw the top edge as the neckline is to be, or leave it out");
  }
  Opened open = opened(piece);
  const std::size_t neckline = *find_edge(open, part_of(piece, BlockEdge::Neckline).name);
  const std::size_t count = open.edges.size();
  return {std::move(open), neckline, (neckline + count - 1) % count, (neckline + 1) % count};
}

// Of a front, or of the back that it is sewn to.
struct NeckCut {
  double from_neck, depth;
};

// What a neckline runs between, laid so that the centre line falls upright from x = 0.
struct NeckSpan {
  Point shoulder, centre;
  Vec along;  // the shoulder, towards the neck
  Placement back_to_piece;

  [[nodiscard]] Vec square() const { return left_of(along); }
};

NeckSpan span_of(const Upper& upper) {
  const Path &shoulder = upper.last_of_shoulder(), &centre = upper.first_of_centre();
  const Point at = centre.start();
  const Angle turn = turn_between(start_tangent(centre), kUpright);
  const Placement laid = Placement::turn(turn, at).then(Placement::shift({-at.x, 0.0}));
  return {laid(shoulder.end()), laid(at), laid(end_tangent(shoulder)),
          Placement::shift({at.x, 0.0}).then(Placement::turn(-turn, at))};
}

// --- its line ------------------------------------------------------------------------------------

Point at_level(Point from, Vec along, double y) { return from + ((y - from.y) / along.y) * along; }

// Down the front, half way between upright and square to the shoulder: over the shoulder it then
// runs into the back, and on the body it reads as upright. Ours, by eye.
Vec down_the_front(const NeckSpan& front) { return unit(unit(front.square()) + kUpright); }

// Over each bust and down to the centre: ours, by eye.
Path sweetheart_arc(const NeckSpan& front, Point corner) {
  constexpr Angle rises = Angle::degrees(165.0), falls = Angle::degrees(235.0);
  return Path({fair_curve(corner, direction(rises), front.centre, direction(falls))});
}

// The arc begins above its end by this share of its width. Ours, by eye.
constexpr double kArcRise = 0.30;

Vec leaving_front(NeckShape shape, const NeckSpan& front) {
  if (shape == NeckShape::V) return unit(front.centre - front.shoulder);
  if (!is_curved(shape)) return down_the_front(front);
  const NeckSize size{front.shoulder.x, front.shoulder.y - front.centre.y};
  const double square = turn_between(kUpright, front.square()).radians();
  const double lean = std::min(-square, steepest_neckline(size).radians());
  return rotated(kUpright, Angle::radians(-lean));
}

// The back goes on where the front ends.
Vec leaving_back(const NeckSpan& front, Vec leaving, const NeckSpan& back) {
  return rotated(back.along, kHalfTurn - turn_between(front.along, leaving));
}

struct DrawnLines {
  Path front, back;
};

Path straight_front(NeckShape shape, const NeckSpan& front) {
  if (shape == NeckShape::V) return Path::through({front.shoulder, front.centre});
  const Vec down = down_the_front(front);
  Point corner = at_level(front.shoulder, down, front.centre.y);
  if (shape == NeckShape::Square) return Path::through({front.shoulder, corner, front.centre});
  corner = at_level(front.shoulder, down, front.centre.y + kArcRise * corner.x);
  Path line = Path::through({front.shoulder, corner});
  line.add(sweetheart_arc(front, corner));
  return line;
}

// Half way between square to the shoulder and the straight line, or flatter where the hollow is
// shallow: a boat's opening comes to a point over the shoulders. Ours, by eye.
Path boat_line(const NeckSpan& half) {
  constexpr double fullness = 0.6, over_straight = 2.6;
  constexpr Vec to_centre{-1.0, 0.0};
  const Vec straight = unit(half.centre - half.shoulder);
  const Vec half_way = unit(unit(half.square()) + straight);
  const double steepest = turn_between(to_centre, half_way).radians();
  const double flat = over_straight * turn_between(to_centre, straight).radians();
  const Vec leaving = rotated(to_centre, Angle::radians(std::min(flat, steepest)));
  return Path({corner_curve(half.shoulder, leaving, half.centre, to_centre, fullness)});
}

DrawnLines drawn_lines(NeckShape shape, const NeckSpan& front, const NeckSpan& back) {
  if (shape == NeckShape::Boat) return {boat_line(front), boat_line(back)};
  const Vec leaving = leaving_front(shape, front);
  const Necklines curves =
      necklines({front.shoulder, leaving, front.centre},
                {back.shoulder, leaving_back(front, leaving, back), back.centre});
  return {is_curved(shape) ? Path({curves.front}) : straight_front(shape, front),
          Path({curves.back})};
}

// --- cutting -------------------------------------------------------------------------------------

void put_line(Upper& upper, Path line) {
  OpenEdge& neckline = upper.open.edges[upper.neckline];
  neckline.darts.clear();
  neckline.stretches = {std::move(line)};
}

Upper cut_out(Upper upper, const NeckCut& cut) {
  Path &shoulder = upper.last_of_shoulder(), &centre = upper.first_of_centre();
  const double shoulder_left = length(shoulder) - cut.from_neck;
  shoulder = part_before(shoulder, place_at_length(shoulder, shoulder_left));
  centre = part_after(centre, place_at_length(centre, cut.depth));
  const std::size_t last = upper.open.edges[upper.shoulder].stretches.size() - 1;
  drop_notches(upper.open, [&](const Anchor& at) {
    return at.edge == upper.neckline ||
           (at.edge == upper.shoulder && at.stretch == last && at.along > shoulder_left) ||
           (at.edge == upper.centre && at.stretch == 0 && at.along < cut.depth);
  });
  for (Anchor& at : upper.open.notches) {
    if (at.edge == upper.centre && at.stretch == 0) at.along -= cut.depth;
  }
  put_line(upper, Path::through({shoulder.end(), centre.start()}));
  return upper;
}

double hollow_of(const Upper& cut) {
  const NeckSpan span = span_of(cut);
  return span.shoulder.y - span.centre.y;
}

// Deeper where the shoulder falls so much that a wide neckline would hardly be hollow.
double usual_back_depth(NeckShape shape, const Upper& back, double from_neck) {
  constexpr double usual_hollow = 15.0;
  const double hollow = hollow_of(cut_out(back, {from_neck, 0.0}));
  return std::max(usual(shape).back_depth, usual_hollow - hollow);
}

// Next to the centre, so that what lies under the edge turns in one. Ours.
constexpr double kWedgeShare = 0.98;

// The neck edge closed over itself by an angle at the dart's apex, and the dart opened by it.
Upper turned_closer(Upper upper, const Dart& into, Angle by) {
  const std::string wedge = free_name(upper.open, "neck_edge");
  const Path& edge = upper.open.edges[upper.neckline].stretches.front();
  slit(upper.open, {upper.neckline, 0, kWedgeShare * length(edge)}, into.apex, wedge);
  hand_over(upper.open, wedge, into.name, by);
  put_line(upper, Path::through({upper.last_of_shoulder().end(), upper.first_of_centre().start()}));
  return upper;
}

// --- one front and the back that it is sewn to ---------------------------------------------------

struct Halves {
  Upper front, back;
};

DrawnLines lines_of(NeckShape shape, const Halves& halves) {
  return drawn_lines(shape, span_of(halves.front), span_of(halves.back));
}

// The front with its edge `closer` mm shorter than as cut flat.
Upper closed_front(NeckShape shape, const Halves& halves, const Dart& into, double closer) {
  constexpr Bounds turns{0.0, 0.35};  // rad
  constexpr double accuracy = 1e-9;   // rad
  const double flat = length(lines_of(shape, halves).front);
  const auto turned = [&](double by) {
    return turned_closer(halves.front, into, Angle::radians(by));
  };
  const auto too_long = [&](double by) {
    return length(lines_of(shape, {turned(by), halves.back}).front) - (flat - closer);
  };
  return turned(solve_between(too_long, turns, accuracy));
}

// --- what is asked for ---------------------------------------------------------------------------

[[noreturn]] void refuse_twice(const char* what, const char* keys) {
  refuse(kNecklineCode, kNeckline, std::string("its ") + what + " is given twice",
         std::string("give one of ") + keys);
}

int given(std::initializer_list<bool> keys) {
  return static_cast<int>(std::ranges::count(keys, true));
}

void require_one_of_each(const NecklineDesign& n) {
  if (given({n.from_neck.has_value(), n.shoulder_share.has_value()}) > 1) {
    refuse_twice("width", "\"from_neck\" and \"shoulder_share\"");
  }
  if (given({n.front_depth.has_value(), n.depth_share.has_value(), n.over_bust_point.has_value()}) >
      1) {
    refuse_twice("depth", "\"front_depth\", \"depth_share\" and \"over_bust_point\"");
  }
}

double width_of(const NecklineDesign& n, const Upper& front) {
  if (n.from_neck) return *n.from_neck;
  return n.shoulder_share.value_or(usual(n.shape).shoulder_share) *
         closed_length(front.open.edges[front.shoulder]);
}

double front_depth_of(const NecklineDesign& n, const Upper& front, Point bust_point) {
  if (n.front_depth) return *n.front_depth;
  const double to_bust = front.first_of_centre().start().y - bust_point.y;
  if (n.over_bust_point) return to_bust - *n.over_bust_point;
  return n.depth_share.value_or(usual(n.shape).depth_share) * to_bust;
}

void require_width(const NecklineDesign& n, const Upper& upper, double from_neck) {
  const OpenEdge& shoulder = upper.open.edges[upper.shoulder];
  const char* key = n.from_neck ? "from_neck" : "shoulder_share";
  const char* what = "its width, from the side neck point along the shoulder,";
  require_bounded(kNecklineCode, upper.piece(),
                  {key, what, from_neck, closed_length(shoulder) - kLeastShoulderLeft,
                   "a shoulder keeps at least " + Length::mm(kLeastShoulderLeft)});
  if (shoulder.darts.empty()) return;
  require_bounded(kNecklineCode, upper.piece(),
                  {key, what, from_neck, length(upper.last_of_shoulder()) - kFromCorner,
                   "the dart " + shoulder.darts.back().name +
                       " opens there: move it first, or begin nearer to the neck"});
}

void require_depth(const Upper& upper, const char* key, double depth) {
  const OpenEdge& centre = upper.open.edges[upper.centre];
  require_bounded(kNecklineCode, upper.piece(),
                  {key, "its depth at the centre", depth, closed_length(centre) - kLeastCentreLeft,
                   "the centre keeps at least " + Length::mm(kLeastCentreLeft)});
  if (centre.darts.empty()) return;
  require_bounded(
      kNecklineCode, upper.piece(),
      {key, "its depth at the centre", depth, length(upper.first_of_centre()) - kFromCorner,
       "the dart " + centre.darts.front().name + " opens there: move it first"});
}

void require_free_neckline(const Upper& upper) {
  const OpenEdge& neckline = upper.open.edges[upper.neckline];
  const std::string how = "draw the neckline before the step that puts it there";
  if (!neckline.darts.empty()) {
    refuse(kNecklineCode, upper.piece(),
           "the dart " + neckline.darts.front().name + " opens on its neckline", how);
  }
  if (is_gathered(upper.open, {upper.neckline, upper.shoulder, upper.centre}))
    refuse(kNecklineCode, upper.piece(), "its neckline, shoulder or centre is gathered", how);
}

void require_hollow(const Upper& cut) {
  const double hollow = hollow_of(cut);
  if (hollow >= kLeastNeckHollow) return;
  refuse(kNecklineCode, cut.piece(),
         "at the shoulder the neckline would lie " + Length::mm(hollow) +
             " over its centre; a neck needs " + Length::mm(kLeastNeckHollow),
         "draw it at least " + Length::mm(kLeastNeckHollow - hollow) +
             " deeper there, or begin it nearer to the neck");
}

// --- the whole -----------------------------------------------------------------------------------

// Front and back cut out, with the line of each; and the dart that took up what the front lost.
struct DrawnHalves {
  Halves halves;
  DrawnLines lines;
  double closer = 0.0;
  std::optional<Dart> into;
};

DrawnHalves drawn_halves(const NecklineDesign& design, const Piece& front, const Piece& back) {
  const Point bust_point = apex_point(front);
  const Upper f = upper_of(front), b = upper_of(back);
  const double from_neck = width_of(design, f), depth = front_depth_of(design, f, bust_point);
  for (const Upper* upper : {&f, &b}) {
    require_free_neckline(*upper);
    require_width(design, *upper, from_neck);
  }
  const double back_depth =
      design.back_depth ? *design.back_depth : usual_back_depth(design.shape, b, from_neck);
  require_depth(f,
                design.depth_share       ? "depth_share"
                : design.over_bust_point ? "over_bust_point"
                                         : "front_depth",
                depth);
  require_depth(b, "back_depth", back_depth);
  DrawnHalves drawn{.halves = {cut_out(f, {from_neck, depth}), cut_out(b, {from_neck, back_depth})},
                    .lines = {},
                    .into = {}};
  require_hollow(drawn.halves.front);
  require_hollow(drawn.halves.back);
  drawn.closer = design.closer.value_or(usual_closer(design.shape, depth));
  require_bounded(kNecklineCode, front.name,
                  {"closer", "what its edge is drawn shorter by", drawn.closer, kMostCloser,
                   "more draws in the chest"});
  if (const Dart* into = widest_dart_about(drawn.halves.front.open, bust_point)) drawn.into = *into;
  if (drawn.closer > 0.0 && drawn.into) {
    drawn.halves.front = closed_front(design.shape, drawn.halves, *drawn.into, drawn.closer);
  }
  drawn.lines = lines_of(design.shape, drawn.halves);
  return drawn;
}

template <class Depth>
double mean_depth(const std::vector<std::size_t>& pieces, Depth&& depth) {
  double sum = 0.0;
  for (const std::size_t i : pieces) sum += depth(i);
  return sum / static_cast<double>(pieces.size());
}

// The same depth on both halves of a body whose sides differ: they meet at the centre.
NecklineDesign meeting_at_centre(const Pattern& pattern, NecklineDesign design) {
  const auto upper = [&](std::size_t i) { return upper_of(as_drafted(pattern.pieces[i])); };
  const std::vector<std::size_t> fronts = pieces_of(pattern, kBodiceFront);
  const std::vector<std::size_t> backs = pieces_of(pattern, kBodiceBack);
  if (backs.size() > 1 && !design.back_depth) {
    design.back_depth = mean_depth(backs, [&](std::size_t i) {
      const std::size_t front = mate_of(pattern, pattern.pieces[i], kBodiceFront);
      require_width(design, upper(i), width_of(design, upper(front)));
      return usual_back_depth(design.shape, upper(i), width_of(design, upper(front)));
    });
  }
  if (fronts.size() > 1 && !design.front_depth) {
    design.front_depth = mean_depth(fronts, [&](std::size_t i) {
      const Point bust_point = apex_point(as_drafted(pattern.pieces[i]));
      return front_depth_of(design, upper(i), bust_point);
    });
    design.depth_share.reset();
    design.over_bust_point.reset();
  }
  return design;
}

// The piece with its neckline as drawn, in the frame in which it was before.
void put_in(MovedDarts& all, std::size_t i, Upper upper, const Path& line) {
  put_line(upper, placed(line, span_of(upper).back_to_piece));
  trim_lines(flat_outline(put_together(upper.open)), upper.open.piece.balance_lines);
  const bool image = is_mirrored(all.pattern.pieces[i]);
  const std::string name = all.pattern.pieces[i].name;
  all = finished(all.pattern, {i, kNeckline, name}, upper.open, std::move(all.remarks));
  if (is_a(all.pattern.pieces[i], kBodiceFront)) {
    const Piece& piece = all.pattern.pieces[i];
    judge_off_bust(kNecklineCode, piece, part_of(piece, BlockEdge::Neckline), all.remarks);
  }
  if (image) all.pattern.pieces[i] = mirrored(all.pattern.pieces[i]);
}

}  // namespace

MovedDarts draw_neckline(const Pattern& pattern, const NecklineDesign& asked) {
  require_one_of_each(asked);
  require_whole_bodice(pattern, kNecklineCode, kNeckline);
  const NecklineDesign design = meeting_at_centre(pattern, asked);
  MovedDarts all{pattern, {}};
  for (const std::size_t i : pieces_of(pattern, kBodiceFront)) {
    const Piece& front = pattern.pieces[i];
    const Piece& back = pattern.pieces[mate_of(pattern, front, kBodiceBack)];
    DrawnHalves drawn = drawn_halves(design, as_drafted(front), as_drafted(back));
    if (drawn.closer > 0.0) {
      if (drawn.into) set_peak(drawn.halves.front.open, drawn.into->name);
      all.remarks.push_back(
          told_closer(kNecklineCode, front.name,
                      {"neck edge", drawn.closer, drawn.into ? &*drawn.into : nullptr}));
    }
    put_in(all, i, drawn.halves.front, drawn.lines.front);
  }
  for (const std::size_t i : pieces_of(pattern, kBodiceBack)) {
    const Piece& back = pattern.pieces[i];
    const Piece& front = pattern.pieces[mate_of(pattern, back, kBodiceFront)];
    const DrawnHalves drawn = drawn_halves(design, as_drafted(front), as_drafted(back));
    put_in(all, i, drawn.halves.back, drawn.lines.back);
  }
  drop_lone_notches(all.pattern);
  return all;
}

}  // namespace blockwright
