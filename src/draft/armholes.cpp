#include "blockwright/base/number_text.hpp"
#include "blockwright/block/armhole.hpp"
#include "blockwright/geometry/solve.hpp"
#include "rules.hpp"
#include "stages.hpp"

#include <algorithm>
#include <cmath>

namespace blockwright {
namespace {

using enum MeasurementName;

/// What bounds and settlement are taken from.
struct Frame {
  const Targets& t;
  const NeckAndShoulder& upper;
  const Waists& waists;
  Vec lower_side;  ///< up the side seam below the bust line, on both pieces
  double across_front_level = 0.0;
  double most_across_front = 0.0, most_across_back = 0.0;
  Wish width;
};

/// How much nearer to the shoulder point above it, or beyond it, an across point may lie the wider
/// the armhole under it is.
double nearer_over(double width) {
  return std::max(rules::kNearerPerWidth * (width - rules::kNarrowArmhole), 0.0);
}

/// Half across front and half across back keep to the shoulder points above them.
double most_beside_shoulder(const NeckAndShoulder& upper, double front_width) {
  return upper.front.shoulder_point.x +
         std::min(nearer_over(front_width), rules::kMostAcrossFrontOutside);
}

double most_across_back(const NeckAndShoulder& upper, double back_width) {
  return upper.back.shoulder_point.x - kLeastAcrossInside +
         std::min(nearer_over(back_width), kLeastAcrossInside + rules::kMostAcrossBackOutside);
}

double least_across_back(const NeckAndShoulder& upper) {
  return upper.back.shoulder_point.x - rules::kMostAcrossBackInside;
}

double usual_width(const Targets& t) {
  return rules::kWidthPerArm * t.arm + rules::kWidthBesideArm;
}

Frame frame(const Targets& t, const NeckAndShoulder& upper, const Waists& waists,
            const Assumed& assumed) {
  Frame f{t, upper, waists, {}, 0.0, 0.0, 0.0, {}};
  f.most_across_front = std::min(most_beside_shoulder(upper, assumed.front_width),
                                 t.across_back.mm + rules::kMostFrontOverBack);
  f.most_across_back = most_across_back(upper, assumed.back_width);
  f.lower_side = unit(Vec{waists.suppression.side_run, waists.bust_line});
  const double armpit = waists.front.side_waist.y + t.side_length * f.lower_side.y;
  f.across_front_level = across_level(t, armpit, upper.front.shoulder_point);
  f.width = {usual_width(t), rules::kWidthGives};
  return f;
}

/// The side seam's length above the bust line.
double over_bust_line(const Frame& f, double drop) {
  return f.t.side_length - drop - f.waists.bust_line / f.lower_side.y;
}

/// What both sides together can turn in above the bust line.
double most_take_in(const Frame& f, double drop) {
  const double slant = std::asin(f.lower_side.x);
  const double bent = std::sin(slant) - std::sin(slant - rules::kMostSideBend.radians());
  return std::clamp(2.0 * over_bust_line(f, drop) * bent, 0.0, rules::kMostTakeIn);
}

/// Up the side seam above the bust line, with its part of the take-in.
Vec upper_side(const Frame& f, double drop, double take_in) {
  if (take_in <= 0.0) return f.lower_side;
  const double x = f.lower_side.x - 0.5 * take_in / over_bust_line(f, drop);
  return {x, std::sqrt(std::max(1.0 - x * x, 0.0))};
}

double back_bust(const Frame& f) {
  return f.waists.suppression.back_bust + f.waists.back.given_back;
}

/// What the maker is sure of stays where no bound would have it.
bool is_sure(const Wish& wish) { return wish.gives <= rules::kSureGives; }

/// How far the open across-front point stays over the underarm point: further where a side seam
/// that slants out by more than it can bend back lets the armhole rise towards it.
double least_over_underarm(const Frame& f) {
  const double out = std::asin(f.lower_side.x) - rules::kMostSideBend.radians();
  const double rise = std::clamp(out, 0.0, rules::kMostUnderarmRise.radians());
  return rules::kLeastAcrossOverUnderarm + rules::kRisesAlong * std::sin(rise);
}

Network network(const Frame& f, double drop) {
  const Targets& t = f.t;
  const double over = over_bust_line(f, drop);
  Network n;
  n.across_front = t.across_front;
  n.across_back = t.across_back;
  n.upper_chest = t.upper_chest;
  n.width = f.width;
  n.least_width = rules::kLeastWidthPerArm * t.arm;
  n.dart = t.usual_bust_dart;
  n.most_across_front = f.most_across_front;
  n.least_across_back = least_across_back(f.upper);
  n.most_across_back = f.most_across_back;
  if (is_sure(t.across_front)) n.most_across_front = t.across_front.mm;
  if (is_sure(t.across_back)) n.least_across_back = n.most_across_back = t.across_back.mm;
  n.most_take_in = most_take_in(f, drop);
  n.round = f.waists.suppression.front_bust + back_bust(f) + 2.0 * over * f.lower_side.x;
  n.bust_point = f.upper.bust_point;
  n.over_bust_point = f.across_front_level - f.upper.bust_point.y;
  n.least_over_bust = over + least_over_underarm(f);
  return n;
}

SideSeam side_seam(const Frame& f, double drop, const WaistEdge& waist, Vec upper) {
  SideSeam side{waist.side_waist,
                waist.side_waist + f.waists.bust_line / f.lower_side.y * f.lower_side,
                {},
                upper};
  side.underarm = side.bust + over_bust_line(f, drop) * upper;
  return side;
}

/// A seam that turns in above the bust line would let the front armhole dip below the underarm
/// point: there the sewn armhole leans to the back instead. One that slants far out would let it
/// rise so fast that nothing is left to bend in: there it leans to the front.
Angle lean_of_underarm(Vec upper_side) {
  const double out = std::asin(upper_side.x);
  return Angle::radians(std::clamp(out, 0.0, rules::kMostUnderarmRise.radians()) - out);
}

void draw_front(const Frame& f, Armholes& d) {
  const Angle open = -d.settled.dart;
  const Point bust = f.upper.bust_point;
  d.across_front_closed = {d.settled.across_front, f.across_front_level};
  d.across_front = rotated_about(d.across_front_closed, bust, open);
  d.front_shoulder_point = rotated_about(f.upper.front.shoulder_point, bust, open);
  const Vec upper = d.front_side.upper;
  d.front = armhole({d.front_side.underarm, rotated(left_of(upper), -lean_of_underarm(upper)),
                     d.across_front, rotated(Vec{0.0, 1.0}, open), d.front_shoulder_point,
                     left_of(direction(open - f.upper.front.slope))});
}

void draw_back(const Frame& f, Armholes& d) {
  const Vec upper = d.back_side.upper;
  const Vec shoulder = rotated(direction(-f.upper.back.slope),
                               turn_between(f.upper.dart_inner_leg - f.upper.blade_point,
                                            f.upper.dart_outer_leg - f.upper.blade_point));
  d.across_back = {d.settled.across_back, f.upper.blade_point.y};
  d.back = armhole({d.back_side.underarm, rotated(left_of(upper), lean_of_underarm(upper)),
                    d.across_back, Vec{0.0, 1.0}, f.upper.back.shoulder_point, left_of(shoulder)});
}

double armhole_length(const Armholes& d) {
  return length(d.front, rules::kSolved) + length(d.back, rules::kSolved);
}

Armholes draw(const Frame& f, const Assumed& assumed) {
  Armholes d;
  d.drop = assumed.drop;
  d.settled = settled(network(f, d.drop), assumed.bust_dart);
  const Vec upper = upper_side(f, d.drop, d.settled.take_in);
  d.front_side = side_seam(f, d.drop, f.waists.front, upper);
  d.back_side = side_seam(f, d.drop, f.waists.back, upper);
  d.back_width = d.back_side.underarm.x - d.settled.across_back;
  draw_front(f, d);
  draw_back(f, d);
  return d;
}

double longer_than_asked(const Targets& t, const Armholes& d) {
  return armhole_length(d) - t.armhole;
}

/// How much longer the armhole becomes with the drop, near enough for the next drawing.
constexpr double kLongerPerDrop = 1.7;

/// The underarm point lies above the bust line.
Bounds usual_drops(const Frame& f) {
  const double room = over_bust_line(f, 0.0) - rules::kUnderarmOverBustLine;
  return {std::min(rules::kLeastDrop, room), std::min(rules::kMostDrop, room)};
}

/// The underarm lies low enough under the across-front point that comes down with the bust dart, up
/// to kDropForDart: from there the dart gives way (settled()).
double least_drop(const Armholes& d, Bounds usual) {
  const double for_dart = std::clamp(rules::kDropForDart, usual.low, usual.high);
  return std::clamp(d.drop + d.settled.too_low, usual.low, for_dart);
}

/// The drop at which the armhole's length over what was asked for and the drop over the usual one
/// balance; if its length is out of its bounds then, the drop that brings it there.
double balanced_drop(double drop, double longer) {
  const double balance = drop - (longer + drop - rules::kUsualDrop) / (1.0 + kLongerPerDrop);
  const double longer_then = longer + kLongerPerDrop * (balance - drop);
  const double kept = std::clamp(longer_then, -rules::kArmholeShorter, rules::kArmholeLonger);
  return drop + (kept - longer) / kLongerPerDrop;
}

/// Where no drop is enough, the armhole's usual width gives way: for a large arm one that cannot be
/// deep must be wide. One that is too long at any drop stays long: narrowed, it would take from the
/// upper chest, and a bodice that is tight there rides up.
Armholes drawn_long_enough(Frame f, const Assumed& assumed) {
  Armholes usual = draw(f, assumed);
  const double deeper = kLongerPerDrop * (usual_drops(f).high - assumed.drop);
  const auto spare = [&](const Armholes& d) {
    return longer_than_asked(f.t, d) + deeper + rules::kArmholeShorter;
  };
  if (spare(usual) >= 0.0) return usual;
  const double usual_width = f.width.mm;
  const auto spare_if = [&](double wider) {
    f.width.mm = usual_width + wider;
    return spare(draw(f, assumed));
  };
  // The least that does it.
  double wider = rules::kMostWiderForLength / 8.0;
  while (spare_if(wider) < 0.0 && wider < rules::kMostWiderForLength) wider *= 2.0;
  f.width.mm = usual_width + solve_between(spare_if, {0.0, wider}, rules::kSolved);
  return draw(f, assumed);
}

/// Why a measurement moved: what the tapes alone would leave for the armhole, if that is far from
/// usual; else the dart.
Wording why_moved(const Targets& t, const Settled& s) {
  const double width = t.upper_chest.mm - t.across_back.mm - t.across_front.mm;
  const double usual = usual_width(t);
  if (std::abs(width - usual) < rules::kWidthGives) {
    return "so that the bust dart comes nearer to the " + fixed(t.usual_bust_dart.degrees(), 1) +
           " degrees that are usual for such a bust: it has " + fixed(s.dart.degrees(), 1);
  }
  return "the tapes leave " + Wording(Length::mm(width)) + " for the armhole's width; " +
         (width < usual ? "such an arm needs about " : "usual for such an arm is about ") +
         Length::mm(usual);
}

/// How wide the back's part of the armhole is where the across-back point lies that far inside the
/// straight line from underarm to shoulder point, of that line: so hollow is the back armhole.
double back_width_for(const Armholes& d, double inside_chord) {
  const Vec chord = d.back.end() - d.back.start();
  const double high = std::max(chord.y, 1.0);
  const double inside_shoulder = d.back.end().x - d.across_back.x;
  const double up = std::clamp((d.across_back.y - d.back.start().y) / high, 0.0, 0.8);
  return (inside_chord * dot(chord, chord) / high - up * inside_shoulder) / (1.0 - up);
}

/// Keeps the back's part of the armhole within its share, and there the back armhole hollow.
double kept_back_width(const Armholes& d, double back_width) {
  // Measurements that are all sure may leave no armhole at all: the checks refuse it.
  const double width = std::max(d.settled.width, 0.0);
  const Bounds share{rules::kLeastBackArmhole * width, rules::kMostBackArmhole * width};
  const auto hollow = [&](double inside_chord) {
    return std::clamp(back_width_for(d, inside_chord), share.low, share.high);
  };
  return std::clamp(back_width, hollow(rules::kLeastAcrossInsideChord),
                    hollow(rules::kMostAcrossInsideChord));
}

/// The front's part of the bust is moved where the back's part of the armhole would otherwise be
/// too narrow or too wide.
double front_bust_for(const Targets& t, const Armholes& d, double front_bust) {
  const double asked = front_share_of_bust(t);
  const double back_width = d.back_width + front_bust - asked;
  return asked + back_width - kept_back_width(d, back_width);
}

/// The bounds follow what was assumed, so that they are met as nearly as that was. In mm.
constexpr double kAtBound = 1e-3;
bool is_at(double value, double bound) { return std::abs(value - bound) < kAtBound; }

Wording why_across_back_moved(const Targets& t, const NeckAndShoulder& upper, const Armholes& d) {
  const Settled& s = d.settled;
  if (is_at(s.across_back, most_across_back(upper, d.back_width))) {
    return "it would come too near to the shoulder point above it";
  }
  if (is_at(s.across_back, least_across_back(upper))) {
    return "it would lie too far inside the shoulder point above it";
  }
  return why_moved(t, s);
}

Wording why_across_front_moved(const Targets& t, const NeckAndShoulder& upper, const Armholes& d) {
  const Settled& s = d.settled;
  if (is_at(s.across_front, most_beside_shoulder(upper, s.width - d.back_width))) {
    return "it is wider than the shoulders above it";
  }
  if (is_at(s.across_front, t.across_back.mm + rules::kMostFrontOverBack)) {
    return "it is wider than across back, and arms reach forward";
  }
  return why_moved(t, s);
}

/// Within its room the armhole's length is a balance; beyond it nothing else could give.
const char* why_armhole_moved(double by) {
  if (by < -rules::kArmholeShorter - rules::kSolvedLength) {
    return "neither the drop of the underarm nor the armhole's width can give further";
  }
  if (by > rules::kArmholeLonger + rules::kSolvedLength) {
    return "the underarm cannot lie higher, and a narrower armhole would take from the upper chest";
  }
  return "the armhole's length and the drop of the underarm meet half way";
}

}  // namespace

Armholes armholes(const Targets& t, const NeckAndShoulder& upper, const Waists& waists,
                  const Assumed& assumed) {
  return drawn_long_enough(frame(t, upper, waists, assumed), assumed);
}

void guess_armholes(const Targets& t, Assumed& assumed) {
  assumed.bust_dart = std::clamp(t.usual_bust_dart, rules::kLeastBustDart, rules::kMostBustDart);
  assumed.across_back = t.across_back.mm;
  assumed.front_bust = front_share_of_bust(t);
  assumed.drop = rules::kUsualDrop;
  assumed.underarm = t.side_length - assumed.drop - t.under_bust;
  assumed.front_width = assumed.back_width = rules::kNarrowArmhole;
}

void correct_armholes(const Targets& t, const Drawn& drawn, Assumed& assumed) {
  const Armholes& d = drawn.lower;
  const Bounds usual = usual_drops(frame(t, drawn.upper, drawn.waists, assumed));
  assumed.drop =
      std::clamp(balanced_drop(d.drop, longer_than_asked(t, d)), least_drop(d, usual), usual.high);
  assumed.bust_dart = d.settled.dart;
  assumed.across_back = d.settled.across_back;
  assumed.front_width = d.settled.width - d.back_width;
  assumed.back_width = d.back_width;
  assumed.underarm = d.back_side.underarm.y - d.back_side.bust.y;
  assumed.front_bust = front_bust_for(t, d, assumed.front_bust);
}

void account_for_armholes(const Targets& t, const Drawn& drawn, Ledger& ledger) {
  const auto& [upper, waists, d] = drawn;
  const Settled& s = d.settled;
  ledger.adjust(AcrossBack, Length::mm(2.0 * (s.across_back - t.across_back.mm)),
                why_across_back_moved(t, upper, d));
  ledger.adjust(AcrossFront, Length::mm(2.0 * (s.across_front - t.across_front.mm)),
                why_across_front_moved(t, upper, d));
  ledger.adjust(UpperChestGirth, Length::mm(2.0 * (s.chest() - t.upper_chest.mm)), why_moved(t, s));
  const double longer = longer_than_asked(t, d);
  ledger.adjust(ArmscyeGirth, Length::mm(longer), why_armhole_moved(longer));
  ledger.adjust(SideLength, Length::mm(std::max(0.0, -d.drop)),
                "the underarm must lie above the bust line");
  if (t.front_bust) {
    ledger.adjust(FrontBustWidth, Length::mm(2.0 * (waists.suppression.front_bust - *t.front_bust)),
                  "the side seam must fall under the arm");
  }
}

}  // namespace blockwright
