#include "blockwright/block/kinds.hpp"
#include "rules.hpp"
#include "stages.hpp"

#include <algorithm>
#include <cmath>

namespace blockwright {
namespace {

/// Passes until side seam and side waist point agree; each gains two digits, and some agree sooner.
constexpr int kSidePasses = 8;

/// What contradicts itself beyond all bodies still gets a dart, which the checks refuse: its legs
/// at least so long in mm, its half mouth at most so wide against them.
constexpr double kLeastLeg = 10.0;
constexpr double kWidestMouth = 0.9;
/// ... and its side waist point lies so near the level of the waist, in mm: on bodies within 20.
constexpr double kFarthestOffLevel = 100.0;

/// Intake of the widest waist dart of a length.
double widest_dart(double leg, Angle most = rules::kMostWaistDart) {
  return 2.0 * std::max(leg, 0.0) * std::sin(0.5 * most.radians());
}

/// What the darts of a waist edge take in, from centre to side.
using Intakes = Few<double, kWaistDartRoom>;
static_assert(rules::kMostBackDarts <= kWaistDartRoom && rules::kMostFrontDarts <= kWaistDartRoom);

/// How an intake is shared: by up to `most` darts, none wider than `widest` while more may be
/// opened, none but the first narrower than `least`.
struct Sharing {
  std::size_t most = 1;
  double widest = 0.0, least = 0.0;
};

/// A further dart opens faster than the intake grows, until all are equally wide, so that
/// small changes of the intake make small changes of every dart.
Intakes shared_intake(double intake, const Sharing& by) {
  Intakes shares{intake};
  while (shares.size() < by.most && intake > by.widest * static_cast<double>(shares.size())) {
    const auto count = static_cast<double>(shares.size());
    const double further =
        std::min(rules::kFurtherDartOpens * (intake - by.widest * count), intake / (count + 1.0));
    if (further < by.least) break;
    std::ranges::fill(shares, (intake - further) / count);
    shares.push_back(further);
  }
  return shares;
}

/// What a waist dart takes in, the length of its legs, and by how many radians its axis leans.
struct DartForm {
  double intake = 0.0, leg = 0.0, lean = 0.0;
};

/// A waist dart under its apex, its legs either side of its axis.
WaistDart dart_under(Point apex, const DartForm& form) {
  const double half_mouth = std::clamp(0.5 * form.intake / form.leg, 0.0, kWidestMouth);
  const Vec down = {std::sin(form.lean), -std::cos(form.lean)};
  const Vec along = form.leg * std::sqrt(1.0 - half_mouth * half_mouth) * down;
  const Vec aside = form.leg * half_mouth * left_of(down);
  return {apex, apex + along - aside, apex + along + aside,
          Angle::radians(2.0 * std::asin(half_mouth))};
}

double half_angle(const WaistDart& dart) { return 0.5 * dart.angle.radians(); }

/// Where the waist edge goes on from a dart: its end and slope.
struct WaistEnd {
  Point at;
  double slope = 0.0;
};

/// Adds a stretch and the dart that it runs into, square to both.
WaistEnd add_dart(WaistEdge& edge, WaistEnd from, const WaistDart& dart, double lean) {
  edge.curves.push_back(
      waist_stretch(from.at, from.slope, dart.inner_leg, lean - half_angle(dart)));
  edge.darts.push_back(dart);
  return {dart.outer_leg, lean + half_angle(dart)};
}

/// The dart over a place of the waist, its apex on the height of `over`, whose legs end where a
/// square waist comes to from `from`; their length is found.
WaistDart dart_after(WaistEnd from, Point over, DartForm form) {
  form.leg = std::max(over.y - from.at.y, kLeastLeg);
  const auto drawn = [&] {
    return dart_under(over - Vec{form.leg * std::sin(form.lean), 0.0}, form);
  };
  for (int pass = 0; pass < kSidePasses; ++pass) {
    const WaistDart dart = drawn();
    const double level = from.at.y + waist_rise(dart.inner_leg.x - from.at.x, from.slope,
                                                form.lean - half_angle(dart));
    const double leg = std::max(form.leg + dart.inner_leg.y - level, kLeastLeg);
    if (std::abs(leg - form.leg) < rules::kSolved) return dart;
    form.leg = leg;
  }
  return drawn();
}

/// How the last of several darts leans, in radians: not at all once it is as wide as the others,
/// but as it opens it is square to the waist as that runs without it, so that it bends no edge.
double lean_of_opening(const Intakes& intakes, WaistEnd from, WaistEnd side, double x) {
  const double opened = intakes.back() / intakes.front();
  const double way = (x - from.at.x) / (side.at.x - from.at.x);
  return (1.0 - opened) * (from.slope + way * (side.slope - from.slope));
}

/// The front waist, its intake shared by its darts: square to the centre front, to all legs and to
/// the side seam. The legs of the dart under the bust point end at `leg` from it.
WaistEdge front_waist(const Suppression& s, Point bust_point, double leg, const Assumed& assumed) {
  const Intakes intakes = shared_intake(
      assumed.front_intake, {rules::kMostFrontDarts, widest_dart(rules::kSecondFrontDartLeg * leg),
                             assumed.least_further_dart});
  WaistEdge edge;
  WaistEnd end = add_dart(edge, {}, dart_under(bust_point, {intakes.front(), leg, 0.0}), 0.0);
  const double side_x = s.front_bust - s.side_run;
  if (intakes.size() > 1) {
    const Point apex{bust_point.x + rules::kSecondFrontDart * (side_x - bust_point.x),
                     bust_point.y - (1.0 - rules::kSecondFrontDartLeg) * leg};
    const WaistEnd side{{side_x, 0.0}, -std::atan(s.side_run / leg)};
    const double lean = lean_of_opening(intakes, end, side, apex.x);
    end = add_dart(edge, end, dart_after(end, apex, {intakes.back(), 0.0, lean}), lean);
  }
  // The side seam's slope and the side waist point's height depend on each other a little.
  double side_slope = -std::atan(s.side_run / leg);
  for (int pass = 0; pass < kSidePasses; ++pass) {
    edge.side_waist = {side_x, end.at.y + waist_rise(side_x - end.at.x, end.slope, side_slope)};
    const double slope = -std::atan(s.side_run / (bust_point.y - edge.side_waist.y));
    if (std::abs(slope - side_slope) < rules::kSolvedAngle) break;
    side_slope = slope;
  }
  edge.curves.push_back(waist_stretch(end.at, end.slope, edge.side_waist, side_slope));
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
  WaistEdge edge;
  edge.curves.push_back(waist_stretch({}, 0.0, dip, 0.0));
  add_undarted(edge, dip, side_x, side_slope, bend);
  return edge;
}

WaistEdge undarted_back(const Suppression& s, double bust_line) {
  const double side_x = s.back_bust - s.side_run;
  const double side_slope = -std::atan(s.side_run / bust_line);
  WaistEdge edge;
  add_undarted(edge, {}, side_x, side_slope, undarted_bend(0.0, side_x, bust_line));
  return edge;
}

/// Levels of the back: the bust line's height over the side waist point, and the height on the
/// centre of the bust line and of the underarm line.
struct BackLevels {
  double over_side_waist = 0.0, bust_line = 0.0, underarm = 0.0;
};

/// Where the stitching of the i-th back dart ends. `taken_out` is what all take out between bust
/// line and waist: in proportion to it and to their height over the bust line they are given back
/// there.
double back_dart_point(const BackLevels& levels, double taken_out, std::size_t i) {
  const double room = levels.bust_line * rules::kMostGivenBack / std::max(taken_out, kLeastMouth);
  return std::min(levels.underarm - rules::kBackDartUnderUnderarm,
                  levels.bust_line + std::min(rules::kBackDartOverBustLine, room)) -
         (i > 0 ? rules::kOuterBackDartLower : 0.0);
}

/// What the back's darts take out between bust line and waist.
double taken_out_of_back(const Suppression& s) { return s.back_bust - s.side_run - s.back_waist; }

/// Where the i-th back dart is, of the waist edge from the centre: on its way to where it is with a
/// dart more as that one opens.
double back_dart_place(const Intakes& intakes, std::size_t i) {
  const std::size_t last = intakes.size() - 1;
  const double at_full = rules::kBackDartPlaces[last][i];
  if (last == 0 || i == last) return at_full;
  const double opened = intakes[last] / intakes.front();
  return rules::kBackDartPlaces[last - 1][i] +
         opened * (at_full - rules::kBackDartPlaces[last - 1][i]);
}

/// A dart whose stitching ends at that height, `hold_back` short of its apex. At least half of its
/// legs is stitched.
Point back_apex(double x, double point, double hold_back) {
  return {x, point + std::min(hold_back, std::max(point, 0.0))};
}

/// What a dart takes out of the bust line as it is stitched.
double taken_on_bust_line(const WaistDart& dart, const BackLevels& levels, double hold_back) {
  const double bust_line = levels.bust_line;
  const Point middle = midpoint(dart.inner_leg, dart.outer_leg);
  const Point point = dart.apex + hold_back * unit(middle - dart.apex);
  if (point.y <= bust_line) return 0.0;
  const auto at_line = [&](Point leg) {
    return point.x + (leg.x - point.x) * (point.y - bust_line) / (point.y - leg.y);
  };
  return at_line(dart.outer_leg) - at_line(dart.inner_leg);
}

/// The back waist with its intake shared by its darts. What they take out of the bust line is given
/// back there.
WaistEdge back_waist(const Suppression& s, const BackLevels& levels, const Assumed& assumed) {
  const Intakes intakes =
      shared_intake(assumed.back_intake,
                    {rules::kMostBackDarts, rules::kMostBackDart, assumed.least_further_dart});
  const double width = s.back_bust - s.side_run;
  const double hold_back = position_on(kBodiceBack, BlockEdge::Waist).usual_hold_back;
  WaistEdge edge;
  WaistEnd end;
  const double side_slope = -std::atan(s.side_run / levels.over_side_waist);
  const double taken_out = taken_out_of_back(s);
  for (std::size_t i = 0; i < intakes.size(); ++i) {
    const Point apex = back_apex(width * back_dart_place(intakes, i),
                                 back_dart_point(levels, taken_out, i), hold_back);
    const bool opens = i > 0 && i + 1 == intakes.size();
    const WaistEnd side{{width + edge.given_back, 0.0}, side_slope};
    const double lean = opens ? lean_of_opening(intakes, end, side, apex.x) : 0.0;
    const WaistDart dart = dart_after(end, apex, {intakes[i], 0.0, lean});
    end = add_dart(edge, end, dart, lean);
    edge.given_back += taken_on_bust_line(dart, levels, hold_back);
  }
  const double side_x = width + edge.given_back;
  edge.side_waist = {side_x, end.at.y + waist_rise(side_x - end.at.x, end.slope, side_slope)};
  edge.curves.push_back(waist_stretch(end.at, end.slope, edge.side_waist, side_slope));
  return edge;
}

/// What the darts of front and back take out.
struct TakenOut {
  double front = 0.0, back = 0.0;
};

/// ... when all have that angle.
TakenOut taken_out_by_darts(double leg, Angle angle) {
  return {static_cast<double>(rules::kMostFrontDarts) *
              widest_dart(rules::kSecondFrontDartLeg * leg, angle),
          static_cast<double>(rules::kMostBackDarts) * widest_dart(leg, angle)};
}

/// Shares out a waist that is smaller than the bust: what darts of the usual width and sides of
/// the usual slant leave over, wider darts take, and what those leave, the sides.
Suppression darted_suppression(const Targets& t, double front_bust) {
  const double all = t.bust - t.waist;
  const double most_run = t.under_bust * std::tan(rules::kMostSideSlant.radians());
  const double sides = 2.0 * std::min(kSideShare * all, most_run);
  const TakenOut usual = taken_out_by_darts(t.under_bust, rules::kMostWaistDart);
  const TakenOut most = taken_out_by_darts(t.under_bust, rules::kWidestWaistDart);
  double front = std::min(kFrontDartShare * all, usual.front);
  double back = std::min(all - front - sides, usual.back);
  const TakenOut room{most.front - front, most.back - back};
  const double wider = std::min(1.0, (all - front - back - sides) / (room.front + room.back));
  front += wider * room.front;
  back += wider * room.back;
  Suppression s;
  s.front_bust = front_bust;
  s.back_bust = t.bust - front_bust;
  s.side_run = 0.5 * (all - front - back);
  s.front_waist = front_bust - s.side_run - front;
  s.back_waist = t.waist - s.front_waist;
  return s;
}

/// What a piece's waist edge would take in if it ran straight to the side waist point.
double straight_front_intake(const Suppression& s) {
  return s.front_bust - s.side_run - s.front_waist;
}

/// Darts that reach above the bust line take in more, by what they are given back there.
double straight_back_intake(const Suppression& s, const BackLevels& levels) {
  const double taken_out = taken_out_of_back(s);
  const double point = back_dart_point(levels, taken_out, 0);
  const double given_back = std::max(point - levels.bust_line, 0.0) / point;
  return taken_out / (1.0 - given_back);
}

/// What a piece's waist edge is to be when sewn, and what it would take in if it ran straight.
struct WaistWanted {
  double sewn = 0.0, straight_intake = 0.0;
};

/// The intake that leaves the sewn waist its length: so much more as it is too long. The edge is
/// hardly longer than it is wide, so it lies near the straight difference.
double intake_for(const WaistEdge& drawn, double intake, const WaistWanted& wanted) {
  // What contradicts itself may have less than nothing to take in.
  const auto [least, most] =
      std::minmax({0.7 * wanted.straight_intake, 1.3 * wanted.straight_intake + 15.0});
  return std::clamp(intake + sewn_length(drawn) - wanted.sewn, least, most);
}

/// Levels over the back's centre: the side waist point lies a few mm off the level of the waist,
/// and the bust line with it.
BackLevels back_levels(const Assumed& assumed, double bust_line) {
  const double level = bust_line + assumed.back_side_waist;
  return {bust_line, level, level + assumed.underarm};
}

Waists darted(const Targets& t, const Assumed& assumed, Point bust_point) {
  Waists w;
  w.suppression = darted_suppression(t, assumed.front_bust);
  w.front = front_waist(w.suppression, bust_point, t.under_bust, assumed);
  w.bust_line = bust_point.y - w.front.side_waist.y;
  w.back = back_waist(w.suppression, back_levels(assumed, w.bust_line), assumed);
  return w;
}

/// Both waist edges without darts, their sides running in by `side_run` (out if negative).
Waists undarted(const Targets& t, const Assumed& assumed, Point bust_point) {
  Waists w;
  w.suppression = {assumed.front_bust, t.bust - assumed.front_bust, assumed.side_run, 0.0, 0.0};
  w.front = undarted_front(w.suppression, bust_point, t.under_bust);
  w.bust_line = bust_point.y - w.front.side_waist.y;
  w.back = undarted_back(w.suppression, w.bust_line);
  return w;
}

/// The edges are a little longer than they are wide, so the sides flare a little less.
double side_run_for(const Targets& t, const Waists& drawn) {
  const double longer = sewn_length(drawn.front) + sewn_length(drawn.back) - t.waist;
  const double straight = 0.5 * (t.bust - t.waist);
  return std::clamp(drawn.suppression.side_run + 0.5 * longer, straight - 5.0, straight + 40.0);
}

bool has_darts(const Targets& t) { return kFrontDartShare * (t.bust - t.waist) >= kLeastMouth; }

}  // namespace

double front_share_of_bust(const Targets& t) {
  if (t.front_bust) return *t.front_bust;
  const double more =
      rules::kFrontShareBase + rules::kFrontSharePerCup * (t.cup - rules::kFrontShareCupZero);
  return 0.5 * t.bust + std::clamp(more, rules::kLeastFrontShare, rules::kMostFrontShare);
}

Waists waists(const Targets& t, const Assumed& assumed, Point bust_point) {
  return has_darts(t) ? darted(t, assumed, bust_point) : undarted(t, assumed, bust_point);
}

void guess_waists(const Targets& t, Assumed& assumed) {
  const Suppression s = darted_suppression(t, assumed.front_bust);
  assumed.front_intake = straight_front_intake(s);
  assumed.back_intake = straight_back_intake(s, back_levels(assumed, t.under_bust));
  assumed.side_run = 0.5 * (t.bust - t.waist);
}

void correct_waists(const Targets& t, const Waists& w, Assumed& assumed) {
  if (!has_darts(t)) {
    assumed.side_run = side_run_for(t, w);
    return;
  }
  const Suppression& s = w.suppression;
  assumed.front_intake =
      intake_for(w.front, assumed.front_intake, {s.front_waist, straight_front_intake(s)});
  assumed.back_intake =
      intake_for(w.back, assumed.back_intake,
                 {s.back_waist, straight_back_intake(s, back_levels(assumed, w.bust_line))});
  assumed.back_side_waist = std::clamp(w.back.side_waist.y, -kFarthestOffLevel, kFarthestOffLevel);
}

}  // namespace blockwright
