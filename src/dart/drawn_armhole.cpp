#include "blockwright/dart/drawn_armhole.hpp"

#include "blockwright/block/armhole.hpp"
#include "blockwright/block/reshape.hpp"
#include "blockwright/dart/drawn_neckline.hpp"
#include "blockwright/dart/folded.hpp"
#include "blockwright/geometry/solve.hpp"
#include "drawn_edges.hpp"
#include "moving.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <span>
#include <utility>

namespace blockwright {
namespace {

constexpr const char* kArmholeCode = "garment.armhole";
constexpr const char* kArmholeStep = "armhole";

// --- the armhole as it is ------------------------------------------------------------------------

// A piece as it is drafted, and the edges beside its armhole.
struct Outer {
  Opened open;
  std::size_t armhole, side, shoulder;

  [[nodiscard]] const std::string& piece() const { return open.piece.name; }
  [[nodiscard]] const OpenEdge& line() const { return open.edges[armhole]; }
  [[nodiscard]] const Path& last_of_side() const { return open.edges[side].stretches.back(); }
  [[nodiscard]] const Path& first_of_shoulder() const {
    return open.edges[shoulder].stretches.front();
  }
};

Outer outer_of(const Piece& piece) {
  Opened open = opened(piece);
  const std::size_t armhole = *find_edge(open, part_of(piece, BlockEdge::Armhole).name);
  const std::size_t count = open.edges.size();
  return {std::move(open), armhole, (armhole + count - 1) % count, (armhole + 1) % count};
}

// Two parts of one cubic, or what folding a dart between them has left of one.
CubicCurve joined(const CubicCurve& first, const CubicCurve& second) {
  const double before = distance(first.p2, first.p3), after = distance(second.p0, second.p1);
  const double share = before / (before + after);
  return {first.p0, first.p0 + 1.0 / share * (first.p1 - first.p0),
          second.p3 + 1.0 / (1.0 - share) * (second.p2 - second.p3), second.p3};
}

CubicCurve joined(std::span<const Curve> parts) {
  CubicCurve whole = std::get<CubicCurve>(parts.front());
  for (const Curve& part : parts.subspan(1)) whole = joined(whole, std::get<CubicCurve>(part));
  return whole;
}

// How many of the armhole's curves lie below the across point.
std::size_t curves_below(const std::vector<Curve>& curves, Point across) {
  std::size_t below = 1;
  for (std::size_t i = 2; i < curves.size(); ++i) {
    const bool nearer =
        distance(start_of(curves[i]), across) < distance(start_of(curves[below]), across);
    if (nearer) below = i;
  }
  return below;
}

// From the piece to the one with the armhole's darts folded, where its across point lies.
const Placement& folding_at_across(const Outer& outer, const Folded& folded) {
  const Point across = across_point(outer.open.piece);
  const auto& stretches = outer.line().stretches;
  const auto on = std::ranges::min_element(stretches, {}, [&](const Path& stretch) {
    return stretch.empty() ? distance(stretch.start(), across) : nearest(stretch, across).distance;
  });
  return folded.of_stretch(static_cast<std::size_t>(on - stretches.begin()));
}

// Straight up at the across point, square to the across line that ends there; where that was cut
// off, along the armhole.
Vec up_at_across(const Piece& piece, Vec heading) {
  const BalanceLine* line = find_line(piece, LineUse::Across);
  return line == nullptr ? heading : left_of(end_tangent(line->path));
}

// The armhole with its darts folded as they are stitched: below and above the across point, what it
// runs through, and the directions in which side and shoulder meet it.
struct FoldedArmhole {
  Folded folded;
  ArmholeStrokes strokes;
  ArmholeLine line;
  Vec side, shoulder;

  [[nodiscard]] Path path() const { return Path({strokes.lower, strokes.upper}); }
};

FoldedArmhole folded_armhole(const Outer& outer) {
  Folded folded(put_together(outer.open), outer.line().name);
  const std::vector<Curve> curves = folded.edge().curves();
  const bool as_drafted = curves.size() > 1 && std::ranges::all_of(curves, [](const Curve& curve) {
                            return std::holds_alternative<CubicCurve>(curve);
                          });
  if (!as_drafted) {
    refuse(kArmholeCode, outer.piece(), "its armhole is no longer drawn as a block's is",
           "draw the armhole before the steps that cut into it");
  }
  const Placement& at_across = folding_at_across(outer, folded);
  const Placement& at_shoulder = folded.of_stretch(outer.line().darts.size());
  const std::span<const Curve> all(curves);
  const std::size_t below = curves_below(curves, at_across(across_point(outer.open.piece)));
  const CubicCurve lower = joined(all.first(below)), upper = joined(all.subspan(below));
  const Vec up = up_at_across(outer.open.piece, unit(upper.p1 - upper.p0));
  const ArmholeLine line{lower.p0, unit(lower.p1 - lower.p0), lower.p3, at_across(up),
                         upper.p3, unit(upper.p3 - upper.p2)};
  const Vec shoulder = at_shoulder(start_tangent(outer.first_of_shoulder()));
  return {std::move(folded), {lower, upper}, line, end_tangent(outer.last_of_side()), shoulder};
}

// --- the armhole as it is to be ------------------------------------------------------------------

// What is cut on one piece.
struct ArmholeCut {
  double shoulder_in, across_in, raise;
};

// What the armhole is to run through. `outer` may have been turned since; its across point goes
// with its shoulder.
ArmholeLine cut_line(const FoldedArmhole& was, const Outer& outer, const ArmholeCut& cut) {
  const Placement& at_shoulder = was.folded.of_stretch(outer.line().darts.size());
  const Path &shoulder = outer.first_of_shoulder(), &side = outer.last_of_side();
  const Angle side_turned = turn_between(was.side, end_tangent(side));
  const Angle turned = turn_between(was.shoulder, at_shoulder(start_tangent(shoulder)));
  const Vec shifted = at_shoulder(shoulder.start()) - was.line.shoulder_point;
  const Point across = rotated_about(was.line.across, was.line.shoulder_point, turned) + shifted;
  const Vec up = rotated(was.line.up, turned);
  return {side.end() + cut.raise * end_tangent(side),
          rotated(was.line.along_underarm, side_turned),
          across + cut.across_in * left_of(up),
          up,
          at_shoulder(point_at_length(shoulder, cut.shoulder_in)),
          rotated(was.line.into_shoulder, turned)};
}

FoldedArmhole drawn(const FoldedArmhole& was, const ArmholeLine& is) {
  FoldedArmhole now = was;
  now.strokes = reshaped_armhole(was.strokes, was.line, is);
  now.strokes.lower = rounder(now.strokes.lower, kLeastArmholeRadius);
  now.line = is;
  return now;
}

// How far the across point comes in where nothing is said.
double usual_across_in(const Outer& outer, double shoulder_in) {
  const FoldedArmhole was = folded_armhole(outer);
  return across_in(was.line, cut_line(was, outer, {shoulder_in, 0.0, 0.0}).shoulder_point);
}

// --- putting it on the piece ---------------------------------------------------------------------

void cut_shoulder_and_side(Opened& open, const Outer& outer, const ArmholeCut& cut) {
  Path& shoulder = open.edges[outer.shoulder].stretches.front();
  Path& side = open.edges[outer.side].stretches.back();
  shoulder = part_after(shoulder, place_at_length(shoulder, cut.shoulder_in));
  if (cut.raise > 0.0) append_line(side, side.end() + cut.raise * end_tangent(side));
  side = without_straight_joints(std::move(side));
  drop_notches(open, [&](const Anchor& at) {
    return at.edge == outer.shoulder && at.stretch == 0 && at.along < cut.shoulder_in;
  });
  for (Anchor& at : open.notches) {
    if (at.edge == outer.shoulder && at.stretch == 0) at.along -= cut.shoulder_in;
  }
}

// A place on an edge by its length with the darts closed.
Anchor place_on(const OpenEdge& edge, std::size_t index, double along) {
  Anchor at{index, 0, along};
  while (at.stretch + 1 < edge.stretches.size() && at.along > length(edge.stretches[at.stretch])) {
    at.along -= length(edge.stretches[at.stretch]);
    ++at.stretch;
  }
  return at;
}

// Where the notches of the armhole lie on the piece, or with its darts folded.
std::vector<Point> notch_points(const Outer& outer, const Folded* folded) {
  std::vector<Point> points;
  for (const Anchor& at : outer.open.notches) {
    if (at.edge != outer.armhole) continue;
    const Point here = point_at(outer.open, at);
    points.push_back(folded == nullptr ? here : folded->of_stretch(at.stretch)(here));
  }
  return points;
}

void set_notches(Opened& open, const Outer& outer, const Path& line,
                 const std::vector<Point>& points) {
  std::size_t next = 0;
  for (Anchor& at : open.notches) {
    if (at.edge != outer.armhole) continue;
    at = place_on(outer.line(), outer.armhole, nearest(line, points[next++]).along);
  }
}

void set_landmarks_of(Opened& open, const Outer& outer, Point across) {
  const auto set = [&](PointOn on, std::size_t edge, Point at) {
    for (const KindLandmark& row : open.piece.kind->landmarks) {
      if (row.on != on || row.edge != edge) continue;
      if (Landmark* landmark = find_named(open.piece.landmarks, row.name)) landmark->at = at;
    }
  };
  set(PointOn::Corner, static_cast<std::size_t>(Corner::Underarm),
      open.edges[outer.side].stretches.back().end());
  set(PointOn::Corner, static_cast<std::size_t>(Corner::ShoulderPoint),
      open.edges[outer.shoulder].stretches.front().start());
  set(PointOn::Joint, index_of(BlockEdge::Armhole), across);
}

// The piece with that armhole, its darts open again.
Opened with_armhole(Outer outer, const FoldedArmhole& now, const ArmholeCut& cut,
                    const std::vector<Point>& notches) {
  const Path line = now.path();
  std::vector<Path> parts = now.folded.laid_back(line);
  require(parts.size() == outer.line().stretches.size(), "the armhole reaches the shoulder");
  end_darts_on(std::move(parts), outer.open.edges[outer.armhole]);
  Opened open = outer.open;
  cut_shoulder_and_side(open, outer, cut);
  set_notches(open, outer, line, notches);
  const Anchor across = place_on(outer.line(), outer.armhole, length(Path({now.strokes.lower})));
  set_landmarks_of(open, outer, point_at(open, across));
  for (const Dart& dart : outer.line().darts) set_peak(open, dart.name);
  trim_lines(flat_outline(put_together(open)), open.piece.balance_lines);
  return open;
}

// --- closer --------------------------------------------------------------------------------------

// Under the across point, so that this goes with the shoulder. Ours.
constexpr double kArmholeWedge = 0.5;

// The armhole edge closed over itself by an angle at the dart's apex, and the dart opened by it.
Outer turned_closer(Outer outer, const Dart& into, Angle by) {
  const std::string wedge = free_name(outer.open, "armhole_edge");
  OpenEdge& edge = outer.open.edges[outer.armhole];
  const double lower = length(Path({edge.stretches.front().curves().front()}));
  slit(outer.open, {outer.armhole, 0, kArmholeWedge * lower}, into.apex, wedge);
  hand_over(outer.open, wedge, into.name, by);
  return outer;
}

// The same with its armhole a straight line, to be drawn.
Outer without_armhole(Outer outer) {
  OpenEdge& edge = outer.open.edges[outer.armhole];
  edge.darts.clear();
  edge.stretches = {Path::through({outer.last_of_side().end(), outer.first_of_shoulder().start()})};
  for (Anchor& at : outer.open.notches) {
    if (at.edge == outer.armhole) at.stretch = 0;
  }
  return outer;
}

// How far the dart must open so that the armhole is `closer` mm shorter than as cut flat.
Angle closing_angle(const FoldedArmhole& was, const Outer& outer, const Dart& into,
                    const ArmholeCut& cut, double closer) {
  constexpr double most = 0.35, accuracy = 1e-9;  // rad
  constexpr double off = 0.05;                    // mm
  const double flat = length(drawn(was, cut_line(was, outer, cut)).path());
  const auto too_long = [&](double by) {
    const Outer turned = without_armhole(turned_closer(outer, into, Angle::radians(by)));
    return length(drawn(was, cut_line(was, turned, cut)).path()) - (flat - closer);
  };
  // A wedge so wide at the across point, and as many more as it takes.
  const double wedge = closer / distance(into.apex, was.line.across);
  double enough = wedge;
  while (enough < most && too_long(enough) > 0.0) enough += wedge;
  const double by = solve_between(too_long, {0.0, enough}, accuracy);
  if (std::abs(too_long(by)) > off) {
    refuse(kArmholeCode, outer.piece(),
           "its armhole edge cannot become " + Length::mm(closer) + " shorter by the dart " +
               into.name,
           "leave out \"close\", and ease the edge in on a tape when it is finished", "close");
  }
  return Angle::radians(by);
}

// --- one piece -----------------------------------------------------------------------------------

struct Asked {
  ArmholeCut cut;
  double closer;
};

// The piece, and the dart that took up what its edge lost.
struct DrawnPiece {
  Opened open;
  std::optional<Dart> into;
};

DrawnPiece drawn_piece(const Outer& outer, const Asked& asked) {
  const FoldedArmhole was = folded_armhole(outer);
  const Dart* widest =
      asked.closer > 0.0 ? widest_dart_about(outer.open, apex_point(outer.open.piece)) : nullptr;
  if (widest == nullptr) {
    const FoldedArmhole now = drawn(was, cut_line(was, outer, asked.cut));
    return {with_armhole(outer, now, asked.cut, notch_points(outer, &was.folded)), {}};
  }
  const Dart into = *widest;
  const Angle by = closing_angle(was, outer, into, asked.cut, asked.closer);
  const Outer turned = turned_closer(outer, into, by), bare = without_armhole(turned);
  const FoldedArmhole now = drawn(was, cut_line(was, bare, asked.cut));
  Opened open = with_armhole(bare, now, asked.cut, notch_points(turned, nullptr));
  set_peak(open, into.name);
  return {std::move(open), into};
}

double tightest(const OpenEdge& edge) {
  double least = std::numeric_limits<double>::infinity();
  for (const Path& part : edge.stretches) least = std::fmin(least, least_radius(part));
  return least;
}

double off_bust(const Opened& open, const OpenEdge& edge) {
  double off = std::numeric_limits<double>::infinity();
  for (const Path& part : edge.stretches) {
    off = std::fmin(off, nearest(part, apex_point(open.piece)).distance);
  }
  return off;
}

// Why the armhole cannot be cut so; empty if it can.
Wording unfair(const Outer& outer, const Asked& asked) {
  const Opened open = drawn_piece(outer, asked).open;
  const OpenEdge& edge = open.edges[outer.armhole];
  const double radius = tightest(edge), was = tightest(outer.line());
  if (radius < kLeastArmholeRadius && radius < was) {
    return "its armhole would turn within " + Length::mm(radius) + "; at least " +
           Length::mm(kLeastArmholeRadius) + " can be faced or bound flat";
  }
  const bool front = is_a(open.piece, kBodiceFront);
  const double off = front ? off_bust(open, edge) : kLeastOffBust;
  if (off >= kLeastOffBust) return {};
  return "its armhole would run " + Length::mm(off) + " past the bust point; it keeps " +
         Length::mm(kLeastOffBust) + " off it";
}

// Between an amount that can be and one that cannot, the last that can, in whole mm.
double last_fair(double fair, double not_fair, const auto& is_fair) {
  constexpr int steps = 10;
  for (int i = 0; i < steps; ++i) {
    const double middle = 0.5 * (fair + not_fair);
    (is_fair(middle) ? fair : not_fair) = middle;
  }
  return fair < not_fair ? std::floor(fair) : std::ceil(fair);
}

Wording what_can_be(const Outer& outer, const Asked& asked) {
  const std::string piece = is_a(outer.open.piece, kBodiceFront) ? "front" : "back";
  const auto with_across = [&](double in) {
    Asked other = asked;
    other.cut.across_in = in;
    return unfair(outer, other).empty();
  };
  const double usual = usual_across_in(outer, asked.cut.shoulder_in);
  if (with_across(usual)) {
    const double in = last_fair(usual, asked.cut.across_in, with_across);
    return "on this block, with so much off the shoulder, the across " + piece +
           " point can come in by " + (in < asked.cut.across_in ? "up to " : "") + Length::mm(in) +
           (in < asked.cut.across_in ? "" : " or more");
  }
  const auto with_shoulder = [&](double in) {
    Asked other = asked;
    other.cut.shoulder_in = in;
    other.cut.across_in = usual_across_in(outer, in);
    return unfair(outer, other).empty();
  };
  if (!with_shoulder(0.0)) return "raise the underarm by less";
  return "on this block the shoulder point can come in by up to " +
         Length::mm(last_fair(0.0, asked.cut.shoulder_in, with_shoulder));
}

void require_fair(const Outer& outer, const Asked& asked) {
  const Wording why = unfair(outer, asked);
  if (!why.empty()) refuse(kArmholeCode, outer.piece(), why, what_can_be(outer, asked));
}

// --- what is asked for ---------------------------------------------------------------------------

void require_amounts(const ArmholeDesign& design) {
  const auto require = [](const char* key, const char* what, double value, double most,
                          const char* why) {
    require_bounded(kArmholeCode, kArmholeStep, {key, what, value, most, why});
  };
  require("front_in", "what the across front point comes in by", design.front_in.value_or(0.0),
          kMostAcrossIn, "more is a halter");
  require("back_in", "what the across back point comes in by", design.back_in.value_or(0.0),
          kMostAcrossIn, "more is a halter");
  require("raise", "what the underarm is raised by", design.raise, kMostUnderarmRaise,
          "more cuts in under the arm");
  require("close", "what the front edge is drawn shorter by", design.close, kMostArmholeClose,
          "more draws in the chest");
}

void require_free_edges(const Outer& outer, const ArmholeDesign& design) {
  const std::string how = "draw the armhole before the step that puts it there";
  if (is_gathered(outer.open, {outer.armhole, outer.side, outer.shoulder})) {
    refuse(kArmholeCode, outer.piece(), "its armhole, side or shoulder is gathered", how);
  }
  if (design.close == 0.0 || outer.line().darts.empty()) return;
  refuse(kArmholeCode, outer.piece(),
         "the dart " + outer.line().darts.front().name +
             " opens on its armhole, which cannot be drawn closer across it",
         how + ", or leave out \"close\"", "close");
}

void require_shoulder(const Outer& outer, double shoulder_in) {
  const OpenEdge& shoulder = outer.open.edges[outer.shoulder];
  const char* what = "what the shoulder point comes in by";
  require_bounded(kArmholeCode, outer.piece(),
                  {"shoulder_in", what, shoulder_in, closed_length(shoulder) - kLeastShoulderLeft,
                   "a shoulder keeps at least " + Length::mm(kLeastShoulderLeft)});
  if (shoulder.darts.empty()) return;
  require_bounded(
      kArmholeCode, outer.piece(),
      {"shoulder_in", what, shoulder_in, length(outer.first_of_shoulder()) - kFromCorner,
       "the dart " + shoulder.darts.front().name + " opens there: move it first"});
}

// --- the whole -----------------------------------------------------------------------------------

// A front and the back that it is sewn to, with what is cut on each.
struct Pair {
  Outer front, back;
  Asked of_front, of_back;
};

Pair pair_of(const ArmholeDesign& design, const Piece& front, const Piece& back) {
  Pair pair{outer_of(as_drafted(front)), outer_of(as_drafted(back)), {}, {}};
  for (const Outer* outer : {&pair.front, &pair.back}) {
    require_free_edges(*outer, design);
    require_shoulder(*outer, design.shoulder_in);
  }
  const double behind = usual_across_in(pair.back, design.shoulder_in);
  const double before = std::fmax(usual_across_in(pair.front, design.shoulder_in), behind);
  pair.of_front = {{design.shoulder_in, design.front_in.value_or(before), design.raise},
                   design.close};
  // A back armhole is not drawn closer: about the blade its edge hardly gets shorter, and the dart
  // there would open by three times the amount.
  pair.of_back = {{design.shoulder_in, design.back_in.value_or(behind), design.raise}, 0.0};
  return pair;
}

Problem told_closer(const Outer& outer, const Asked& asked, const std::optional<Dart>& into) {
  const Length by = Length::mm(asked.closer);
  if (!into) {
    return {Severity::Note, kArmholeCode, outer.piece(),
            "no dart can take up what its armhole edge should be shorter, " + by + ", to lie close",
            "ease that much in on a tape when the edge is finished"};
  }
  return {Severity::Note, kArmholeCode, outer.piece(),
          "so that its armhole edge lies close, it is drawn " + by + " shorter; the dart " +
              into->name + " takes it up",
          "see on a toile whether the edge lies close; \"close\" sets by how much"};
}

void put_in(MovedDarts& all, std::size_t i, const Outer& outer, const Asked& asked) {
  require_fair(outer, asked);
  const DrawnPiece drawn = drawn_piece(outer, asked);
  if (asked.closer > 0.0) all.remarks.push_back(told_closer(outer, asked, drawn.into));
  const bool image = is_mirrored(all.pattern.pieces[i]);
  all = finished(all.pattern, {i, kArmholeStep, outer.piece()}, drawn.open, std::move(all.remarks));
  if (image) all.pattern.pieces[i] = mirrored(all.pattern.pieces[i]);
}

double armhole_length(const Piece& piece) {
  return sewn_length(piece, part_of(piece, BlockEdge::Armhole));
}

Problem told_length(const Piece& front, const Piece& back) {
  const double before = armhole_length(front), behind = armhole_length(back);
  return {Severity::Note, kArmholeCode, front.name,
          "its armhole is now " + Length::mm(before) + " long, the back's " + Length::mm(behind) +
              ", together " + Length::mm(before + behind),
          ""};
}

// A top without straps has none.
void require_armholes(const Pattern& pattern) {
  for (const Piece& piece : pattern.pieces) {
    const bool half = is_a(piece, kBodiceFront) || is_a(piece, kBodiceBack);
    if (!half || find_part(piece, BlockEdge::Armhole) != nullptr) continue;
    refuse(kArmholeCode, piece.name, "it has no armhole: its top edge runs from side to centre",
           "draw the armhole before the top edge, or leave one of the two out");
  }
}

}  // namespace

MovedDarts draw_armhole(const Pattern& pattern, const ArmholeDesign& design) {
  require_amounts(design);
  require_whole_bodice(pattern, kArmholeCode, kArmholeStep);
  require_armholes(pattern);
  MovedDarts all{pattern, {}};
  for (const std::size_t i : pieces_of(pattern, kBodiceFront)) {
    const Piece& front = pattern.pieces[i];
    const Pair pair = pair_of(design, front, pattern.pieces[mate_of(pattern, front, kBodiceBack)]);
    put_in(all, i, pair.front, pair.of_front);
  }
  for (const std::size_t i : pieces_of(pattern, kBodiceBack)) {
    const Piece& back = pattern.pieces[i];
    const Pair pair = pair_of(design, pattern.pieces[mate_of(pattern, back, kBodiceFront)], back);
    put_in(all, i, pair.back, pair.of_back);
  }
  drop_lone_notches(all.pattern);
  for (const std::size_t i : pieces_of(all.pattern, kBodiceFront)) {
    const Piece& front = all.pattern.pieces[i];
    const Piece& back = all.pattern.pieces[mate_of(all.pattern, front, kBodiceBack)];
    all.remarks.push_back(told_length(front, back));
  }
  return all;
}

}  // namespace blockwright
