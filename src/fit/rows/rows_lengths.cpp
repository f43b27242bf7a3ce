#include "blockwright/base/number_text.hpp"
#include "blockwright/fit/moves.hpp"
#include "closed_shoulder.hpp"
#include "parts.hpp"
#include "refuse.hpp"
#include "rows.hpp"
#include "waist_fit.hpp"

#include <algorithm>
#include <cmath>

namespace blockwright {
namespace {

// LongerBelowBust: a strip across both pieces half way from underarm to waist.
std::vector<Law> below_bust_laws(const HalfBlock& before, const RowAsk& ask) {
  const auto side_gain = [&](const Opened& open) {
    const Vec side = corner_of(open, Corner::Underarm) - corner_of(open, Corner::SideWaist);
    return norm(side + Vec{0.0, ask.by}) - norm(side);
  };
  return {{"front.centre_front", ask.by},
          {"back.centre_back", ask.by},
          {"front.side", side_gain(before.front)},
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
  put_shoulder(work, open, moved_off_apex(closed_shoulder(work, open), Placement::shift(up)));
  work.move(Corner::CentreNeck, up);
  work.lengthen_armhole(by);
  return work.finished();
}

std::vector<Law> above_bust_laws(const HalfBlock&, const RowAsk& ask) {
  return {{"front.centre_front", ask.by},
          {"back.centre_back", ask.by},
          {"front.armhole", ask.by},
          {"back.armhole", ask.by},
          {"front.shoulder", 0.0},
          {"back.shoulder", 0.0},
          {"front.side", 0.0},
          {"front.shoulder dart", 0.0}};
}

// FrontWaistLonger: centre front waist down, to nothing at the side.
void lengthen_front_waist(HalfBlock& half, const RowAsk& ask) {
  Redrawing work(half.front);
  raise_waist(work, half.front, WaistEnd::Centre, -ask.by);
  half.front = work.finished();
}

std::vector<Law> front_waist_laws(const HalfBlock&, const RowAsk& ask) {
  return {{"front.centre_front", ask.by}, {"front.side", 0.0}};
}

// SideSeamForward, SideSeamBack: the side seam forward: off the front, onto the back.
Opened with_side_shifted(const Opened& open, double out) {
  Redrawing work(open);
  shift_part(work, work.corner(Corner::SideWaist), work.corner(Corner::Underarm), {out, 0.0});
  work.lengthen(kLowerArmhole, out);
  return work.finished();
}

void forward_side_seam(HalfBlock& half, const RowAsk& ask) {
  half.front = with_side_shifted(half.front, -ask.by);
  half.back = with_side_shifted(half.back, ask.by);
}

std::vector<Law> side_seam_laws(const HalfBlock&, const RowAsk& ask) {
  return {{"front.armhole", -ask.by, LawKind::Ratio},
          {"back.armhole", ask.by, LawKind::Ratio},
          {"bust_line", 0.0},
          {"waist", 0.0},
          {"front.side", 0.0},
          {"back.side", 0.0}};
}

// OneSideOfWaistHigher: side waist point up the side seam, to nothing at the centre.
Opened with_side_waist_raised(const Opened& open, double by) {
  Redrawing work(open);
  raise_waist(work, open, WaistEnd::Side, by);
  work.put(work.corner(Corner::SideWaist),
           corner_of(open, Corner::SideWaist) + by * up_the_side(open));
  work.keep_marks_from_end(BlockEdge::Side);
  return work.finished();
}

std::vector<Law> side_waist_laws(const HalfBlock&, const RowAsk& ask) {
  return {{"front.side", -ask.by},
          {"back.side", -ask.by},
          {"front.centre_front", 0.0},
          {"back.centre_back", 0.0}};
}

using enum CorrectionRow;

constexpr auto kLengthRows = std::to_array<RowMoves>({
    {LongerBelowBust, 1, on_both<with_strip>, below_bust_laws},
    {LongerAboveBust, 1, on_both<with_strip_above_bust>, above_bust_laws},
    {FrontWaistLonger, 1, lengthen_front_waist, front_waist_laws},
    {SideSeamForward, 1, forward_side_seam, side_seam_laws},
    {SideSeamBack, -1, forward_side_seam, side_seam_laws},
    {OneSideOfWaistHigher, 1, on_both<with_side_waist_raised>, side_waist_laws},
});
static_assert(are_all_moves_of(RowPart::Lengths, kLengthRows));

}  // namespace

const std::span<const RowMoves> kLengthMoves = kLengthRows;

}  // namespace blockwright
