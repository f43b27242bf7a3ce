#include "blockwright/fit/moves.hpp"
#include "closed_shoulder.hpp"
#include "parts.hpp"
#include "rows.hpp"

#include <cmath>

namespace blockwright {
namespace {

// Ratios on a sample neck (plane geometry on one drafted neckline; no source).
constexpr double kWholeNeckPerFrontDrop = 1.64;
constexpr double kHalfNeckPerBackDrop = 0.5;
// With flat shoulders 3.4; the median of 300 drafted blocks, whose shoulders slope, is less.
constexpr double kWholeNeckPerSideShift = 2.5;

// FrontNeckLower, FrontNeckHigher: front neck point down the centre front.
void lower_front_neck(HalfBlock& half, const RowAsk& ask) {
  half.front = with_corner_moved(half.front, Corner::CentreNeck, {0.0, -ask.by});
}

std::vector<Law> front_neck_laws(const HalfBlock&, const RowAsk& ask) {
  return {{"front.centre_front", -ask.by},
          {"neckline", kWholeNeckPerFrontDrop * ask.by, LawKind::Ratio}};
}

// NeckWider, NeckNarrower: the neckline into the piece, parallel; the side neck point goes along
// the shoulder.
Opened with_neck_offset(const Opened& open, double by) {
  const auto& old = std::get<CubicCurve>(stroke_of(open, kNeckline));
  const Vec inwards = left_of(tangent_at(old, 0.0)), along = shoulder_at_neck(open);
  Redrawing work(open);
  work.move(Corner::SideNeck, by / dot(inwards, along) * along);
  work.move(Corner::CentreNeck, by * left_of(tangent_at(old, 1.0)));
  work.draw(kNeckline,
            offset_stroke(old, by, work.at(Corner::SideNeck), work.at(Corner::CentreNeck)));
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
  return {
      {"neckline", 2.0 * turn * ask.by}, {"front.shoulder", -ask.by}, {"back.shoulder", -ask.by}};
}

Point neck_middle(const Opened& open) {
  const Curve& neck = stroke_of(open, kNeckline);
  return point_at(neck, parameter_at_length(neck, 0.5 * length(neck)));
}

// A wedge at the middle of the neckline closed about an apex: what lies between the neckline and
// the leg of the dart that takes the angle up turns towards the centre.
Opened with_neck_wedge(const Opened& open, DartSpot taker, double wedge) {
  const Point apex = open.at(taker).apex;
  const Angle about = wedge_angle(wedge, distance(apex, neck_middle(open)));
  const auto closed = [&](double times) {
    Redrawing work(open);
    turn_part(work, work.leg(taker, 1), work.corner(Corner::SideNeck), apex, times * about);
    return work.finished();
  };
  return closed(
      times_for(closed, BlockEdge::Neckline, closed_length(open, BlockEdge::Neckline) - wedge));
}

// FrontNeckEdgeTakenIn: front neck edge gapes. The waist dart takes it up, or where there is none
// the shoulder dart.
void take_in_front_neck_edge(HalfBlock& half, const RowAsk& ask) {
  const DartSpot taker = waist_dart(half.front).value_or(shoulder_dart(half.front));
  half.front = with_neck_wedge(half.front, taker, ask.by);
}

std::vector<Law> front_neck_edge_laws(const HalfBlock&, const RowAsk& ask) {
  return {{"front.neckline", -ask.by},
          {"front.waist", 0.0},
          {"front.shoulder", 0.0},
          {"front.armhole", 0.0}};
}

// BackNeckEdgeTakenIn: back neck stands away; turned into the shoulder dart about the blade point.
void take_in_back_neck_edge(HalfBlock& half, const RowAsk& ask) {
  half.back = with_neck_wedge(half.back, shoulder_dart(half.back), ask.by);
}

std::vector<Law> back_neck_edge_laws(const HalfBlock&, const RowAsk& ask) {
  return {{"back.neckline", -ask.by}, {"back.shoulder", 0.0}};
}

// BackNeckLower: nape down.
void lower_back_neck(HalfBlock& half, const RowAsk& ask) {
  half.back = with_corner_moved(half.back, Corner::CentreNeck, {0.0, -ask.by});
}

std::vector<Law> back_neck_laws(const HalfBlock&, const RowAsk& ask) {
  return {{"back.centre_back", -ask.by},
          {"back.neckline", kHalfNeckPerBackDrop * ask.by, LawKind::Ratio}};
}

// SideNeckWider: both side neck points out along the shoulder.
void widen_side_neck(HalfBlock& half, const RowAsk& ask) {
  for (Opened* open : {&half.front, &half.back}) {
    *open = with_corner_moved(*open, Corner::SideNeck, ask.by * shoulder_at_neck(*open));
  }
}

std::vector<Law> side_neck_laws(const HalfBlock&, const RowAsk& ask) {
  return {{"front.shoulder", -ask.by},
          {"back.shoulder", -ask.by},
          {"neckline", kWholeNeckPerSideShift * ask.by, LawKind::Rough}};
}

using enum CorrectionRow;

constexpr auto kNeckRows = std::to_array<RowMoves>({
    {FrontNeckLower, 1, lower_front_neck, front_neck_laws},
    {FrontNeckHigher, -1, lower_front_neck, front_neck_laws},
    {NeckWider, 1, on_both<with_neck_offset>, widen_neck_laws},
    {NeckNarrower, -1, on_both<with_neck_offset>, widen_neck_laws},
    {FrontNeckEdgeTakenIn, 1, take_in_front_neck_edge, front_neck_edge_laws},
    {BackNeckEdgeTakenIn, 1, take_in_back_neck_edge, back_neck_edge_laws},
    {BackNeckLower, 1, lower_back_neck, back_neck_laws},
    {SideNeckWider, 1, widen_side_neck, side_neck_laws},
});
static_assert(are_all_moves_of(RowPart::Neck, kNeckRows));

}  // namespace

const std::span<const RowMoves> kNeckMoves = kNeckRows;

}  // namespace blockwright
