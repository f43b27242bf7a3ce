#include "blockwright/block/neckline.hpp"
#include "blockwright/block/shoulder.hpp"
#include "blockwright/geometry/solve.hpp"
#include "rules.hpp"
#include "stages.hpp"

#include <algorithm>
#include <cmath>

namespace blockwright {
namespace {

using enum MeasurementName;

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

/// The slope as it is sewn, from the side neck point to the shoulder point.
Angle sewn_slope(Point side_neck, const Shoulder& s) { return -angle_of(s.sewn_tip - side_neck); }

/// Draws a shoulder at any slope of its inner half.
struct ShoulderDraft {
  const Targets& t;
  Point side_neck;
  bool is_back = false;
  const Assumed& assumed;

  [[nodiscard]] Shoulder at(Angle slope) const {
    return shoulder_at(side_neck, t.shoulder, slope, is_back ? back_dart(slope) : front_dart());
  }
  /// A stitched dart lifts the outer half, so the inner one slopes more than the whole.
  [[nodiscard]] Shoulder sewn_at(Angle slope) const {
    const auto over = [&](double inner) {
      return (sewn_slope(side_neck, at(Angle::radians(inner))) - slope).radians();
    };
    const Angle most = slope + rules::kMostStitchedLift;
    return at(Angle::radians(
        solve_between(over, {slope.radians(), most.radians()}, rules::kSolvedAngle)));
  }
  /// Two compass circles: the shoulder about the side neck point, the slant about the centre waist.
  [[nodiscard]] Shoulder by_slant(double slant) const {
    const auto beyond = [&](double inner) {
      return norm(at(Angle::radians(inner)).sewn_tip - Point{}) - slant;
    };
    const Bounds slopes{rules::kLeastSlope.radians(),
                        (rules::kMostSlope + rules::kMostStitchedLift).radians()};
    const Shoulder met = at(Angle::radians(solve_between(beyond, slopes, rules::kSolvedAngle)));
    const Angle slope = sewn_slope(side_neck, met);
    return slope == bounded_slope(slope) ? met : sewn_at(bounded_slope(slope));
  }

 private:
  [[nodiscard]] ShoulderDart front_dart() const {
    return {bust_point(t), t.front_hold_back, assumed.bust_dart};
  }
  /// The blade point lies on the across-back line, half way out to the armhole.
  [[nodiscard]] ShoulderDart back_dart(Angle slope) const {
    const Point tip = side_neck + t.shoulder * down_shoulder(slope);
    return {{kBladePlace * assumed.across_back, across_level(t, t.back_length - t.scye_depth, tip)},
            t.back_hold_back,
            {}};
  }
};

struct Shoulders {
  Shoulder front, back;
};

/// Each shoulder by its own slant; where one was not taped, by the taped slope, else like the other
/// shoulder, else by the estimated slope.
Shoulders shoulders(const Targets& t, double neck_width, const Assumed& assumed) {
  const ShoulderDraft front{t, front_side_neck(t, neck_width), false, assumed};
  const ShoulderDraft back{t, back_side_neck(t, neck_width), true, assumed};
  const Angle apart = 2.0 * rules::kFrontSlopesMore;
  const Angle slope = bounded_slope(t.slope);
  Shoulders s{
      t.front_slant ? front.by_slant(*t.front_slant)
                    : front.sewn_at(slope + rules::kFrontSlopesMore),
      t.back_slant ? back.by_slant(*t.back_slant) : back.sewn_at(slope - rules::kFrontSlopesMore)};
  if (t.slope_is_taped) return s;
  if (t.front_slant && !t.back_slant) {
    s.back = back.sewn_at(bounded_slope(sewn_slope(front.side_neck, s.front) - apart));
  }
  if (t.back_slant && !t.front_slant) {
    s.front = front.sewn_at(bounded_slope(sewn_slope(back.side_neck, s.back) + apart));
  }
  return s;
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

/// The frame at a neck width, for targets that are within bounds.
NeckAndShoulder drawn_at(const Targets& t, double width, const Assumed& assumed) {
  const auto [front, back] = shoulders(t, width, assumed);
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

/// Half back plus half front neckline make half the neck base girth.
NeckAndShoulder drawn(const Targets& t, const Assumed& assumed) {
  const auto excess = [&](double width) {
    const NeckAndShoulder n = drawn_at(t, width, assumed);
    return length(n.front.neckline, rules::kSolved) + length(n.back.neckline, rules::kSolved) -
           t.neck;
  };
  const Bounds widths{2.0 * rules::kLeastNeckWidth * t.neck, 2.0 * rules::kMostNeckWidth * t.neck};
  return drawn_at(t, solve_between(excess, widths, rules::kSolved), assumed);
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

std::optional<OddNeck> bring_neck_within_bounds(Targets& t, Ledger& ledger) {
  const OddNeck neck = neck_asked_for(t);
  const Length allowed = std::clamp(neck.asked, neck.least, neck.most);
  if (neck.asked == allowed) return std::nullopt;
  deepen_neck(t, (allowed - neck.asked).mm(),
              neck.asked < allowed ? "the front neck would be too shallow for its width"
                                   : "the front neck would be too deep for its width",
              ledger);
  return neck;
}

NeckAndShoulder neck_and_shoulder(const Targets& t, const Assumed& assumed) {
  return drawn(t, assumed);
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
