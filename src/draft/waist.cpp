#include "blockwright/geometry/solve.hpp"
#include "rules.hpp"
#include "stages.hpp"

#include <algorithm>
#include <cmath>

namespace blockwright {
namespace {

/// Passes until side seam and side waist point agree; each gains two digits.
constexpr int kSidePasses = 12;

/// The front waist at a dart angle: square to the centre front, to both legs and to the side seam.
WaistEdge front_waist_at(const Suppression& s, Point bust_point, double leg, double angle) {
  const double half = 0.5 * angle;
  WaistDart dart{bust_point, bust_point + leg * Vec{-std::sin(half), -std::cos(half)},
                 bust_point + leg * Vec{std::sin(half), -std::cos(half)}, Angle::radians(angle)};
  const double side_x = s.front_bust - s.side_run;
  const double width = side_x - dart.outer_leg.x;
  // The side seam's slope and the side waist point's height depend on each other a little.
  double side_slope = -std::atan(s.side_run / leg);
  Point side;
  for (int pass = 0; pass < kSidePasses; ++pass) {
    side = {side_x, dart.outer_leg.y + waist_rise(width, half, side_slope)};
    side_slope = -std::atan(s.side_run / (bust_point.y - side.y));
  }
  WaistEdge edge;
  edge.side_waist = side;
  edge.stretches = {Path({waist_stretch({}, 0.0, dart.inner_leg, -half)}),
                    Path({waist_stretch(dart.outer_leg, half, side, side_slope)})};
  edge.darts = {dart};
  return edge;
}

/// The front waist without a dart: it dips under the bust point and runs on to the side.
WaistEdge undarted_front(const Suppression& s, Point bust_point, double leg) {
  const Point dip = bust_point - Vec{0.0, leg};
  const double side_x = s.front_bust - s.side_run;
  const double bend = undarted_bend(dip.x, side_x, leg);
  double side_slope = -std::atan(s.side_run / leg);
  for (int pass = 0; pass < kSidePasses; ++pass) {
    side_slope = -std::atan(s.side_run / (leg - waist_rise(bend, 0.0, side_slope)));
  }
  Path path({waist_stretch({}, 0.0, dip, 0.0)});
  path.add(undarted_stretch(dip, side_x, side_slope, bend));
  return {{}, {path}, path.end()};
}

WaistEdge undarted_back(const Suppression& s, double bust_line) {
  const double side_x = s.back_bust - s.side_run;
  const double side_slope = -std::atan(s.side_run / bust_line);
  const Path path = undarted_stretch({}, side_x, side_slope, undarted_bend(0.0, side_x, bust_line));
  return {{}, {path}, path.end()};
}

/// Height of the bust line over the side waist point, and on the back's centre.
struct BackLevels {
  double over_side_waist;
  double bust_line;
};

/// The back waist with its intake shared equally by the darts.
WaistEdge back_waist_at(const Suppression& s, const BackLevels& levels, double intake,
                        const std::vector<double>& places) {
  const double side_x = s.back_bust - s.side_run;
  const double side_slope = -std::atan(s.side_run / levels.over_side_waist);
  const double each = intake / static_cast<double>(places.size());
  WaistEdge edge;
  Point at;
  double slope = 0.0;
  for (std::size_t i = 0; i < places.size(); ++i) {
    const double apex_y = levels.bust_line - rules::kBackDartLower -
                          static_cast<double>(i) * rules::kOuterBackDartLower;
    const double half = std::atan(0.5 * each / apex_y);
    const double inner_x = places[i] - 0.5 * each;
    const Point inner{inner_x, at.y + waist_rise(inner_x - at.x, slope, -half)};
    const Point outer{places[i] + 0.5 * each, inner.y};
    const Point apex{places[i], apex_y};
    edge.stretches.push_back(Path({waist_stretch(at, slope, inner, -half)}));
    edge.darts.push_back({apex, inner, outer, turn_between(inner - apex, outer - apex)});
    at = outer;
    slope = half;
  }
  edge.side_waist = {side_x, at.y + waist_rise(side_x - at.x, slope, side_slope)};
  edge.stretches.push_back(Path({waist_stretch(at, slope, edge.side_waist, side_slope)}));
  return edge;
}

/// Intake of the widest waist dart of a length. What darts cannot take, the side seams do.
double widest_dart(double leg) {
  return 2.0 * leg * std::sin(0.5 * rules::kMostWaistDart.radians());
}

/// Shares out a waist that is smaller than the bust.
Suppression darted_suppression(const Targets& t, double front_bust) {
  const double all = t.bust - t.waist;
  // Of the whole slant allowed from underarm to waist, the part below the bust line.
  const double most_run =
      rules::kMostSideSlant * t.under_bust / std::max(t.under_bust, t.side_length);
  const double front = std::min(kFrontDartShare * all, widest_dart(t.under_bust));
  const double run = std::min(kSideShare * all, most_run);
  const double back = std::min(all - front - 2.0 * run,
                               2.0 * widest_dart(t.under_bust - rules::kOuterBackDartLower));
  Suppression s;
  s.front_bust = front_bust;
  s.back_bust = t.bust - front_bust;
  s.side_run = 0.5 * (all - front - back);
  s.front_waist = front_bust - s.side_run - front;
  s.back_waist = t.waist - s.front_waist;
  return s;
}

WaistEdge front_waist(const Suppression& s, Point bust_point, double under_bust) {
  const double straight = s.front_bust - s.side_run - s.front_waist;
  const auto excess = [&](double angle) {
    return sewn_length(front_waist_at(s, bust_point, under_bust, angle)) - s.front_waist;
  };
  // The waist edge is hardly longer than it is wide, so the answer lies near the straight one.
  const double near = 2.0 * std::asin(std::min(0.5 * straight / under_bust, 1.0));
  const double angle = solve_between(excess, {0.6 * near, 1.3 * near + 0.2}, 1e-10);
  return front_waist_at(s, bust_point, under_bust, angle);
}

/// The back waist with its darts at the given places.
WaistEdge back_waist_with(const Suppression& s, const BackLevels& levels,
                          const std::vector<double>& places) {
  const double straight = s.back_bust - s.side_run - s.back_waist;
  const auto excess = [&](double intake) {
    return sewn_length(back_waist_at(s, levels, intake, places)) - s.back_waist;
  };
  const double intake =
      solve_between(excess, {0.7 * straight, 1.3 * straight + 15.0}, rules::kSolved);
  return back_waist_at(s, levels, intake, places);
}

/// The back waist with one dart, or two where one would be too wide.
WaistEdge one_or_two_back_darts(const Suppression& s, double bust_line) {
  const double width = s.back_bust - s.side_run;
  const std::vector<double> one{rules::kOneBackDart * width};
  // The side waist point lies a few mm off the level of the waist, and the bust line with it.
  const WaistEdge first = back_waist_with(s, {bust_line, bust_line}, one);
  const BackLevels levels{bust_line, bust_line + first.side_waist.y};
  WaistEdge single = back_waist_with(s, levels, one);
  const WaistDart& dart = single.darts.front();
  if (distance(dart.inner_leg, dart.outer_leg) <= rules::kMostBackDart) return single;
  return back_waist_with(s, levels,
                         {rules::kFirstBackDart * width, rules::kSecondBackDart * width});
}

Waists darted(const Targets& t, double front_bust, Point bust_point) {
  Waists w;
  w.suppression = darted_suppression(t, front_bust);
  w.front = front_waist(w.suppression, bust_point, t.under_bust);
  w.bust_line = bust_point.y - w.front.side_waist.y;
  w.back = one_or_two_back_darts(w.suppression, w.bust_line);
  return w;
}

/// Both waist edges without darts, their sides running in by `side_run` (out if negative).
Waists undarted_at(const Targets& t, double front_bust, Point bust_point, double side_run) {
  Waists w;
  w.suppression = {front_bust, t.bust - front_bust, side_run, 0.0, 0.0};
  w.front = undarted_front(w.suppression, bust_point, t.under_bust);
  w.bust_line = bust_point.y - w.front.side_waist.y;
  w.back = undarted_back(w.suppression, w.bust_line);
  return w;
}

Waists undarted(const Targets& t, double front_bust, Point bust_point) {
  const auto excess = [&](double side_run) {
    const Waists w = undarted_at(t, front_bust, bust_point, side_run);
    return sewn_length(w.front) + sewn_length(w.back) - t.waist;
  };
  // The edges are a little longer than they are wide, so the sides flare a little less.
  const double straight = 0.5 * (t.bust - t.waist);
  const double side_run = solve_between(excess, {straight - 5.0, straight + 40.0}, rules::kSolved);
  return undarted_at(t, front_bust, bust_point, side_run);
}

}  // namespace

double front_share_of_bust(const Targets& t) {
  if (t.front_bust) return *t.front_bust;
  const double more =
      rules::kFrontShareBase + rules::kFrontSharePerCup * (t.cup - rules::kFrontShareCupZero);
  return 0.5 * t.bust + std::clamp(more, rules::kLeastFrontShare, rules::kMostFrontShare);
}

Waists waists(const Targets& t, double front_bust, Point bust_point) {
  const double front_dart = kFrontDartShare * (t.bust - t.waist);
  return front_dart < kLeastMouth ? undarted(t, front_bust, bust_point)
                                  : darted(t, front_bust, bust_point);
}

}  // namespace blockwright
