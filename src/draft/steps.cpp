#include "blockwright/base/number_text.hpp"
#include "blockwright/block/kinds.hpp"
#include "blockwright/block/neckline.hpp"
#include "blockwright/block/shoulder.hpp"
#include "rules.hpp"
#include "stages.hpp"

#include <cmath>

namespace blockwright {
namespace {

/// Collects the steps of one piece.
struct Teller {
  DraftLog& log;
  const Piece& piece;
  void tell(const std::string& point, Point at, const std::string& rule,
            const std::vector<double>& lengths, const std::string& closed_by) {
    log.push_back({piece.name, point, at, rule, lengths, closed_by});
  }
};

std::string degrees(Angle angle) { return fixed(angle.degrees(), 1) + " degrees"; }

/// "0.3" of a share that the draft has by rule.
std::string share(double of_one) { return trimmed(of_one, 2); }

/// `more` is how the piece slopes against the one slope that was taken.
std::string shoulder_closer(bool slant, const char* slant_key, const char* more) {
  if (slant) return std::string("shoulder_length and ") + slant_key;
  return "shoulder_length and shoulder_slope; rule: " +
         trimmed(rules::kFrontSlopesMore.degrees(), 1) + " degrees " + more;
}

std::string across_level_rule() {
  return "rule: " + share(rules::kAcrossLevel) + " of the scye depth above the armpit";
}

std::string shoulder_dart_rule() {
  return "rule: " + share(kShoulderDartPlace) + " of the shoulder";
}

Point middle_of(const Curve& curve) { return point_at(curve, 0.5); }

void tell_centre_waist(Teller& teller, const std::string& centre) {
  teller.tell("centre waist", {},
              "draw a long upright line, the " + centre +
                  "; mark the centre waist on it and rule a level line from it to the side",
              {}, "the start");
}

void tell_neckline(Teller& teller, const CubicCurve& curve, double neck) {
  teller.tell("neckline", middle_of(curve),
              "draw the neckline from the side neck point to the centre, square to the shoulder at "
              "the top and to the centre line at the foot, through this point; it is {0} long and "
              "front and back together must measure {1}",
              {length(curve), neck},
              "neck_base_girth; rule: front and back bend alike at the shoulder");
}

void tell_front_upper(Teller& front, const Targets& t, const NeckAndShoulder& n) {
  tell_centre_waist(front, "centre front");
  front.tell("front neck point", n.front.centre_neck, "go {0} up the centre front",
             {t.front_length}, "front_waist_length");
  front.tell(
      "bust point", n.bust_point,
      "rule a line {0} from the centre front and parallel to it; go {1} up it from the level "
      "of the waist, which dips {2} below it there, and rule the level bust line through the point",
      {n.bust_point.x, n.bust_point.y, kFrontWaistDip},
      "bust_point_width; side_neck_to_waist less side_neck_to_bust_point; rule: the dip");
  front.tell("side neck point", n.front.side_neck,
             "rule a line {0} from the centre front; set the compass to {1}, stand it on the bust "
             "point and cross the line above",
             {n.neck_width, t.neck_to_bust}, "neck_base_girth and side_neck_to_bust_point");
  front.tell(
      "shoulder point, dart closed", n.front.shoulder_point,
      "compass {0} about the side neck point, compass {1} about the centre waist: they cross "
      "outside; the shoulder slopes " +
          degrees(n.front.slope),
      {t.shoulder, norm(n.front.shoulder_point - Point{})},
      shoulder_closer(t.front_slant.has_value(), "front_shoulder_slant", "more in front"));
  tell_neckline(front, n.front.neckline, t.neck);
}

void tell_bust_dart(Teller& front, const NeckAndShoulder& n, const Armholes& s) {
  const Dart& dart = dart_on(front.piece, BlockEdge::Shoulder);
  front.tell("across-front point, dart closed", s.across_front_closed,
             "go {0} up from the waist and {1} out from the centre front",
             {s.across_front_closed.y, s.across_front_closed.x},
             "across_front; " + across_level_rule());
  front.tell("shoulder dart, inner leg", dart.legs[1],
             "mark the middle of the shoulder and rule the leg to the bust point: {0}",
             {dart.leg()}, shoulder_dart_rule());
  front.tell("shoulder dart, outer leg", dart.legs[0],
             "open the dart by " + degrees(dart.angle()) +
                 ": compass {0} about the bust point, {1} from the inner leg's end",
             {dart.leg(), dart.intake()},
             "bust_girth, upper_chest_girth, across_front and across_back; rule: settled together "
             "with the armhole's width and the dart usual for this bust and cup");
  front.tell("shoulder point", s.front_shoulder_point,
             "turn the closed shoulder point with the dart: {0} from the bust point, {1} from the "
             "outer leg's end",
             {distance(s.front_shoulder_point, n.bust_point),
              distance(s.front_shoulder_point, dart.legs[0])},
             "the dart");
  front.tell(
      "across-front point", s.across_front,
      "turn it with the dart: {0} from the bust point, {1} from the shoulder point",
      {distance(s.across_front, n.bust_point), distance(s.across_front, s.front_shoulder_point)},
      "the dart");
}

void tell_waist_darts(Teller& teller, const WaistEdge& waist, const std::string& rule) {
  for (const WaistDart& dart : waist.darts) {
    teller.tell(
        "waist dart", dart.apex,
        "rule an upright line through this point, its apex; the legs end {0} either side of "
        "it and are {1} long; the dart takes " +
            degrees(dart.angle),
        {0.5 * distance(dart.inner_leg, dart.outer_leg), distance(dart.apex, dart.inner_leg)},
        "waist_girth and bust_girth; rule: " + rule);
  }
}

void tell_underarm(Teller& teller, const SideSeam& side, double drop) {
  const double along = distance(side.waist, side.bust) + distance(side.bust, side.underarm);
  if (part_of(teller.piece, BlockEdge::Side).path.curves().size() == 1) {
    teller.tell("underarm point", side.underarm,
                "rule the side seam from the side waist point through the side of the bust line, "
                "{0} long: the side length less an underarm drop of {1}",
                {along, drop}, "side_length and armscye_girth");
    return;
  }
  teller.tell("underarm point", side.underarm,
              "rule the side seam from the side waist point to the side of the bust line and on to "
              "this point, {0} out from the centre and {1} from there: in all {2} long, the side "
              "length less an underarm drop of {3}",
              {side.underarm.x, distance(side.bust, side.underarm), along, drop},
              "side_length and armscye_girth; rule: taken in above the bust line, settled with the "
              "bust dart");
}

void tell_side(Teller& teller, const SideSeam& side, const std::string& bust_closer, double drop) {
  const std::string height = side.waist.y < 0.0 ? "{1} below" : "{1} above";
  teller.tell(
      "side waist point", side.waist,
      "go {0} out from the centre and " + height +
          " the level of the waist; curve the waist to it, square to the centre, to each dart leg "
          "and to the side seam",
      {side.waist.x, std::abs(side.waist.y)}, "waist_girth");
  teller.tell("side of the bust line", side.bust, "go {0} out from the centre on the bust line",
              {side.bust.x}, bust_closer);
  tell_underarm(teller, side, drop);
}

void tell_dart_points(Teller& teller) {
  for (const Dart& dart : teller.piece.darts) {
    teller.tell(
        "point of the " + dart.edge + " dart", dart.point,
        "end the stitching here, {0} short of the apex; fold the dart towards the centre and "
        "cut its edge through, so that its peak stands {1} from the apex",
        {distance(dart.apex, dart.point), distance(dart.apex, dart.peak)},
        "rule: the hold-back of a " + dart.edge + " dart for this cup");
  }
}

void tell_notches(Teller& teller) {
  const Piece& piece = teller.piece;
  for (const Notch& notch : piece.notches) {
    teller.tell(notch.edge + " notch", point_at_length(piece.edge(notch.edge).path, notch.along),
                std::string(notch.count == 2 ? "two notches" : "a notch") +
                    " across the edge, {0} along it from its lower end",
                {notch.along},
                is_part(piece, notch.edge, BlockEdge::Side)
                    ? "rule: at the bust line"
                    : "rule: at " + share(notch_share(*piece.kind, BlockEdge::Armhole)) +
                          " of the armhole");
  }
}

void tell_armhole(Teller& teller) {
  const Path& armhole = part_of(teller.piece, BlockEdge::Armhole).path;
  teller.tell("armhole", middle_of(armhole.curves().front()),
              "draw the armhole from the underarm point, square to the side seam, through this "
              "point and the across point into the shoulder point, square to the shoulder; it is "
              "{0} long",
              {length(armhole)}, "armscye_girth");
}

std::string back_dart_places() {
  return "under the blade, the stitching ending a little under the underarm line";
}

void tell_back_upper(Teller& back, const Targets& t, const NeckAndShoulder& n, const Armholes& s) {
  const std::string closer =
      shoulder_closer(t.back_slant.has_value(), "back_shoulder_slant", "less at the back");
  tell_centre_waist(back, "centre back");
  back.tell("nape", n.back.centre_neck, "go {0} up the centre back", {t.back_length},
            "back_waist_length");
  back.tell("side neck point", n.back.side_neck, "go {0} out from the nape and {1} up",
            {n.neck_width, n.back.side_neck.y - n.back.centre_neck.y},
            "neck_base_girth; rule: rise of " + share(kBackNeckRise) + " of the width");
  tell_neckline(back, n.back.neckline, t.neck);
  back.tell("across-back point", {s.across_back.x, n.blade_point.y},
            "go {0} down from the nape, square out {1}",
            {n.back.centre_neck.y - n.blade_point.y, s.across_back.x},
            "scye_depth; across_back; " + across_level_rule());
  back.tell("blade point", n.blade_point,
            "half way along the across-back line: {0} from the centre", {n.blade_point.x},
            "rule: " + share(kBladePlace) + " of the half across back");
  back.tell("shoulder dart, inner leg", n.dart_inner_leg,
            "half the shoulder, {0}, from the side neck point, sloping " + degrees(n.back.slope),
            {kShoulderDartPlace * t.shoulder}, closer + "; " + shoulder_dart_rule());
  back.tell(
      "shoulder dart, outer leg", n.dart_outer_leg,
      "{0} from the blade point, {1} from the inner leg's end",
      {distance(n.dart_outer_leg, n.blade_point), distance(n.dart_inner_leg, n.dart_outer_leg)},
      "rule: a back shoulder dart of that width");
  back.tell(
      "shoulder point", n.back.shoulder_point,
      "compass {0} about the outer leg's end, compass {1} about the centre waist",
      {distance(n.back.shoulder_point, n.dart_outer_leg), norm(n.back.shoulder_point - Point{})},
      closer);
}

void tell_lower(Teller& teller, const std::string& dart_rule, const WaistEdge& waist,
                const SideSeam& side, double drop, const std::string& bust_closer) {
  tell_waist_darts(teller, waist, dart_rule);
  tell_side(teller, side, bust_closer, drop);
  tell_armhole(teller);
  tell_dart_points(teller);
  tell_notches(teller);
}

}  // namespace

DraftLog steps(const Targets& t, const Drawn& drawn, const Pattern& block) {
  const auto& [n, waists, s] = drawn;
  DraftLog log;
  Teller front{log, piece_of(block, kBodiceFront)};
  tell_front_upper(front, t, n);
  tell_bust_dart(front, n, s);
  tell_lower(front, share(kFrontDartShare) + " of what is taken out, under the bust point",
             waists.front, s.front_side, s.drop,
             t.front_bust ? "front_bust_width"
                          : "bust_girth; rule: a quarter of it, more by " +
                                share(rules::kFrontSharePerCup) + " of the cup");
  Teller back{log, piece_of(block, kBodiceBack)};
  tell_back_upper(back, t, n, s);
  tell_lower(back, back_dart_places(), waists.back, s.back_side, s.drop,
             "bust_girth less the front; rule: what the darts take out of the line is given back");
  return log;
}

}  // namespace blockwright
