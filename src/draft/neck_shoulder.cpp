#include "blockwright/block/neckline.hpp"
#include "blockwright/block/shoulder.hpp"
#include "rules.hpp"
#include "stages.hpp"

#include <algorithm>
#include <cmath>

namespace blockwright {
namespace {

using enum MeasurementName;

/// How much longer both half necklines together become with the neck's width, near enough for the
/// next drawing.
constexpr double kNecklinePerWidth = 2.0;

/// Down the shoulder from the side neck point.
Vec down_shoulder(Angle slope) { return direction(-slope); }

Angle bounded_slope(Angle slope) {
  return std::clamp(slope, rules::kLeastSlope, rules::kMostSlope);
}

/// Bust point: on the line at half the bust point width, its height fixed from the waist upwards.
Point bust_point(const Targets& t) { return {t.bust_point_x, t.under_bust - kFrontWaistDip}; }

/// Side neck point: on the line at the neck width, at its tape from the bust point.
Point front_side_neck(const Targets& t, double neck_width) {
  const Point bust = bust_point(t);
  const double aside = neck_width - bust.x;
  const double square = t.neck_to_bust * t.neck_to_bust - aside * aside;
  return {neck_width, bust.y + std::sqrt(std::max(square, 0.0))};
}

Point back_side_neck(const Targets& t, double neck_width) {
  return {neck_width, t.back_length + kBackNeckRise * neck_width};
}

/// A shoulder with its dart: opened by turning its outer part about the apex, and stitched.
struct Shoulder {
  Angle slope;  ///< of the inner half, from the side neck point
  Point tip;    ///< closed to the apex
  Dart dart;
  Point open_tip;
  Point sewn_tip;  ///< the dart closed as it is stitched
};

/// What a shoulder dart is: where it turns, how wide it opens (an angle, or a mouth's chord against
/// the leg), and how far its stitching ends short of that.
struct ShoulderDart {
  Point apex;
  double hold_back = 0.0;
  std::optional<Angle> angle;  ///< empty: the back's, by its intake
};

/// A blade too near the shoulder for the mouth gets a dart laid out flat, which the checks refuse.
Angle opening(const ShoulderDart& dart, Point inner) {
  if (dart.angle) return *dart.angle;
  const double half_mouth = std::min(0.5 * kBackShoulderDart / distance(inner, dart.apex), 1.0);
  return Angle::radians(2.0 * std::asin(half_mouth));
}

Shoulder shoulder_at(Point side_neck, double length, Angle slope, const ShoulderDart& plan) {
  Shoulder s{slope, side_neck + length * down_shoulder(slope), {}, {}, {}};
  const Point inner = side_neck + kShoulderDartPlace * length * down_shoulder(slope);
  const Angle open = -opening(plan, inner);
  s.dart.apex = plan.apex;
  s.dart.legs = {rotated_about(inner, plan.apex, open), inner};
  s.dart = held_back(s.dart, plan.hold_back);
  s.open_tip = rotated_about(s.tip, plan.apex, open);
  s.sewn_tip = s.dart.closed_as_stitched(s.open_tip);
  return s;
}

Shoulder front_shoulder(const Targets& t, const Assumed& assumed) {
  return shoulder_at(front_side_neck(t, assumed.neck_width), t.shoulder, assumed.front_slope,
                     {bust_point(t), t.front_hold_back, assumed.bust_dart});
}

/// The blade point lies on the across-back line, half way out to the armhole.
Shoulder back_shoulder(const Targets& t, const Assumed& assumed) {
  const Point side_neck = back_side_neck(t, assumed.neck_width);
  const Point tip = side_neck + t.shoulder * down_shoulder(assumed.back_slope);
  const double level = across_level(t, t.back_length - t.scye_depth, tip);
  return shoulder_at(side_neck, t.shoulder, assumed.back_slope,
                     {{kBladePlace * assumed.across_back, level}, t.back_hold_back, {}});
}

/// The slope as it is sewn, from the side neck point to the shoulder point.
Angle sewn_slope(const UpperLines& n) { return -angle_of(n.sewn_shoulder_point - n.side_neck); }

/// Two compass circles: the shoulder about the side neck point, the slant about the centre waist.
/// The slope at which they meet, or come nearest to it.
Angle slope_by_slant(const UpperLines& n, double slant) {
  const double shoulder = distance(n.sewn_shoulder_point, n.side_neck);
  const double to_waist = distance(n.side_neck, Point{});
  const double opening =
      (to_waist * to_waist + shoulder * shoulder - slant * slant) / (2.0 * to_waist * shoulder);
  return -(angle_of(Point{} - n.side_neck) +
           Angle::radians(std::acos(std::clamp(opening, -1.0, 1.0))));
}

struct Slopes {
  Angle front, back;
};

/// Each shoulder is sewn to its own slant; where one was not taped, to the taped slope, else like
/// the other shoulder, else to the estimated slope.
Slopes slopes_as_sewn(const Targets& t, const NeckAndShoulder& n) {
  const Angle slope = bounded_slope(t.slope), apart = 2.0 * rules::kFrontSlopesMore;
  Slopes s{slope + rules::kFrontSlopesMore, slope - rules::kFrontSlopesMore};
  if (t.front_slant) s.front = bounded_slope(slope_by_slant(n.front, *t.front_slant));
  if (t.back_slant) s.back = bounded_slope(slope_by_slant(n.back, *t.back_slant));
  if (t.slope_is_taped) return s;
  if (t.front_slant && !t.back_slant) s.back = bounded_slope(s.front - apart);
  if (t.back_slant && !t.front_slant) s.front = bounded_slope(s.back + apart);
  return s;
}

/// A stitched dart lifts the outer half, so the inner one slopes more than the whole.
Angle slope_of_inner_half(const UpperLines& drawn, Angle as_sewn) {
  return std::clamp(drawn.slope + as_sewn - sewn_slope(drawn), as_sewn,
                    as_sewn + rules::kMostStitchedLift);
}

/// Half back plus half front neckline make half the neck base girth.
double neck_width_for(const Targets& t, const NeckAndShoulder& n) {
  const double is =
      length(n.front.neckline, rules::kSolved) + length(n.back.neckline, rules::kSolved);
  return std::clamp(n.neck_width + (t.neck - is) / kNecklinePerWidth,
                    2.0 * rules::kLeastNeckWidth * t.neck, 2.0 * rules::kMostNeckWidth * t.neck);
}

/// Both necklines are square to their centre line and to the shoulder. On a deep neck under a steep
/// shoulder the front gives up the right angle at the shoulder as far as it must to turn one way
/// only, and the back takes up the difference, so that the closed shoulder stays smooth.
void draw_necklines(NeckAndShoulder& n) {
  UpperLines &front = n.front, &back = n.back;
  const double depth = front.side_neck.y - front.centre_neck.y;
  const double lean =
      std::min(front.slope.radians(), steepest_neckline({front.side_neck.x, depth}).radians());
  const double given_up = front.slope.radians() - lean;
  const Vec into_front = -direction(Angle::radians(0.5 * std::numbers::pi - lean));
  const Vec into_back =
      -direction(Angle::radians(0.5 * std::numbers::pi - back.slope.radians() - given_up));
  const Necklines drawn = necklines({front.side_neck, into_front, front.centre_neck},
                                    {back.side_neck, into_back, back.centre_neck});
  front.neckline = drawn.front;
  back.neckline = drawn.back;
}

/// The front neck depth that the two front lengths ask for, and those that a neck of this girth
/// has.
OddNeck neck_asked_for(const Targets& t) {
  const double width = t.neck / rules::kHalfNeckPerWidth;
  const double girth = 2.0 * t.neck;
  return {Length::mm(front_side_neck(t, width).y - t.front_length),
          Length::mm(rules::kLeastNeckDepth * girth), Length::mm(rules::kMostNeckDepth * girth)};
}

/// Makes the front neck deeper by that much: the length over the bust gives way as far as it leaves
/// room for a dart, or the centre front length.
void deepen_neck(Targets& t, double by, const std::string& why, Ledger& ledger) {
  const double over_bust =
      t.over_bust_gives_way ? std::max(by, rules::kLeastUnderBust - t.under_bust) : 0.0;
  t.under_bust += over_bust;
  t.front_length -= by - over_bust;
  ledger.adjust(SideNeckToWaist, Length::mm(over_bust), why);
  ledger.adjust(FrontWaistLength, Length::mm(over_bust - by), why);
}

}  // namespace

double across_level(const Targets& t, double armpit, Point shoulder_point) {
  const double room = std::max(shoulder_point.y - armpit, 0.0);
  return armpit + std::clamp(rules::kAcrossLevel * t.scye_depth, rules::kLeastAcrossLevel * room,
                             rules::kMostAcrossLevel * room);
}

std::optional<OddNeck> odd_neck(const Targets& t) {
  const OddNeck neck = neck_asked_for(t);
  if (neck.asked >= neck.least && neck.asked <= neck.most) return std::nullopt;
  return neck;
}

void bring_neck_within_bounds(Targets& t, Ledger& ledger) {
  const auto neck = odd_neck(t);
  if (!neck) return;
  const Length allowed = std::clamp(neck->asked, neck->least, neck->most);
  deepen_neck(t, (allowed - neck->asked).mm(),
              neck->asked < allowed ? "the front neck would be too shallow for its width"
                                    : "the front neck would be too deep for its width",
              ledger);
}

NeckAndShoulder neck_and_shoulder(const Targets& t, const Assumed& assumed) {
  const double width = assumed.neck_width;
  const Shoulder front = front_shoulder(t, assumed), back = back_shoulder(t, assumed);
  NeckAndShoulder n{width,
                    {{0.0, t.front_length},
                     front_side_neck(t, width),
                     front.slope,
                     front.tip,
                     front.sewn_tip,
                     {}},
                    {{0.0, t.back_length},
                     back_side_neck(t, width),
                     back.slope,
                     back.open_tip,
                     back.sewn_tip,
                     {}},
                    bust_point(t),
                    back.dart.apex,
                    back.dart.legs[1],
                    back.dart.legs[0]};
  draw_necklines(n);
  return n;
}

void guess_neck_and_shoulder(const Targets& t, Assumed& assumed) {
  assumed.neck_width = t.neck / rules::kHalfNeckPerWidth;
  assumed.front_slope = bounded_slope(t.slope) + rules::kFrontSlopesMore;
  assumed.back_slope = bounded_slope(t.slope) - rules::kFrontSlopesMore;
}

void correct_neck_and_shoulder(const Targets& t, const NeckAndShoulder& n, Assumed& assumed) {
  const auto [front, back] = slopes_as_sewn(t, n);
  assumed.front_slope = slope_of_inner_half(n.front, front);
  assumed.back_slope = slope_of_inner_half(n.back, back);
  assumed.neck_width = neck_width_for(t, n);
}

void account_for_shoulders(const Targets& t, const NeckAndShoulder& n, Ledger& ledger) {
  const std::string why = "a finished shoulder slopes between 8 and 36 degrees";
  const auto account = [&](MeasurementName name, std::optional<double> slant, Point sewn) {
    if (slant) ledger.adjust(name, Length::mm(norm(sewn - Point{}) - *slant), why);
  };
  account(FrontShoulderSlant, t.front_slant, n.front.sewn_shoulder_point);
  account(BackShoulderSlant, t.back_slant, n.back.sewn_shoulder_point);
  if (!t.front_slant && !t.back_slant) {
    ledger.adjust(ShoulderSlope, bounded_slope(t.slope) - t.slope, why);
  }
}

}  // namespace blockwright
