#include "blockwright/block/waist_edge.hpp"
#include "rows.hpp"

#include <algorithm>
#include <cmath>

namespace blockwright {
namespace {

// The high curve's point lies so far below the nape. Common practice, no source (60 to 70 mm).
constexpr double kHighCurve = 65.0;
// The neck dart's mouth takes from half of the amount to all of it. Common practice, no source.
constexpr double kLeastNeckMouth = 0.5;
// Most that is folded out of an upper back besides what its shoulder dart gives, in mm. Ours.
constexpr double kMostFolded = 25.0;

// AcrossBackWider, AcrossBackNarrower: the back's outer part shifted out. Of the shoulder's gain
// half is cut off again at the back's shoulder point, and half added at the front's. The waist dart
// takes up the waist's.
void widen_across_back(HalfBlock& half, const RowAsk& ask) {
  const Opened& open = half.back;
  const Vec out{ask.by, 0.0};
  Redrawing work(open);
  if (const auto dart = waist_dart(open)) {
    Redrawing tried(open);
    set_mouth(tried, *dart, open.at(*dart).intake() + ask.by);  // refuses what the dart has not got
    shift_part(work, work.leg(*dart, 1), work.across(), out);
    work.put_apex(*dart, open.at(*dart).apex + 0.5 * out);
  } else {
    shift_part(work, work.corner(Corner::SideWaist), work.across(), out);
  }
  work.move(Corner::ShoulderPoint, 0.5 * ask.by * shoulder_at_tip(open));
  half.back = work.finished();
  half.front = with_corner_moved(half.front, Corner::ShoulderPoint,
                                 0.5 * ask.by * shoulder_at_tip(half.front));
}

// How much of a waist dart's mouth it takes out of the bust line.
double share_at_bust_line(const Opened& open, DartSpot dart) {
  const Dart& stitched = open.at(dart);
  return taken_at_level(stitched, side_notch_point(open).y) / stitched.intake();
}

std::vector<Law> across_back_laws(const HalfBlock& before, const RowAsk& ask) {
  const auto dart = waist_dart(before.back);
  const double of_bust_line = dart ? 1.0 - share_at_bust_line(before.back, *dart) : 1.0;
  return {{"bust_line", 2.0 * ask.by * of_bust_line},
          {"back.waist", dart ? 0.0 : ask.by},
          {"front.shoulder", 0.5 * ask.by},
          {"back.shoulder", 0.5 * ask.by}};
}

// A fold across the upper back, `by` deep at the centre and nothing at the armhole: the shoulder
// turns about a point over the across point, on the level of the neck, so that the neck keeps its
// width. The blade point comes down by its share.
ClosedShoulder with_upper_back_folded(const Opened& open, ClosedShoulder shoulder, double by) {
  if (by > kMostFolded) {
    refuse_fit("fit.amount",
               "a fold across the upper back would take " + Length::mm(by) +
                   " more than the shoulder dart has; at most " + Length::mm(kMostFolded) +
                   " lie flat",
               "fold out less, and take the rest up at the neck end of the back shoulder");
  }
  const Point across = across_of(open), hinge{across.x, shoulder.side_neck.y};
  const double run = across.x - centre_at(open, across.y);
  shoulder.apex.y -= by * (across.x - shoulder.apex.x) / run;
  return moved_off_apex(shoulder, Placement::turn(lifting_angle(by, run), hinge));
}

// UpperBackLonger, UpperBackShorter: cut from the centre back through the blade point to the across
// point. The part next to the centre goes straight up; the outer part turns about the across point,
// which opens the shoulder dart by as much. The blade point goes up with the centre. What a shorter
// back takes more than the dart can give is folded out: see above.
Opened with_upper_back_longer(const Opened& open, double by) {
  Redrawing work(open);
  ClosedShoulder shoulder = closed_shoulder(work);
  const double reach = distance(shoulder.apex, across_of(open));
  const Angle closed =
      wedge_angle(kLeastMouth, distance(shoulder.apex, shoulder.leg)) - shoulder.angle;
  const double most_closed = std::fmin(reach * std::sin(closed.radians()), 0.0);
  const double by_dart = std::fmax(by, most_closed), folded = by_dart - by;
  const Vec up{0.0, by_dart};
  for (Point* p : {&shoulder.side_neck, &shoulder.leg, &shoulder.shoulder_point, &shoulder.apex}) {
    *p = *p + up;
  }
  shoulder.angle = shoulder.angle + lifting_angle(by_dart, reach);
  put_shoulder(work, folded > 0.0 ? with_upper_back_folded(open, shoulder, folded) : shoulder);
  work.move(Corner::CentreNeck, {0.0, by});
  if (folded > 0.0) work.lengthen(kNeckline, 0.0);
  work.lengthen_armhole(0.0);
  return work.finished();
}

constexpr LawPerMm kUpperBackLaws[] = {{"back.neckline"}, {"back.shoulder"}, {"back.armhole"}};

// Where the back curves under the nape: on the line from the neckline to the blade point.
Point high_curve_point(const Opened& open, Point on_neckline) {
  const Point blade = apex_of(open);
  const Vec down = blade - on_neckline;
  const double level = corner_of(open, Corner::CentreNeck).y - kHighCurve;
  if (blade.y >= level) {
    refuse_fit("fit.place",
               "a neck dart has no room: the blade point must lie more than " +
                   Length::mm(kHighCurve) + " below the nape",
               "lengthen the upper back instead");
  }
  return on_neckline + ((level - on_neckline.y) / down.y) * down;
}

// BackLongerBelowNape: the same move higher, about the armhole level with the high curve's point,
// with a dart at the middle of the neckline.
Opened with_back_longer_below_nape(const Opened& old_back, double by) {
  if (by < 0.0) {
    refuse_fit("fit.negative_dart", "the back has no neck dart that could give it",
               "shorten the upper back, or lower the back neck");
  }
  const DartPosition& position = position_on(kBodiceBack, BlockEdge::Neckline);
  Opened open = old_back;
  const double neck = length(stroke_of(open, kNeckline));
  const Anchor place = anchor_at(open, index_of(BlockEdge::Neckline), 0.5 * neck);
  const Point middle = point_at(open, place);
  const Point turns = high_curve_point(open, middle);
  const DartSpot spot = slit(open, place, turns, std::string(position.name));
  Dart& dart = open.at(spot);
  dart.pressed_to = position.pressed_to;
  dart.point = turns + hold_back(position, kUsualCup) * unit(dart.legs[0] - turns);

  Redrawing work(open);
  const ClosedShoulder old = closed_shoulder(work);
  const double leg = distance(turns, middle);
  const double out = std::clamp(old.shoulder_point.x - turns.x, leg, leg / kLeastNeckMouth);
  if (by >= leg) {
    refuse_fit("fit.amount", "the neck dart would stand on end", "give a smaller amount");
  }
  const Angle turn = lifting_angle(by, out);
  const Placement turned = Placement::turn(-turn, turns + Vec{out, 0.0});
  const Vec up{0.0, by};
  put_shoulder(work, with_ends(old, {turned(old.side_neck), turned(old.shoulder_point)}));
  shift_part(work, work.leg(spot, 1), work.corner(Corner::CentreNeck), up);
  work.put_apex(spot, turns + up);
  work.put(work.leg(spot, 0), rotated_about(work.at(work.leg(spot, 1)), turns + up, -turn));
  work.lengthen(kNeckline, 0.0);
  return work.finished();
}

constexpr LawPerMm kBelowNapeLaws[] = {{"back.neckline"}, {"back.shoulder"}};

// BackWaistShorter: centre back waist up, to nothing at the side.
constexpr LawPerMm kBackWaistLaws[] = {{"back.side"}};

using enum CorrectionRow;

constexpr auto kBackRows = std::to_array<RowMoves>({
    {AcrossBackWider, 1, widen_across_back, across_back_laws},
    {AcrossBackNarrower, -1, widen_across_back, across_back_laws},
    {UpperBackLonger, 1, on_back<with_upper_back_longer>, in_proportion<kUpperBackLaws>},
    {BackLongerBelowNape, 1, on_back<with_back_longer_below_nape>, in_proportion<kBelowNapeLaws>},
    {UpperBackShorter, -1, on_back<with_upper_back_longer>, in_proportion<kUpperBackLaws>},
    {BackWaistShorter, 1, on_back<with_centre_waist_raised>, in_proportion<kBackWaistLaws>},
});
static_assert(are_all_moves_of(RowPart::Back, kBackRows));

}  // namespace

const std::span<const RowMoves> kBackMoves = kBackRows;

}  // namespace blockwright
