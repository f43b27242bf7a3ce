#include "blockwright/fit/apply.hpp"
#include "rows.hpp"

#include <cmath>

namespace blockwright {
namespace {

// Ratios on a sample neck (plane geometry on one drafted neckline; no source).
constexpr double kWholeNeckPerFrontDrop = 1.64;
constexpr double kHalfNeckPerBackDrop = 0.5;
// With flat shoulders 3.4; the median of 300 drafted blocks, whose shoulders slope and whose front
// necklines are full at the centre, is less.
constexpr double kWholeNeckPerSideShift = 2.0;

// FrontNeckLower, FrontNeckHigher, BackNeckLower: the front neck point or the nape down the centre.
Opened with_centre_neck_lowered(const Opened& open, double by) {
  return with_corner_moved(open, Corner::CentreNeck, {0.0, -by});
}

constexpr LawPerMm kFrontNeckLaws[] = {{"neckline", kWholeNeckPerFrontDrop, LawKind::Ratio}};
constexpr LawPerMm kBackNeckLaws[] = {{"back.neckline", kHalfNeckPerBackDrop, LawKind::Ratio}};

// How both ends of the neckline move when it goes into the piece, the side neck point along the
// shoulder; and the parallel between them.
struct NeckOffset {
  Vec at_side, at_centre;
  CubicCurve parallel;
};

NeckOffset neck_offset(const Opened& open, double by) {
  const auto& old = std::get<CubicCurve>(stroke_of(open, kNeckline));
  const Vec inwards = left_of(tangent_at(old, 0.0)), along = shoulder_at_neck(open);
  const Vec at_side = by / dot(inwards, along) * along;
  const Vec at_centre = by * left_of(tangent_at(old, 1.0));
  return {at_side, at_centre, offset_stroke(old, by, {old.p0 + at_side, old.p3 + at_centre})};
}

// Where the parallel bends too sharply it is drawn rounder between its ends, and is no longer quite
// as long.
bool is_parallel(const Opened& open, double by) {
  const auto& old = std::get<CubicCurve>(stroke_of(open, kNeckline));
  return least_radius(Path({neck_offset(open, by).parallel})) >= round_enough(old);
}

// NeckWider, NeckNarrower: the neckline into the piece, parallel.
Opened with_neck_offset(const Opened& open, double by) {
  const auto& old = std::get<CubicCurve>(stroke_of(open, kNeckline));
  const NeckOffset offset = neck_offset(open, by);
  Redrawing work(open);
  work.move(Corner::SideNeck, offset.at_side);
  work.move(Corner::CentreNeck, offset.at_centre);
  work.draw(kNeckline, rounder(offset.parallel, round_enough(old)));
  return work.finished();
}

// A parallel of a curve gains its distance times the angle that the curve turns by. With flat
// shoulders both necklines turn by half a circle and the whole neck gains 2 pi r; what the
// shoulders slope is missing from it.
double turning(const Opened& open) {
  const Curve& neck = stroke_of(open, kNeckline);
  return std::abs(turn_between(tangent_at(neck, 0.0), tangent_at(neck, 1.0)).radians());
}

std::vector<Law> widen_neck_laws(const HalfBlock& before, const RowAsk& ask) {
  const double turn = turning(before.front) + turning(before.back);
  const bool exact = is_parallel(before.front, ask.by) && is_parallel(before.back, ask.by);
  return {{"neckline", 2.0 * turn * ask.by, exact ? LawKind::Exact : LawKind::Ratio},
          {"front.shoulder", -ask.by},
          {"back.shoulder", -ask.by}};
}

// A wedge at the middle of the neckline closed about an apex: what lies between the neckline and
// the leg of the dart that takes the angle up turns towards the centre.
Opened with_neck_wedge(const Opened& open, DartSpot taker, double by) {
  const Wedge wedge{BlockEdge::Neckline, middle_of(stroke_of(open, kNeckline)), open.at(taker).apex,
                    by};
  return with_wedge_closed(open, wedge, [&](Redrawing& work, Angle turn) {
    turn_part(work, work.leg(taker, 1), work.corner(Corner::SideNeck), wedge.apex, turn);
  });
}

// FrontNeckEdgeTakenIn: front neck edge gapes. The waist dart takes it up, or where there is none
// the shoulder dart.
Opened with_front_neck_edge_taken_in(const Opened& open, double by) {
  return with_neck_wedge(open, waist_dart(open).value_or(shoulder_dart(open)), by);
}

constexpr LawPerMm kFrontNeckEdgeLaws[] = {{"front.waist"}, {"front.shoulder"}, {"front.armhole"}};

// BackNeckEdgeTakenIn: back neck stands away; turned into the shoulder dart about the blade point.
Opened with_back_neck_edge_taken_in(const Opened& open, double by) {
  return with_neck_wedge(open, shoulder_dart(open), by);
}

constexpr LawPerMm kBackNeckEdgeLaws[] = {{"back.shoulder"}};

// SideNeckWider: both side neck points out along the shoulder.
Opened with_side_neck_out(const Opened& open, double by) {
  return with_corner_moved(open, Corner::SideNeck, by * shoulder_at_neck(open));
}

constexpr LawPerMm kSideNeckLaws[] = {{"neckline", kWholeNeckPerSideShift, LawKind::Rough}};

using enum CorrectionRow;

constexpr auto kNeckRows = std::to_array<RowMoves>({
    {FrontNeckLower, 1, on_front<with_centre_neck_lowered>, in_proportion<kFrontNeckLaws>},
    {FrontNeckHigher, -1, on_front<with_centre_neck_lowered>, in_proportion<kFrontNeckLaws>},
    {NeckWider, 1, on_both<with_neck_offset>, widen_neck_laws},
    {NeckNarrower, -1, on_both<with_neck_offset>, widen_neck_laws},
    {FrontNeckEdgeTakenIn, 1, on_front<with_front_neck_edge_taken_in>,
     in_proportion<kFrontNeckEdgeLaws>},
    {BackNeckEdgeTakenIn, 1, on_back<with_back_neck_edge_taken_in>,
     in_proportion<kBackNeckEdgeLaws>},
    {BackNeckLower, 1, on_back<with_centre_neck_lowered>, in_proportion<kBackNeckLaws>},
    {SideNeckWider, 1, on_both<with_side_neck_out>, in_proportion<kSideNeckLaws>},
});
static_assert(are_all_moves_of(RowPart::Neck, kNeckRows));

}  // namespace

const std::span<const RowMoves> kNeckMoves = kNeckRows;

}  // namespace blockwright
