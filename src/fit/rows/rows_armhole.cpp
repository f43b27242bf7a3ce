#include "rows.hpp"

namespace blockwright {
namespace {

// The medians of 300 drafted blocks.
constexpr double kArmholePerUnderarm = 1.75;
constexpr double kArmholePerScoop = 1.2;
constexpr double kArmholePerFill = -0.87;
constexpr double kArmholePerRound = 3.6;

// UnderarmLower, UnderarmHigher: underarm point down the side seam.
Opened with_underarm_lowered(const Opened& before, double by) {
  const Opened open = with_side_to_lower(before, by);
  return with_corner_moved(open, Corner::Underarm, -by * up_to_the_underarm(open));
}

constexpr LawPerMm kUnderarmLaws[] = {{"armhole", kArmholePerUnderarm, LawKind::Ratio}};

// Square to the armhole at the across point, into the piece.
Vec into_the_armhole(const Opened& open) {
  return left_of(tangent_at(stroke_of(open, kLowerArmhole), 1.0));
}

// BackArmholeFilled, and FrontArmholeScooped as a mark: the armhole at the across point, into the
// piece where positive, to nothing at its ends.
Opened with_armhole_scooped(const Opened& open, double by) {
  Redrawing work(open);
  work.move(work.across(), by * into_the_armhole(open));
  return work.finished();
}

// FrontArmholeScooped: as a width, by so much of the across front, the shoulder dart closed.
void scoop_front_armhole(HalfBlock& half, const RowAsk& ask) {
  const bool as_width = ask.place == "across_front";
  const Angle dart = half.front.at(shoulder_dart(half.front)).angle();
  const double level = as_width ? rotated(into_the_armhole(half.front), dart).x : -1.0;
  half.front = with_armhole_scooped(half.front, ask.by / -level);
}

constexpr LawPerMm kScoopLaws[] = {{"front.armhole", kArmholePerScoop, LawKind::Ratio}};
constexpr LawPerMm kFillLaws[] = {{"back.armhole", -kArmholePerFill, LawKind::Rough}};

// FrontArmholeEdgeTakenIn: a wedge at the middle of the front's lower armhole closed about the bust
// point. The side part turns and the waist dart takes it up; without a waist dart the upper part
// turns, and the shoulder dart does.
Opened with_front_armhole_edge_taken_in(const Opened& open, double by) {
  const Wedge wedge{BlockEdge::Armhole, middle_of(stroke_of(open, kLowerArmhole)), apex_of(open),
                    by};
  return with_wedge_closed(open, wedge, [&](Redrawing& work, Angle turn) {
    if (const auto waist = waist_dart(open)) {
      turn_part(work, work.leg(*waist, 1), work.corner(Corner::Underarm), wedge.apex, turn);
    } else {
      turn_part(work, work.across(), work.leg(shoulder_dart(open), 0), wedge.apex, -turn);
      work.turn(work.across(), -turn);
    }
  });
}

constexpr LawPerMm kFrontEdgeLaws[] = {{"front.side"}, {"front.waist"}};

// BackArmholeEdgeTakenIn: a wedge at the back's across point closed about the blade point into the
// shoulder dart.
Opened with_back_armhole_edge_taken_in(const Opened& open, double by) {
  Redrawing work(open);
  const Angle turn = wedge_angle(by, distance(apex_of(open), across_of(open)));
  turn_part(work, work.corner(Corner::ShoulderPoint), work.leg(shoulder_dart(open), 0),
            apex_of(open), -turn);
  work.lengthen_armhole(-by);
  return work.finished();
}

constexpr LawPerMm kBackEdgeLaws[] = {{"back.shoulder"}};

// ArmholeLarger: the armhole round both pieces wider, to nothing at the shoulder.
Opened with_armhole_rounded(const Opened& before, double by) {
  const Opened open = with_side_to_lower(before, by);
  Redrawing work(open);
  work.move(work.across(), by * into_the_armhole(open));
  work.move(Corner::Underarm, -by * up_to_the_underarm(open));
  return work.finished();
}

constexpr LawPerMm kWidenLaws[] = {{"armhole", kArmholePerRound, LawKind::Ratio}};

using enum CorrectionRow;

constexpr auto kArmholeRows = std::to_array<RowMoves>({
    {UnderarmLower, 1, on_both<with_underarm_lowered>, in_proportion<kUnderarmLaws>},
    {UnderarmHigher, -1, on_both<with_underarm_lowered>, in_proportion<kUnderarmLaws>},
    {FrontArmholeScooped, 1, scoop_front_armhole, in_proportion<kScoopLaws>},
    {BackArmholeFilled, -1, on_back<with_armhole_scooped>, in_proportion<kFillLaws>},
    {FrontArmholeEdgeTakenIn, 1, on_front<with_front_armhole_edge_taken_in>,
     in_proportion<kFrontEdgeLaws>},
    {BackArmholeEdgeTakenIn, 1, on_back<with_back_armhole_edge_taken_in>,
     in_proportion<kBackEdgeLaws>},
    {ArmholeLarger, 1, on_both<with_armhole_rounded>, in_proportion<kWidenLaws>},
});
static_assert(are_all_moves_of(RowPart::Armhole, kArmholeRows));

}  // namespace

const std::span<const RowMoves> kArmholeMoves = kArmholeRows;

}  // namespace blockwright
