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

/// Two compass circles on the front: the shoulder about the side neck point, the slant about the
/// centre waist. Gives the slope of the shoulder that meets both.
Angle slope_from_slant(Point side_neck, double shoulder, double slant) {
  const double from_waist = norm(side_neck - Point{});
  const double along = (slant * slant - from_waist * from_waist - shoulder * shoulder) /
                       (2.0 * shoulder * from_waist);
  const double turn = std::acos(std::clamp(along, -1.0, 1.0));
  return Angle::radians(turn) - angle_of(side_neck - Point{});
}

struct BackShoulder {
  Point blade, inner_leg, outer_leg, shoulder_point;
};

/// The back shoulder at a slope, its dart opened by turning the outer part about the blade point,
/// which lies on the across-back line, half way out to the armhole. A blade too near the shoulder
/// for the mouth gets a dart laid out flat, which the checks refuse.
BackShoulder back_shoulder(const Targets& t, Point side_neck, Angle slope) {
  const Vec down = down_shoulder(slope);
  const Point shoulder_point = side_neck + t.shoulder * down;
  const Point inner = side_neck + kShoulderDartPlace * t.shoulder * down;
  const Point blade{kBladePlace * t.across_back,
                    across_level(t, t.back_length - t.scye_depth, shoulder_point)};
  const double half_mouth = std::min(0.5 * kBackShoulderDart / distance(inner, blade), 1.0);
  const Angle open = Angle::radians(-2.0 * std::asin(half_mouth));
  return {blade, inner, rotated_about(inner, blade, open),
          rotated_about(shoulder_point, blade, open)};
}

/// The slope at which the opened back shoulder point lies on the slant's circle.
Angle back_slope_from_slant(const Targets& t, Point side_neck, double slant) {
  const auto beyond = [&](double radians) {
    const BackShoulder shoulder = back_shoulder(t, side_neck, Angle::radians(radians));
    return norm(shoulder.shoulder_point - Point{}) - slant;
  };
  return Angle::radians(
      solve_between(beyond, {rules::kLeastSlope.radians(), rules::kMostSlope.radians()}, 1e-12));
}

struct Slopes {
  Angle front, back;
};

/// Each shoulder by its own slant; where one was not taped, by the taped slope, else like the other
/// shoulder, else by the estimated slope.
Slopes shoulder_slopes(const Targets& t, double neck_width) {
  const Angle apart = 2.0 * rules::kFrontSlopesMore;
  const Angle slope = bounded_slope(t.slope);
  Slopes s{slope + rules::kFrontSlopesMore, slope - rules::kFrontSlopesMore};
  if (t.front_slant) {
    s.front =
        bounded_slope(slope_from_slant(front_side_neck(t, neck_width), t.shoulder, *t.front_slant));
  }
  if (t.back_slant) {
    s.back = back_slope_from_slant(t, back_side_neck(t, neck_width), *t.back_slant);
  }
  if (!t.slope_is_taped && t.front_slant && !t.back_slant) s.back = bounded_slope(s.front - apart);
  if (!t.slope_is_taped && t.back_slant && !t.front_slant) s.front = bounded_slope(s.back + apart);
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
  const Vec to_centre{-1.0, 0.0};
  front.neckline = neckline(front.side_neck, into_front, front.centre_neck, to_centre);
  back.neckline = neckline(back.side_neck, into_back, back.centre_neck, to_centre);
}

/// The frame at a neck width, for targets that are within bounds.
NeckAndShoulder drawn_at(const Targets& t, double width) {
  const Slopes slopes = shoulder_slopes(t, width);
  const Point front_neck = front_side_neck(t, width), back_neck = back_side_neck(t, width);
  const BackShoulder back = back_shoulder(t, back_neck, slopes.back);
  NeckAndShoulder n{width,
                    {{0.0, t.front_length},
                     front_neck,
                     slopes.front,
                     front_neck + t.shoulder * down_shoulder(slopes.front),
                     {}},
                    {{0.0, t.back_length}, back_neck, slopes.back, back.shoulder_point, {}},
                    bust_point(t),
                    back.blade,
                    back.inner_leg,
                    back.outer_leg};
  draw_necklines(n);
  return n;
}

/// Half back plus half front neckline make half the neck base girth.
NeckAndShoulder drawn(const Targets& t) {
  const auto excess = [&](double width) {
    const NeckAndShoulder n = drawn_at(t, width);
    return length(n.front.neckline, rules::kSolved) + length(n.back.neckline, rules::kSolved) -
           t.neck;
  };
  return drawn_at(
      t, solve_between(
             excess, {2.0 * rules::kLeastNeckWidth * t.neck, 2.0 * rules::kMostNeckWidth * t.neck},
             rules::kSolved));
}

/// The front neck depth that the two front lengths ask for must be a neck's. What is estimated
/// gives way first: the length over the bust, else the centre front length.
Targets with_neck_depth_in_bounds(const Targets& asked, Settlement& settlement) {
  const double width = asked.neck / rules::kHalfNeckPerWidth;
  const double girth = 2.0 * asked.neck;
  const double depth = front_side_neck(asked, width).y - asked.front_length;
  const double allowed =
      std::clamp(depth, rules::kLeastNeckDepth * girth, rules::kMostNeckDepth * girth);
  Targets t = asked;
  if (depth == allowed) return t;
  const std::string why = depth < allowed ? "the front neck would be too shallow for its width"
                                          : "the front neck would be too deep for its width";
  if (t.over_bust_is_taped || !t.front_length_is_taped) {
    t.front_length += depth - allowed;
    settlement.adjust(FrontWaistLength, Length::mm(depth - allowed), why);
  } else {
    t.under_bust += allowed - depth;
    settlement.adjust(SideNeckToWaist, Length::mm(allowed - depth), why);
  }
  return t;
}

void report_slopes(const Targets& t, const NeckAndShoulder& n, Settlement& settlement) {
  const std::string why = "a finished shoulder slopes between 8 and 36 degrees";
  const auto report = [&](MeasurementName name, std::optional<double> slant, Point shoulder_point) {
    if (slant) settlement.adjust(name, Length::mm(norm(shoulder_point - Point{}) - *slant), why);
  };
  report(FrontShoulderSlant, t.front_slant, n.front.shoulder_point);
  report(BackShoulderSlant, t.back_slant, n.back.shoulder_point);
  if (!t.front_slant && !t.back_slant && bounded_slope(t.slope) != t.slope) {
    settlement.adjust(ShoulderSlope, bounded_slope(t.slope) - t.slope, why);
  }
}

/// Across back and across front no wider than the shoulders above them.
void bound_across(Targets& t, const NeckAndShoulder& n, Settlement& settlement) {
  const auto bound = [&](double& across, Point shoulder_point, MeasurementName name) {
    const double most = shoulder_point.x + rules::kMostAcrossBeyondShoulder;
    if (across <= most) return;
    settlement.adjust(name, Length::mm(2.0 * (most - across)),
                      "it is wider than the shoulders above it");
    across = most;
  };
  bound(t.across_back, n.back.shoulder_point, AcrossBack);
  bound(t.across_front, n.front.shoulder_point, AcrossFront);
}

}  // namespace

double across_level(const Targets& t, double armpit, Point shoulder_point) {
  const double room = std::max(shoulder_point.y - armpit, 0.0);
  return armpit + std::clamp(rules::kAcrossLevel * t.scye_depth, rules::kLeastAcrossLevel * room,
                             rules::kMostAcrossLevel * room);
}

NeckAndShoulder neck_and_shoulder(Targets& t, Settlement& settlement) {
  t = with_neck_depth_in_bounds(t, settlement);
  const double across_back = t.across_back;
  NeckAndShoulder n = drawn(t);
  bound_across(t, n, settlement);
  if (t.across_back != across_back) n = drawn(t);
  report_slopes(t, n, settlement);
  return n;
}

}  // namespace blockwright
