#include "blockwright/block/armhole.hpp"
#include "blockwright/geometry/solve.hpp"
#include "rules.hpp"
#include "stages.hpp"

#include <algorithm>
#include <cmath>
#include <string>

namespace blockwright {
namespace {

using enum MeasurementName;

/// What stays the same while the underarm drops.
struct Frame {
  const Targets& t;
  const NeckAndShoulder& upper;
  Waists waists;
  Point across_front_closed;
  Point across_back;
};

/// A side seam from the side waist point through the bust line's end.
Vec front_side(const Waists& w) {
  return unit(Vec{w.suppression.front_bust - w.front.side_waist.x, w.bust_line});
}

Vec back_side(const Waists& w) {
  return unit(Vec{w.suppression.back_bust - w.back.side_waist.x, w.bust_line});
}

double armpit_level(const Frame& f) {
  return f.waists.front.side_waist.y + f.t.side_length * front_side(f.waists).y;
}

Frame frame(const Targets& t, const NeckAndShoulder& upper, double front_bust) {
  Frame f{t, upper, waists(t, front_bust, upper.bust_point), {}, {}};
  f.across_front_closed = {t.across_front,
                           across_level(t, armpit_level(f), upper.front.shoulder_point)};
  f.across_back = {t.across_back, upper.blade_point.y};
  return f;
}

/// The bust dart at which the across-front point, turned about the bust point, comes to stand at x.
/// Where x is out of its reach the nearest dart is given.
Angle dart_to_reach(Point bust_point, Point across_front, double x) {
  const Vec arm = across_front - bust_point;
  const double turn = std::acos(std::clamp((x - bust_point.x) / norm(arm), -1.0, 1.0));
  return angle_of(arm) - Angle::radians(turn);
}

double reach(Point bust_point, Point across_front, Angle dart) {
  return rotated_about(across_front, bust_point, -dart).x;
}

/// The bust dart that the cup asks for.
Angle cup_dart(double cup) {
  return std::clamp(Angle::degrees(rules::kCupDartDegreesPerMm * cup), rules::kLeastBustDart,
                    rules::kMostBustDart);
}

/// The across-front half width from which the given dart reaches x.
double across_front_that_reaches(Point bust_point, double level, Angle dart, double x) {
  const double down = level - bust_point.y;
  return bust_point.x +
         (x - bust_point.x - down * std::sin(dart.radians())) / std::cos(dart.radians());
}

/// The widest bust dart: within its bound, and such that the across-front point, turned with the
/// dart, stays above the underarm point. `arm` goes from the bust point to the across-front point.
Angle widest_dart(Point bust_point, Vec arm, Point underarm) {
  const double least_up = underarm.y + rules::kLeastAcrossOverUnderarm - bust_point.y;
  const double turned = std::asin(std::clamp(least_up / norm(arm), -1.0, 1.0));
  return std::clamp(angle_of(arm) - Angle::radians(turned), rules::kLeastBustDart,
                    rules::kMostBustDart);
}

/// An across front that was only estimated gives way to the dart that the cup asks for, this far.
double across_front_for_cup(const Frame& f, double x) {
  const double estimated = f.across_front_closed.x;
  if (f.t.across_front_is_taped) return estimated;
  const double wished =
      across_front_that_reaches(f.upper.bust_point, f.across_front_closed.y, cup_dart(f.t.cup), x);
  return std::clamp(wished, estimated - rules::kAcrossFrontGives, estimated);
}

/// Closes across front, armhole width and bust line on each other. The bust dart does it; where the
/// cup asks for more the armhole becomes narrower down to `least_width`; where the dart's bounds
/// are met the armhole width and last the across front give way.
void close_bust_dart(const Frame& f, double least_width, Armholes& d) {
  const Point bust = f.upper.bust_point;
  const double most_width = rules::kMostArmholeWidth * f.t.armhole;
  // Half the girth at the underarm, side seams slanting, less what the back takes.
  const double round = d.front_underarm.x + d.back_underarm.x - f.across_back.x;
  const double asked =
      std::clamp(f.t.upper_chest - f.t.across_back - f.t.across_front, least_width, most_width);
  Point across{across_front_for_cup(f, round - asked), f.across_front_closed.y};
  const Angle by_tape = dart_to_reach(bust, across, round - asked);
  const Angle at_narrowest = dart_to_reach(bust, across, round - least_width);
  const Angle most = widest_dart(bust, across - bust, d.front_underarm);
  const Angle least =
      std::clamp(std::min(at_narrowest, cup_dart(f.t.cup)), rules::kLeastBustDart, most);
  d.bust_dart = std::clamp(by_tape, least, most);
  d.width = std::clamp(round - reach(bust, across, d.bust_dart), least_width, most_width);
  across.x = across_front_that_reaches(bust, across.y, d.bust_dart, round - d.width);
  d.across_front_closed = across;
  d.across_front = rotated_about(across, bust, -d.bust_dart);
  d.back_width = d.back_underarm.x - f.across_back.x;
}

/// What is looked for: how far the underarm drops below the armpit, and the least armhole width.
struct Wish {
  double drop, least_width;
};

Armholes draw(const Frame& f, Wish wish) {
  Armholes d;
  d.across_back = f.across_back;
  d.drop = wish.drop;
  const double seam = f.t.side_length - wish.drop;
  const Vec front = front_side(f.waists);
  const Vec back = back_side(f.waists);
  d.front_underarm = f.waists.front.side_waist + seam * front;
  d.back_underarm = f.waists.back.side_waist + seam * back;
  close_bust_dart(f, wish.least_width, d);
  const Angle open = -d.bust_dart;
  d.front_shoulder_point = rotated_about(f.upper.front.shoulder_point, f.upper.bust_point, open);
  d.front = armhole({d.front_underarm, left_of(front), d.across_front, rotated(Vec{0.0, 1.0}, open),
                     d.front_shoulder_point, left_of(direction(open - f.upper.front.slope))});
  const Vec back_shoulder = rotated(direction(-f.upper.back.slope),
                                    turn_between(f.upper.dart_inner_leg - f.upper.blade_point,
                                                 f.upper.dart_outer_leg - f.upper.blade_point));
  d.back = armhole({d.back_underarm, left_of(back), f.across_back, Vec{0.0, 1.0},
                    f.upper.back.shoulder_point, left_of(back_shoulder)});
  return d;
}

double armhole_length(const Armholes& d) {
  return length(d.front, rules::kSolved) + length(d.back, rules::kSolved);
}

double least_armhole_width(const Frame& f) { return rules::kLeastArmholeWidth * f.t.armhole; }

/// The underarm drops until both armholes together are as long as asked, within its bounds and with
/// the underarm point above the bust line. Where that is not enough the armhole becomes wider:
/// for a large arm one that cannot be deep must be wide.
Armholes with_armhole_closed(const Frame& f) {
  const double over_waist = f.waists.bust_line + rules::kUnderarmOverBustLine;
  const double room = f.t.side_length - over_waist / front_side(f.waists).y;
  const double most = std::min(rules::kMostDrop, room);
  const double least = std::min(rules::kLeastDrop, room);
  const double width = least_armhole_width(f);
  const auto excess = [&](Wish wish) { return armhole_length(draw(f, wish)) - f.t.armhole; };
  if (excess({most, width}) < 0.0) {
    const double widest = rules::kMostArmholeWidth * f.t.armhole;
    const auto excess_at = [&](double w) { return excess({most, w}); };
    return draw(f, {most, solve_between(excess_at, {width, widest}, rules::kSolved)});
  }
  const auto excess_at = [&](double drop) { return excess({drop, width}); };
  return draw(f, {solve_between(excess_at, {least, most}, rules::kSolved), width});
}

/// The front's part of the bust, moved where the back's part of the armhole would otherwise be too
/// narrow or too wide.
double settled_front_bust(const Targets& t, const NeckAndShoulder& upper, Settlement& settlement) {
  const double asked = front_share_of_bust(t);
  const Frame f = frame(t, upper, asked);
  const Armholes d = draw(f, {rules::kUsualDrop, least_armhole_width(f)});
  const double kept = std::clamp(d.back_width, rules::kLeastBackArmhole * d.width,
                                 rules::kMostBackArmhole * d.width);
  const double front = asked + d.back_width - kept;
  if (t.front_bust) {
    settlement.adjust(FrontBustWidth, Length::mm(2.0 * (front - asked)),
                      "the side seam must fall under the arm");
  }
  return front;
}

/// Why the armhole is not as wide as the upper chest asks.
std::string width_cause(const Frame& f, const Armholes& d) {
  const double share = d.width / f.t.armhole;
  if (d.bust_dart >= rules::kMostBustDart) return "the cup asks for more than one dart can take";
  if (share <= rules::kLeastArmholeWidth + rules::kSolved) {
    return "the armhole would be too narrow for its length";
  }
  if (d.drop >= rules::kMostDrop) return "the armhole must be wider to be as long as the arm asks";
  return "the bust dart must be as large as the cup asks";
}

void report(const Frame& f, const Armholes& d, Settlement& settlement) {
  settlement.adjust(AcrossFront, Length::mm(2.0 * (d.across_front_closed.x - f.t.across_front)),
                    f.t.across_front_is_taped
                        ? "the bust dart stays within 3 to 34 degrees"
                        : "the estimate gives way to the dart that the cup asks for");
  const double chest = f.t.across_back + d.across_front_closed.x + d.width;
  settlement.adjust(UpperChestGirth, Length::mm(2.0 * (chest - f.t.upper_chest)),
                    width_cause(f, d));
  settlement.adjust(ArmscyeGirth, Length::mm(armhole_length(d) - f.t.armhole),
                    "the underarm can neither rise nor drop far enough");
  settlement.adjust(SideLength, Length::mm(std::max(0.0, -d.drop)),
                    "the underarm must lie above the bust line");
}

}  // namespace

Armholes armholes(const Targets& t, const NeckAndShoulder& upper, Settlement& settlement) {
  const Frame f = frame(t, upper, settled_front_bust(t, upper, settlement));
  Armholes d = with_armhole_closed(f);
  d.waists = f.waists;
  report(f, d, settlement);
  return d;
}

}  // namespace blockwright
