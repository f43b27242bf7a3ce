#include "blockwright/fit/moves.hpp"
#include "closed_shoulder.hpp"
#include "parts.hpp"
#include "rows.hpp"

#include <cmath>

namespace blockwright {
namespace {

// On sample armholes (plane geometry on one drafted armhole; no source).
constexpr double kArmholePerUnderarm = 1.35;
constexpr double kArmholePerScoop = 0.95;
constexpr double kArmholePerFill = -0.65;
constexpr double kArmholePerRound = 3.0;

// UnderarmLower, UnderarmHigher: underarm point down the side seam.
Opened with_underarm_lowered(const Opened& open, double by) {
  return with_corner_moved(open, Corner::Underarm, -by * up_the_side(open));
}

std::vector<Law> underarm_laws(const HalfBlock&, const RowAsk& ask) {
  return {{"front.side", -ask.by},
          {"back.side", -ask.by},
          {"armhole", kArmholePerUnderarm * ask.by, LawKind::Ratio}};
}

// FrontArmholeScooped, BackArmholeFilled: the armhole at the across point, into the piece where
// positive, to nothing at its ends.
Opened with_armhole_scooped(const Opened& open, double by) {
  Redrawing work(open);
  work.move(work.across(), by * left_of(tangent_at(stroke_of(open, kLowerArmhole), 1.0)));
  work.keep_hollow();
  return work.finished();
}

void fill_back_armhole(HalfBlock& half, const RowAsk& ask) {
  half.back = with_armhole_scooped(half.back, -ask.by);
}

std::vector<Law> scoop_laws(const HalfBlock&, const RowAsk& ask) {
  return {{"front.armhole", kArmholePerScoop * ask.by, LawKind::Ratio}};
}

std::vector<Law> fill_laws(const HalfBlock&, const RowAsk& ask) {
  return {{"back.armhole", kArmholePerFill * ask.by, LawKind::Rough}};
}

// FrontArmholeEdgeTakenIn: a wedge at the middle of the front's lower armhole closed about the bust
// point. The side part turns and the waist dart takes it up; without a waist dart the upper part
// turns, and the shoulder dart does.
void take_in_front_armhole_edge(HalfBlock& half, const RowAsk& ask) {
  const Opened& open = half.front;
  const Curve& lower = stroke_of(open, kLowerArmhole);
  const Point fold = point_at(lower, parameter_at_length(lower, 0.5 * length(lower)));
  const DartSpot shoulder = shoulder_dart(open);
  const Point bust = open.at(shoulder).apex;
  const Angle about = wedge_angle(ask.by, distance(bust, fold));
  const auto waist = waist_dart(open);
  const auto closed = [&](double times) {
    const Angle by = times * about;
    Redrawing work(open);
    if (waist) {
      turn_part(work, work.leg(*waist, 1), work.corner(Corner::Underarm), bust, by);
    } else {
      turn_part(work, work.across(), work.leg(shoulder, 0), bust, -by);
      work.turn(work.across(), -by);
    }
    return work.finished();
  };
  half.front = closed(
      times_for(closed, BlockEdge::Armhole, closed_length(open, BlockEdge::Armhole) - ask.by));
}

std::vector<Law> front_edge_laws(const HalfBlock&, const RowAsk& ask) {
  return {{"front.armhole", -ask.by}, {"front.side", 0.0}, {"front.waist", 0.0}};
}

// BackArmholeEdgeTakenIn: a wedge at the back's across point closed about the blade point into the
// shoulder dart.
void take_in_back_armhole_edge(HalfBlock& half, const RowAsk& ask) {
  const Opened& open = half.back;
  const DartSpot shoulder = shoulder_dart(open);
  const Point blade = open.at(shoulder).apex;
  const Angle about = wedge_angle(ask.by, distance(blade, across_of(open)));
  const auto closed = [&](double times) {
    Redrawing work(open);
    turn_part(work, work.corner(Corner::ShoulderPoint), work.leg(shoulder, 0), blade,
              -(times * about));
    return work.finished();
  };
  half.back = closed(
      times_for(closed, BlockEdge::Armhole, closed_length(open, BlockEdge::Armhole) - ask.by));
}

std::vector<Law> back_edge_laws(const HalfBlock&, const RowAsk& ask) {
  return {{"back.armhole", -ask.by}, {"back.shoulder", 0.0}};
}

// ArmholeLarger: the armhole round both pieces wider, to nothing at the shoulder.
Opened with_armhole_rounded(const Opened& open, double by) {
  Redrawing work(open);
  work.move(work.across(), by * left_of(tangent_at(stroke_of(open, kLowerArmhole), 1.0)));
  work.move(Corner::Underarm, -by * up_the_side(open));
  return work.finished();
}

std::vector<Law> widen_laws(const HalfBlock&, const RowAsk& ask) {
  return {{"front.side", -ask.by},
          {"back.side", -ask.by},
          {"armhole", kArmholePerRound * ask.by, LawKind::Ratio}};
}

using enum CorrectionRow;

constexpr auto kArmholeRows = std::to_array<RowMoves>({
    {UnderarmLower, 1, on_both<with_underarm_lowered>, underarm_laws},
    {UnderarmHigher, -1, on_both<with_underarm_lowered>, underarm_laws},
    {FrontArmholeScooped, 1, on_front<with_armhole_scooped>, scoop_laws},
    {BackArmholeFilled, 1, fill_back_armhole, fill_laws},
    {FrontArmholeEdgeTakenIn, 1, take_in_front_armhole_edge, front_edge_laws},
    {BackArmholeEdgeTakenIn, 1, take_in_back_armhole_edge, back_edge_laws},
    {ArmholeLarger, 1, on_both<with_armhole_rounded>, widen_laws},
});
static_assert(are_all_moves_of(RowPart::Armhole, kArmholeRows));

}  // namespace

const std::span<const RowMoves> kArmholeMoves = kArmholeRows;

}  // namespace blockwright
