#include "blockwright/base/number_text.hpp"
#include "rows.hpp"

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

// The shoulder dart to a new apex: with its mouth, or with its angle where the leg changes by much.
void point_shoulder_dart(Redrawing& work, Point apex) {
  const DartSpot spot = shoulder_dart(work.open());
  const Dart& dart = work.open().at(spot);
  point_dart(work, spot, apex);
  const double leg = distance(apex, work.at(work.leg(spot, 1)));
  if (std::abs(leg - dart.leg()) <= kKeepsMouth) return;
  set_mouth(work, spot, 2.0 * leg * std::sin(0.5 * dart.angle().radians()));
}

Opened with_bust_point_at(const Opened& open, Point to) {
  Redrawing work(open);
  point_shoulder_dart(work, to);
  if (const auto waist = waist_dart(open)) point_dart(work, *waist, to);
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

// mm along the side from its notch to the level `up` over that.
double along_the_side(const Opened& front, double up) {
  const Path& side = front.edges[index_of(BlockEdge::Side)].stretches.front();
  const double joint = side_joint(front).y, notch = side_notch_point(front).y;
  const double below = std::fmin(notch + up, joint) - std::fmin(notch, joint);
  return below / start_tangent(side).y + (up - below) / end_tangent(side).y;
}

// BustPointHigher: bust point up; the bust line and the side notches that meet on it go with it.
void raise_bust_point(HalfBlock& half, const RowAsk& ask) {
  half.front = with_bust_point_at(half.front, apex_of(half.front) + Vec{0.0, ask.by});
  const double along = along_the_side(half.front, ask.by);
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
  const Point bust = apex_of(front), hinge = across_of(front);
  const double below = hinge.y - bust.y;
  if (below < kLeastHinge || std::abs(width) > 0.8 * below) {
    refuse_fit("fit.amount", "the bust point lies too near the armhole for this",
               "take the bust girths and lengths again and draft anew",
               {MeasurementName::BustGirth, MeasurementName::UnderbustGirth,
                MeasurementName::SideNeckToBustPoint});
  }
  return full_bust(width, hinge - bust);
}

// The waist below the bust point opened by `width`: into the waist dart, whose mouth then stands
// under the bust point again, or without one into the waist.
void open_below(Redrawing& work, double width, double drop) {
  const Opened& open = work.open();
  const Point bust = apex_of(open);
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
    point_dart(work, *dart, bust);
    return;
  }
  for (Redrawing::Node n = 0; n <= work.corner(Corner::Underarm); ++n) {
    work.move(n, work.at(n).x <= bust.x + 1e-6 ? centre : side);
  }
}

// FullerBust, SmallerBust, OneBreastFuller: the full-bust move. The side is turned about the hinge
// at the across point until it is `width` off the bust point, and back below it; what that opens is
// given to the shoulder dart, and the armhole keeps its length.
Opened with_fuller_bust(const Opened& open, double width) {
  const FullBust move = full_bust_of(open, width);
  const DartSpot shoulder = shoulder_dart(open);
  const Angle dart = open.at(shoulder).angle() + move.turn;
  if (dart < kLeastBustDart && move.turn < Angle()) {
    refuse_fit("fit.negative_dart",
               "the bust dart would have " + fixed(dart.degrees(), 1) + " degrees; at least " +
                   fixed(kLeastBustDart.degrees(), 0) + " must be left",
               "give a smaller amount, or draft anew from the bust and the underbust girth");
  }
  Redrawing work(open);
  open_below(work, width, move.drop);
  turn_part(work, work.across(), work.leg(shoulder, 0), apex_of(open), -move.turn);
  work.turn(work.across(), -move.turn);
  work.lengthen_armhole(0.0);
  return work.finished();
}

// On one side only the centre front keeps its length as well, so that the waist of both sides meets
// there and slopes to the side.
Opened with_fuller_breast(const Opened& open, double width) {
  return with_centre_waist_raised(with_fuller_bust(open, width), full_bust_of(open, width).drop);
}

double mouth_gain(const Opened& front, Angle turn) {
  const Dart& dart = front.at(shoulder_dart(front));
  return 2.0 * dart.leg() * std::sin(0.5 * (dart.angle() + turn).radians()) - dart.intake();
}

std::vector<Law> fuller_laws(const HalfBlock& before, const RowAsk& ask) {
  const FullBust move = full_bust_of(before.front, ask.by);
  const bool dart = waist_dart(before.front).has_value();
  return {{"front.centre_front", move.drop},
          {"front.armhole", 0.0},
          {"front.side", 0.0},
          {"front.waist", dart ? 0.0 : ask.by, dart ? LawKind::Exact : LawKind::Ratio},
          {"front.shoulder", 0.0},
          {"front.shoulder dart", mouth_gain(before.front, move.turn)}};
}

std::vector<Law> breast_laws(const HalfBlock& before, const RowAsk& ask) {
  std::vector<Law> laws = fuller_laws(before, ask);
  laws.front().change = 0.0;  // the centre front's
  return laws;
}

// Whose dart a place names.
struct DartPlace {
  explicit DartPlace(std::string_view place)
      : piece(place.starts_with("back") ? &HalfBlock::back : &HalfBlock::front),
        on_shoulder(place.find("shoulder") != std::string_view::npos) {}

  [[nodiscard]] DartSpot spot_on(const Opened& open) const {
    return on_shoulder ? shoulder_dart(open) : the_waist_dart(open);
  }

  Opened HalfBlock::*piece;
  bool on_shoulder;
};

// DartShorter: where the stitching ends.
void shorten_dart(HalfBlock& half, const RowAsk& ask) {
  const DartPlace place(ask.place);
  Opened& open = half.*place.piece;
  Dart& dart = open.at(place.spot_on(open));
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

// FrontShoulderDartWider: the bust dart wider; the shoulder point goes out by what the seam would
// lose.
Opened with_bust_dart_widened(const Opened& open, double by) {
  return with_dart_widened(open, shoulder_dart(open), by);
}

constexpr LawPerMm kBustDartLaws[] = {{"front.shoulder"}, {"bust_line"}, {"waist"}, {"front.side"}};

// BustPointsApart: bust points further apart.
Opened with_bust_points_apart(const Opened& open, double by) {
  return with_bust_point_at(open, apex_of(open) + Vec{by, 0.0});
}

constexpr LawPerMm kBustPointsLaws[] = {{"front.waist"}, {"front.shoulder"}};

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
  Path path({CubicCurve{dart.point, between(dart.point, middle, 0.4), middle - 0.3 * at * along,
                        middle}});
  path.add(CubicCurve{middle, middle + 0.3 * (whole - at) * along, between(middle, leg, 0.6), leg});
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
  const Dart& dart = half.front.at(the_waist_dart(half.front));
  auto& lines = half.front.piece.balance_lines;
  lines.push_back({"waist_dart_inner_leg", bowed_leg(dart, dart.legs[0], bow)});
  lines.push_back({"waist_dart_outer_leg", bowed_leg(dart, dart.legs[1], bow)});
}

// BustLetOutAtSide: side seams out, half of the amount on each edge: alike from underarm to waist,
// or at the bust line and to nothing at the waist.
Opened with_side_let_out(const Opened& open, double by) {
  Redrawing work(open);
  shift_part(work, work.corner(Corner::SideWaist), work.corner(Corner::Underarm), {by, 0.0});
  return work.finished();
}

void let_out_side(HalfBlock& half, const RowAsk& ask) {
  const auto let_out = ask.place == "side" ? with_side_let_out : with_bust_let_out_at_side;
  half.front = let_out(half.front, 0.5 * ask.by);
  half.back = let_out(half.back, 0.5 * ask.by);
}

constexpr LawPerMm kLetOutLaws[] = {
    {"armhole", kArmholePerBust, LawKind::Rough}, {"front.side"}, {"back.side"}};

using enum CorrectionRow;

constexpr auto kBustRows = std::to_array<RowMoves>({
    {BustPointHigher, 1, raise_bust_point, raise_bust_laws},
    {FullerBust, 1, on_front<with_fuller_bust>, fuller_laws},
    {SmallerBust, -1, on_front<with_fuller_bust>, fuller_laws},
    {DartShorter, 1, shorten_dart, no_more_laws},
    {FrontShoulderDartWider, 1, on_front<with_bust_dart_widened>, in_proportion<kBustDartLaws>},
    {BustPointsApart, 1, on_front<with_bust_points_apart>, in_proportion<kBustPointsLaws>},
    {UnderBustTakenIn, 1, take_in_under_bust, no_more_laws},
    {OneBreastFuller, 1, on_front<with_fuller_breast>, breast_laws},
    {BustLetOutAtSide, 1, let_out_side, in_proportion<kLetOutLaws>},
});
static_assert(are_all_moves_of(RowPart::Bust, kBustRows));

}  // namespace

const std::span<const RowMoves> kBustMoves = kBustRows;

}  // namespace blockwright
