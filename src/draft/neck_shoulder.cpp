#include "neck_shoulder.hpp"

#include "blockwright/block/neckline.hpp"
#include "blockwright/block/shoulder.hpp"
#include "blockwright/block/waist_edge.hpp"
#include "blockwright/geometry/solve.hpp"
#include "rules.hpp"

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
  Point inner_leg, outer_leg, shoulder_point;
};

/// The back shoulder at a slope, its dart opened by turning the outer part about the blade point. A
/// blade too near the shoulder for the mouth gets a dart laid out flat, which the checks refuse.
BackShoulder back_shoulder(Point side_neck, Angle slope, double shoulder, Point blade) {
  const Vec down = down_shoulder(slope);
  const Point inner = side_neck + kShoulderDartPlace * shoulder * down;
  const double leg = distance(inner, blade);
  const double half_mouth = std::min(0.5 * kBackShoulderDart / leg, 1.0);
  const Angle open = Angle::radians(-2.0 * std::asin(half_mouth));
  return {inner, rotated_about(inner, blade, open),
          rotated_about(side_neck + shoulder * down, blade, open)};
}

/// Blade point: on the across-back line, half way out to the armhole. The line lies at a share of
/// the scye depth above the armpit, kept well between armpit and shoulder point.
Point blade_point(const Targets& t, double closed_shoulder_point_y) {
  const double armpit = t.back_length - t.scye_depth;
  const double room = std::max(closed_shoulder_point_y - armpit, 0.0);
  const double above = std::clamp(rules::kAcrossLevel * t.scye_depth,
                                  rules::kLeastAcrossLevel * room, rules::kMostAcrossLevel * room);
  return {kBladePlace * t.across_back, armpit + above};
}

Point blade_point(const Targets& t, Point side_neck, Angle slope) {
  return blade_point(t, (side_neck + t.shoulder * down_shoulder(slope)).y);
}

/// The slope at which the opened back shoulder point lies on the slant's circle.
Angle back_slope_from_slant(const Targets& t, Point side_neck, double slant) {
  const auto beyond = [&](double radians) {
    const Angle slope = Angle::radians(radians);
    const Point blade = blade_point(t, side_neck, slope);
    return norm(back_shoulder(side_neck, slope, t.shoulder, blade).shoulder_point - Point{}) -
           slant;
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

struct Necklines {
  CubicCurve front, back;
};

/// Both necklines are square to their centre line and to the shoulder. On a deep neck under a steep
/// shoulder the front gives up the right angle at the shoulder as far as it must to turn one way
/// only, and the back takes up the difference, so that the closed shoulder stays smooth.
Necklines necklines(const Targets& t, double neck_width, Slopes slopes) {
  const Point front = front_side_neck(t, neck_width);
  const Point back = back_side_neck(t, neck_width);
  const double depth = front.y - t.front_length;
  const double lean =
      std::min(slopes.front.radians(), steepest_neckline({neck_width, depth}).radians());
  const double given_up = slopes.front.radians() - lean;
  const Vec into_front = -direction(Angle::radians(0.5 * std::numbers::pi - lean));
  const Vec into_back =
      -direction(Angle::radians(0.5 * std::numbers::pi - slopes.back.radians() - given_up));
  const Vec to_centre{-1.0, 0.0};
  return {neckline(front, into_front, {0.0, t.front_length}, to_centre),
          neckline(back, into_back, {0.0, t.back_length}, to_centre)};
}

double neckline_length(const Targets& t, double neck_width) {
  const Necklines n = necklines(t, neck_width, shoulder_slopes(t, neck_width));
  return length(n.front, rules::kSolved) + length(n.back, rules::kSolved);
}

/// Neck width: half back plus half front neckline make half the neck base girth.
double neck_width(const Targets& t) {
  const auto excess = [&](double width) { return neckline_length(t, width) - t.neck; };
  return solve_between(
      excess, {2.0 * rules::kLeastNeckWidth * t.neck, 2.0 * rules::kMostNeckWidth * t.neck},
      rules::kSolved);
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
    settlement.adjust(FrontWaistLength, depth - allowed, why);
  } else {
    t.under_bust += allowed - depth;
    settlement.adjust(SideNeckToWaist, allowed - depth, why);
  }
  return t;
}

void report_slopes(const Targets& t, const NeckAndShoulder& n, Settlement& settlement) {
  const std::string why = "a finished shoulder slopes between 8 and 36 degrees";
  if (t.front_slant) {
    const double got = norm(n.front_shoulder_point - Point{});
    if (std::abs(got - *t.front_slant) > 1e-3) {
      settlement.adjust(FrontShoulderSlant, got - *t.front_slant, why);
    }
  }
  if (t.back_slant) {
    const double got = norm(n.back_shoulder_point - Point{});
    if (std::abs(got - *t.back_slant) > 1e-3) {
      settlement.adjust(BackShoulderSlant, got - *t.back_slant, why);
    }
  }
  if (!t.front_slant && !t.back_slant && bounded_slope(t.slope) != t.slope) {
    settlement.adjust(ShoulderSlope, (bounded_slope(t.slope) - t.slope).degrees(), why);
  }
}

/// The frame for targets that are within bounds.
NeckAndShoulder drawn(const Targets& t) {
  NeckAndShoulder n;
  n.neck_width = neck_width(t);
  const Slopes slopes = shoulder_slopes(t, n.neck_width);
  const Necklines lines = necklines(t, n.neck_width, slopes);
  n.front_neck_point = {0.0, t.front_length};
  n.front_side_neck = front_side_neck(t, n.neck_width);
  n.bust_point = bust_point(t);
  n.front_slope = slopes.front;
  n.front_shoulder_point = n.front_side_neck + t.shoulder * down_shoulder(slopes.front);
  n.front_neckline = lines.front;
  n.nape = {0.0, t.back_length};
  n.back_side_neck = back_side_neck(t, n.neck_width);
  n.back_slope = slopes.back;
  n.blade_point = blade_point(t, n.back_side_neck, slopes.back);
  n.across_back_level = n.blade_point.y;
  const BackShoulder back = back_shoulder(n.back_side_neck, slopes.back, t.shoulder, n.blade_point);
  n.dart_inner_leg = back.inner_leg;
  n.dart_outer_leg = back.outer_leg;
  n.back_shoulder_point = back.shoulder_point;
  n.back_neckline = lines.back;
  return n;
}

/// Across back and across front no wider than the shoulders above them.
void bound_across(Targets& t, const NeckAndShoulder& n, Settlement& settlement) {
  const auto bound = [&](double& across, Point shoulder_point, MeasurementName name) {
    const double most = shoulder_point.x + rules::kMostAcrossBeyondShoulder;
    if (across <= most) return;
    settlement.adjust(name, 2.0 * (most - across), "it is wider than the shoulders above it");
    across = most;
  };
  bound(t.across_back, n.back_shoulder_point, AcrossBack);
  bound(t.across_front, n.front_shoulder_point, AcrossFront);
}

}  // namespace

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
