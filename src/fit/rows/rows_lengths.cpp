#include "rows.hpp"

namespace blockwright {
namespace {

// LongerBelowBust: a strip across both pieces half way from underarm to waist.
std::vector<Law> below_bust_laws(const HalfBlock& before, const RowAsk& ask) {
  const auto side_gain = [&](const Opened& open) {
    const Vec below = side_joint(open) - corner_of(open, Corner::SideWaist);
    return norm(below + Vec{0.0, ask.by}) - norm(below);
  };
  return {{"front.side", side_gain(before.front)},
          {"back.side", side_gain(before.back)},
          {"front.armhole", 0.0},
          {"back.armhole", 0.0},
          {"neckline", 0.0}};
}

// LongerAboveBust: a strip across upper chest and upper back, with the shoulder darts closed, just
// over the across points; the darts keep their mouths.
Opened with_strip_above_bust(const Opened& open, double by) {
  Redrawing work(open);
  const Vec up{0.0, by};
  put_shoulder(work, moved_off_apex(closed_shoulder(work), Placement::shift(up)));
  work.move(Corner::CentreNeck, up);
  work.lengthen_armhole(by);
  return work.finished();
}

constexpr LawPerMm kAboveBustLaws[] = {{"front.armhole", 1.0}, {"back.armhole", 1.0},
                                       {"front.shoulder"},     {"back.shoulder"},
                                       {"front.side"},         {"front.shoulder dart"}};

// FrontWaistLonger: centre front waist down, to nothing at the side: the reverse of a waist raised.
constexpr LawPerMm kFrontWaistLaws[] = {{"front.side"}};

// SideSeamForward, SideSeamBack: the side seam forward: off the front, onto the back.
Opened with_side_shifted(const Opened& open, double out) {
  Redrawing work(open);
  shift_part(work, work.corner(Corner::SideWaist), work.corner(Corner::Underarm), {out, 0.0});
  return work.finished();
}

// The medians of 300 drafted blocks.
constexpr LawPerMm kSideSeamLaws[] = {{"front.armhole", -0.72, LawKind::Ratio},
                                      {"back.armhole", 0.57, LawKind::Ratio},
                                      {"bust_line"},
                                      {"waist"},
                                      {"front.side"},
                                      {"back.side"}};

// OneSideOfWaistHigher: side waist point up the side seam, to nothing at the centre.
Opened with_side_waist_raised(const Opened& open, double by) {
  Redrawing work(open);
  raise_waist(work, WaistEnd::Side, by);
  work.put(work.corner(Corner::SideWaist),
           corner_of(open, Corner::SideWaist) + by * up_the_side(open));
  work.keep_marks_from_end(BlockEdge::Side);
  return work.finished();
}

constexpr LawPerMm kSideWaistLaws[] = {{"front.centre_front"}, {"back.centre_back"}};

using enum CorrectionRow;

constexpr auto kLengthRows = std::to_array<RowMoves>({
    {LongerBelowBust, 1, on_both<with_strip>, below_bust_laws},
    {LongerAboveBust, 1, on_both<with_strip_above_bust>, in_proportion<kAboveBustLaws>},
    {FrontWaistLonger, -1, on_front<with_centre_waist_raised>, in_proportion<kFrontWaistLaws>},
    {SideSeamForward, 1, forward<with_side_shifted>, in_proportion<kSideSeamLaws>},
    {SideSeamBack, -1, forward<with_side_shifted>, in_proportion<kSideSeamLaws>},
    {OneSideOfWaistHigher, 1, on_both<with_side_waist_raised>, in_proportion<kSideWaistLaws>},
});
static_assert(are_all_moves_of(RowPart::Lengths, kLengthRows));

}  // namespace

const std::span<const RowMoves> kLengthMoves = kLengthRows;

}  // namespace blockwright
