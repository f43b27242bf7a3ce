#include "blockwright/base/error.hpp"
#include "blockwright/base/number_text.hpp"
#include "blockwright/fit/full_bust.hpp"
#include "blockwright/fit/moves.hpp"
#include "closed_shoulder.hpp"
#include "parts.hpp"
#include "refuse.hpp"
#include "rows.hpp"
#include "waist_fit.hpp"

#include <algorithm>
#include <cmath>

namespace blockwright {
namespace {

// On a sample armhole (plane geometry; no source), per mm of bust on the half.
constexpr double kArmholePerBust = 0.7;
// Beyond this change of the leg a re-pointed dart keeps its angle in place of its mouth. Common
// practice, no source.
constexpr double kKeepsMouth = 20.0;
// The small-bust move leaves a shoulder dart of at least this. Common practice, no source.
constexpr Angle kLeastBustDart = Angle::degrees(4.0);
// The full-bust move's hinge lies at least this far over the bust point, in mm. Our bound.
constexpr double kLeastHinge = 20.0;
// A waist dart is bowed here, under the bust point, and at most so far, in mm. Common practice, no
// source (50 to 70).
constexpr double kBowPlace = 60.0;
constexpr double kMostBow = 6.0;

Point bust_point(const Opened& front) { return front.at(shoulder_dart(front)).apex; }

// The shoulder dart to a new apex: with its mouth, or with its angle where the leg changes by much.
void point_shoulder_dart(Redrawing& work, const Opened& open, Point apex) {
  const DartSpot spot = shoulder_dart(open);
  const Dart& dart = open.at(spot);
  point_dart(work, open, spot, apex);
  const double leg = distance(apex, work.at(work.leg(spot, 1)));
  if (std::abs(leg - dart.leg()) <= kKeepsMouth) return;
  set_mouth(work, open, spot, 2.0 * leg * std::sin(0.5 * dart.angle().radians()));
}

Opened with_bust_point_at(const Opened& open, Point to) {
  Redrawing work(open);
  point_shoulder_dart(work, open, to);
  if (const auto waist = waist_dart(open)) point_dart(work, open, *waist, to);
  return work.finished();
}

// A notch stays this far off the corners of its edge, in mm.
constexpr double kFromCorner = 5.0;

void shift_side_notch(Opened& open, double by) {
  const double whole = closed_length(open, BlockEdge::Side);
  for (auto& notch : open.notches) {
    if (notch.edge != index_of(BlockEdge::Side)) continue;
    double& along = notch.along;
    along = std::clamp(along + by, std::fmin(along, kFromCorner),
                       std::fmax(along, whole - kFromCorner));
  }
}

// BustPointHigher: bust point up; the bust line and the side notches that meet on it go with it.
void raise_bust_point(HalfBlock& half, const RowAsk& ask) {
  half.front = with_bust_point_at(half.front, bust_point(half.front) + Vec{0.0, ask.by});
  const double along = ask.by / up_the_side(half.front).y;
  shift_side_notch(half.front, along);
  shift_side_notch(half.back, along);
}

std::vector<Law> raise_bust_laws(const HalfBlock& before, const RowAsk& ask) {
  std::vector<Law> laws = {{"front.shoulder", 0.0}, {"front.waist", 0.0}};
  if (std::abs(ask.by) <= kKeepsMouth) laws.push_back({"front.shoulder dart", 0.0});
  if (waist_dart(before.front)) laws.push_back({"front.waist dart", 0.0});
  return laws;
}

FullBust full_bust_of(const Opened& front, double width) {
  const Point bust = bust_point(front), hinge = across_of(front);
  const double below = hinge.y - bust.y;
  if (below < kLeastHinge || std::abs(width) > 0.8 * below) {
    refuse_fit("fit.amount", "the bust point lies too near the armhole for this",
               "take the bust girths and lengths again and draft anew",
               {MeasurementName::BustGirth, MeasurementName::UnderbustGirth,
                MeasurementName::SideNeckToBustPoint});
  }
  return full_bust(width, hinge.x - bust.x, below);
}

// The waist below the bust point opened by `width`: into the waist dart, whose mouth then stands
// under the bust point again, or without one into the waist.
void open_below(Redrawing& work, const Opened& open, Point bust, double width, double drop) {
  const Vec centre{0.0, -drop}, side{width, -drop};
  if (const auto dart = waist_dart(open)) {
    if (open.at(*dart).intake() + width < kLeastMouth) {
      refuse_fit(
          "fit.negative_dart",
          "the front waist dart has only " + Length::mm(open.at(*dart).intake()) + " to give",
          "give a smaller amount, or draft anew from the bust and the waist girth");
    }
    for (Redrawing::Node n = 0; n <= work.leg(*dart, 0); ++n) work.move(n, centre);
    shift_part(work, work.leg(*dart, 1), work.corner(Corner::Underarm), side);
    point_dart(work, open, *dart, bust);
    return;
  }
  for (Redrawing::Node n = 0; n <= work.corner(Corner::Underarm); ++n) {
    work.move(n, work.at(n).x <= bust.x + 1e-6 ? centre : side);
  }
}

// FullerBust, SmallerBust, OneBreastFuller: the full-bust move. The side is turned about the hinge
// at the across point until it is `width` off the bust point, and back below it; what that opens is
// given to the shoulder dart, and the armhole keeps its length. On one side only the centre front
// keeps its length as well, so that the waist of both sides meets there and slopes to the side.
Opened with_fuller_bust(const Opened& open, double width, bool longer_front) {
  const FullBust move = full_bust_of(open, width);
  const Point bust = bust_point(open);
  const DartSpot shoulder = shoulder_dart(open);
  const Angle dart = open.at(shoulder).angle() + move.turn;
  if (dart < kLeastBustDart && move.turn < Angle()) {
    refuse_fit("fit.negative_dart",
               "the bust dart would have " + fixed(dart.degrees(), 1) + " degrees; at least " +
                   fixed(kLeastBustDart.degrees(), 0) + " must be left",
               "give a smaller amount, or draft anew from the bust and the underbust girth");
  }
  Redrawing work(open);
  open_below(work, open, bust, width, move.drop);
  turn_part(work, work.across(), work.leg(shoulder, 0), bust, -move.turn);
  work.turn(work.across(), -move.turn);
  work.lengthen_armhole(0.0);
  Opened fuller = work.finished();
  if (longer_front) return fuller;
  Redrawing level(fuller);
  raise_waist(level, fuller, WaistEnd::Centre, move.drop);
  return level.finished();
}

void fuller_bust(HalfBlock& half, const RowAsk& ask) {
  half.front = with_fuller_bust(half.front, ask.by, true);
}

void fuller_breast(HalfBlock& half, const RowAsk& ask) {
  half.front = with_fuller_bust(half.front, ask.by, false);
}

double mouth_gain(const Opened& front, Angle turn) {
  const Dart& dart = front.at(shoulder_dart(front));
  return 2.0 * dart.leg() * std::sin(0.5 * (dart.angle() + turn).radians()) - dart.intake();
}

std::vector<Law> fuller_laws(const HalfBlock& before, const RowAsk& ask) {
  const FullBust move = full_bust_of(before.front, ask.by);
  const bool dart = waist_dart(before.front).has_value();
  return {{"bust_line", 2.0 * ask.by},
          {"front.centre_front", move.drop},
          {"front.armhole", 0.0},
          {"front.side", 0.0},
          {"front.waist", dart ? 0.0 : ask.by, dart ? LawKind::Exact : LawKind::Ratio},
          {"front.shoulder", 0.0},
          {"front.shoulder dart", mouth_gain(before.front, move.turn)}};
}

std::vector<Law> breast_laws(const HalfBlock& before, const RowAsk& ask) {
  std::vector<Law> laws = fuller_laws(before, ask);
  laws[1].change = 0.0;
  return laws;
}

Opened& piece_of(HalfBlock& half, std::string_view place) {
  return place.substr(0, 4) == "back" ? half.back : half.front;
}

// "front_waist_dart" names the dart "waist" of the front; the default is the front waist dart.
DartSpot dart_of(const Opened& open, std::string_view place) {
  const bool shoulder = place.find("shoulder") != std::string_view::npos;
  if (const auto spot = shoulder ? std::optional(shoulder_dart(open)) : waist_dart(open)) {
    return *spot;
  }
  refuse_fit("fit.place", "this block's " + open.piece.name + " has no waist dart",
             "take the width at the side seam");
}

// DartShorter: where the stitching ends.
void shorten_dart(HalfBlock& half, const RowAsk& ask) {
  Opened& open = piece_of(half, ask.place);
  Dart& dart = open.at(dart_of(open, ask.place));
  const double hold_back = distance(dart.apex, dart.point) + ask.by;
  if (hold_back < 0.0 || hold_back > 0.5 * dart.leg()) {
    refuse_fit("fit.amount",
               "the stitching would end " + Length::mm(hold_back) + " from the " +
                   std::string(hold_back < 0.0 ? "bust point, beyond it" : "point it aims at"),
               "a dart ends between its apex and half way to its mouth");
  }
  dart = held_back(dart, hold_back);
  set_peak(open, std::string(dart.name));
}

std::vector<Law> shorten_dart_laws(const HalfBlock&, const RowAsk& ask) {
  const bool back = ask.place.substr(0, 4) == "back";
  const bool shoulder = ask.place.find("shoulder") != std::string_view::npos;
  return {
      {std::string(back ? "back." : "front.") + (shoulder ? "shoulder" : "waist") + " dart point",
       ask.by}};
}

// DartWider: one dart wider; its seam is let out at the far end by what it loses.
Opened with_dart_widened(const Opened& open, DartSpot spot, double by) {
  const bool at_shoulder = spot == shoulder_dart(open);
  const BlockEdge edge = at_shoulder ? BlockEdge::Shoulder : BlockEdge::Waist;
  const double before = closed_length(open, edge);
  Redrawing work(open);
  set_mouth(work, open, spot, open.at(spot).intake() + by);
  if (!at_shoulder) {
    const Opened widened = work.finished();
    return with_waist_let_out_at_side(widened, before - closed_length(widened, edge));
  }
  return work.finished();
}

void widen_dart(HalfBlock& half, const RowAsk& ask) {
  Opened& open = piece_of(half, ask.place);
  open = with_dart_widened(open, dart_of(open, ask.place), ask.by);
}

std::vector<Law> widen_dart_laws(const HalfBlock& before, const RowAsk& ask) {
  HalfBlock half = before;
  const Opened& open = piece_of(half, ask.place);
  const std::string piece = open.piece.name + ".";
  const bool shoulder = ask.place.find("shoulder") != std::string_view::npos;
  return {{piece + (shoulder ? "shoulder dart" : "waist dart"), ask.by},
          {piece + (shoulder ? "shoulder" : "waist"), 0.0},
          {piece + "side", 0.0}};
}

// BustPointsApart: bust points further apart.
void widen_bust_points(HalfBlock& half, const RowAsk& ask) {
  half.front = with_bust_point_at(half.front, bust_point(half.front) + Vec{ask.by, 0.0});
}

std::vector<Law> bust_points_laws(const HalfBlock&, const RowAsk& ask) {
  return {{"bust_points", 2.0 * ask.by}, {"front.waist", 0.0}, {"front.shoulder", 0.0}};
}

// A dart's stitch line from leg end to dart point, bowed away from the dart's axis.
Path bowed_leg(const Dart& dart, Point leg, double bow) {
  const Vec down = leg - dart.point;
  const double whole = norm(down);
  const double at =
      std::fmin(std::fmax(kBowPlace - distance(dart.apex, dart.point), 0.2 * whole), 0.8 * whole);
  const Vec along = unit(down);
  const Vec off = cross(midpoint(dart.legs[0], dart.legs[1]) - dart.point, down) > 0.0
                      ? left_of(along)
                      : right_of(along);
  const Point middle = dart.point + at * along + bow * off;
  const Vec way = along;
  Path path(
      {CubicCurve{dart.point, between(dart.point, middle, 0.4), middle - 0.3 * at * way, middle}});
  path.add(CubicCurve{middle, middle + 0.3 * (whole - at) * way, between(middle, leg, 0.6), leg});
  return path;
}

// UnderBustTakenIn: the front waist dart's legs bowed outwards under the bust; drawn as the lines
// to stitch by.
void take_in_under_bust(HalfBlock& half, const RowAsk& ask) {
  const double bow = 0.5 * ask.by;
  if (std::abs(bow) > kMostBow) {
    refuse_fit("fit.limit",
               "each leg would be bowed by " + Length::mm(bow) + "; at most " +
                   Length::mm(kMostBow) + " lie flat",
               "make a princess seam in place of the darts");
  }
  if (bow == 0.0) return;
  const Dart& dart = half.front.at(dart_of(half.front, "front_waist_dart"));
  auto& lines = half.front.piece.balance_lines;
  lines.push_back({"waist_dart_inner_leg", bowed_leg(dart, dart.legs[0], bow)});
  lines.push_back({"waist_dart_outer_leg", bowed_leg(dart, dart.legs[1], bow)});
}

std::vector<Law> under_bust_laws(const HalfBlock&, const RowAsk&) { return {}; }

// BustLetOutAtSide: side seams out, half of the amount on each edge: alike from underarm to waist,
// or at the bust line and to nothing at the waist.
Opened with_side_let_out(const Opened& open, double by) {
  Redrawing work(open);
  shift_part(work, work.corner(Corner::SideWaist), work.corner(Corner::Underarm), {by, 0.0});
  return work.finished();
}

Opened with_bust_let_out_at_side(const Opened& open, double by) {
  const Point waist = corner_of(open, Corner::SideWaist);
  const double whole = distance(waist, corner_of(open, Corner::Underarm));
  const double aside = up_the_side(open).x + by / side_notch(open);
  if (std::abs(aside) > 0.5) {
    refuse_fit("fit.amount", "the side seam would slant too far",
               "give a smaller amount, or take the bust girth again", {MeasurementName::BustGirth});
  }
  Redrawing work(open);
  work.put(work.corner(Corner::Underarm),
           waist + whole * Vec{aside, std::sqrt(1.0 - aside * aside)});
  return work.finished();
}

bool to_the_waist(const RowAsk& ask) { return ask.place == "side"; }

void let_out_side(HalfBlock& half, const RowAsk& ask) {
  const auto let_out = to_the_waist(ask) ? with_side_let_out : with_bust_let_out_at_side;
  half.front = let_out(half.front, 0.5 * ask.by);
  half.back = let_out(half.back, 0.5 * ask.by);
}

std::vector<Law> let_out_laws(const HalfBlock&, const RowAsk& ask) {
  std::vector<Law> laws = {{"bust_line", 2.0 * ask.by},
                           {"armhole", kArmholePerBust * ask.by, LawKind::Rough},
                           {"front.side", 0.0},
                           {"back.side", 0.0}};
  if (to_the_waist(ask)) laws.push_back({"waist", 2.0 * ask.by});
  return laws;
}

using enum CorrectionRow;

constexpr auto kBustRows = std::to_array<RowMoves>({
    {BustPointHigher, 1, raise_bust_point, raise_bust_laws},
    {FullerBust, 1, fuller_bust, fuller_laws},
    {SmallerBust, -1, fuller_bust, fuller_laws},
    {DartShorter, 1, shorten_dart, shorten_dart_laws},
    {DartWider, 1, widen_dart, widen_dart_laws},
    {BustPointsApart, 1, widen_bust_points, bust_points_laws},
    {UnderBustTakenIn, 1, take_in_under_bust, under_bust_laws},
    {OneBreastFuller, 1, fuller_breast, breast_laws},
    {BustLetOutAtSide, 1, let_out_side, let_out_laws},
});
static_assert(are_all_moves_of(RowPart::Bust, kBustRows));

}  // namespace

const std::span<const RowMoves> kBustMoves = kBustRows;

}  // namespace blockwright
