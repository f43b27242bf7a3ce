#include "blockwright/fit/moves.hpp"
#include "closed_shoulder.hpp"
#include "parts.hpp"
#include "rows.hpp"

#include <cmath>

namespace blockwright {
namespace {

// The median of 300 drafted blocks, each armhole; a sample armhole has 0.25, and it depends much on
// how the armhole stands at the shoulder.
constexpr double kArmholePerShoulder = 0.14;

const Law kFrontShoulderKept{"front.shoulder", 0.0};
const Law kBackShoulderKept{"back.shoulder", 0.0};

// ShoulderShorter, ShoulderLonger: shoulder point in along the shoulder; the armhole is redrawn
// down to the across point.
void shorten_shoulder(HalfBlock& half, const RowAsk& ask) {
  for (Opened* open : {&half.front, &half.back}) {
    Redrawing work(*open);
    work.move(Corner::ShoulderPoint, -ask.by * shoulder_at_tip(*open));
    work.keep_hollow();
    *open = work.finished();
  }
}

std::vector<Law> shorten_laws(const HalfBlock&, const RowAsk& ask) {
  return {{"front.shoulder", -ask.by},
          {"back.shoulder", -ask.by},
          {"armhole", 2.0 * kArmholePerShoulder * ask.by, LawKind::Rough}};
}

// ShoulderPointHigher, ShoulderPointLower, OneShoulderLower: shoulder point up; the armhole goes up
// the side seam as far and keeps its length.
Opened with_tip_raised(const Opened& open, double by) {
  Redrawing work(open);
  const Vec up = by * up_the_side(open);
  work.move(Corner::Underarm, up);
  work.move(work.across(), up);
  put_shoulder(work, open, tip_raised(closed_shoulder(work, open), by));
  work.lengthen_armhole(0.0);
  return work.finished();
}

std::vector<Law> raise_laws(const HalfBlock&, const RowAsk& ask) {
  return {{"front.side", ask.by}, {"back.side", ask.by}, {"front.armhole", 0.0},
          {"back.armhole", 0.0},  kFrontShoulderKept,    kBackShoulderKept};
}

// ShoulderPointForward: the seam's outer end forward: front shoulder point down, back shoulder
// point up.
Opened with_tip_alone_raised(const Opened& open, double by) {
  Redrawing work(open);
  put_shoulder(work, open, tip_raised(closed_shoulder(work, open), by));
  return work.finished();
}

void forward_shoulder_point(HalfBlock& half, const RowAsk& ask) {
  half.front = with_tip_alone_raised(half.front, -ask.by);
  half.back = with_tip_alone_raised(half.back, ask.by);
}

std::vector<Law> forward_point_laws(const HalfBlock&, const RowAsk& ask) {
  return {{"front.armhole", -ask.by, LawKind::Ratio},
          {"back.armhole", ask.by, LawKind::Ratio},
          kFrontShoulderKept,
          kBackShoulderKept};
}

// ShoulderSeamForward: a strip cut from one shoulder and joined to the other. What is cut off is so
// much of neckline and armhole; the other piece gets the same strip, turned over.
struct ShoulderStrip {
  Vec at_neck, at_tip;        // how both ends move: down the shoulder, and out of the piece
  Angle neck_bend, tip_bend;  // how neckline and armhole have turned there
};

// Down the closed shoulder and out of the piece.
struct ShoulderFrame {
  Vec down, out;
  [[nodiscard]] Vec seen(Vec v) const { return {dot(v, down), dot(v, out)}; }
  [[nodiscard]] Vec drawn(Vec v) const { return v.x * down + v.y * out; }
};

ShoulderFrame frame_of(const ClosedShoulder& shoulder) {
  const Vec down = unit(shoulder.shoulder_point - shoulder.side_neck);
  return {down, left_of(down)};
}

ShoulderStrip cut_strip(Opened& open, double width) {
  Redrawing work(open);
  const ClosedShoulder old = closed_shoulder(work, open);
  const ShoulderFrame frame = frame_of(old);
  const Curve neck = stroke_of(open, kNeckline), scye = stroke_of(open, kUpperArmhole);
  const Curve rest = split_at(neck, parameter_at_length(neck, width)).second;
  const Curve below = split_at(scye, parameter_at_length(scye, length(scye) - width)).first;
  const Point tip = rotated_about(end_of(below), old.apex, old.angle);
  put_shoulder(work, open, with_ends(old, start_of(rest), tip));
  work.draw(kNeckline, std::get<CubicCurve>(rest));
  work.draw(kUpperArmhole, std::get<CubicCurve>(below));
  open = work.finished();
  return {frame.seen(start_of(rest) - old.side_neck), frame.seen(tip - old.shoulder_point),
          turn_between(tangent_at(neck, 0.0), tangent_at(rest, 0.0)),
          turn_between(tangent_at(scye, 1.0), tangent_at(below, 1.0))};
}

void join_strip(Opened& open, const ShoulderStrip& strip, double width) {
  Redrawing work(open);
  const ClosedShoulder old = closed_shoulder(work, open);
  const ShoulderFrame frame = frame_of(old);
  const Point neck = old.side_neck + frame.drawn({strip.at_neck.x, -strip.at_neck.y});
  const Point tip = old.shoulder_point + frame.drawn({strip.at_tip.x, -strip.at_tip.y});
  put_shoulder(work, open, with_ends(old, neck, tip));
  const auto& old_neck = std::get<CubicCurve>(stroke_of(open, kNeckline));
  const Vec leaving = rotated(tangent_at(old_neck, 0.0), -strip.neck_bend);
  work.draw(kNeckline, reshaped(old_neck, neck, leaving, old_neck.p3, tangent_at(old_neck, 1.0)));
  work.lengthen(kNeckline, width);
  work.turn_end(kUpperArmhole, -strip.tip_bend);
  open = work.finished();
}

void forward_shoulder_seam(HalfBlock& half, const RowAsk& ask) {
  Opened &from = ask.by > 0.0 ? half.front : half.back, &to = ask.by > 0.0 ? half.back : half.front;
  const double width = std::abs(ask.by);
  join_strip(to, cut_strip(from, width), width);
}

std::vector<Law> forward_seam_laws(const HalfBlock&, const RowAsk& ask) {
  return {{"front.neckline", -ask.by, LawKind::Ratio},
          {"back.neckline", ask.by, LawKind::Ratio},
          {"front.armhole", -ask.by, LawKind::Ratio},
          {"back.armhole", ask.by, LawKind::Ratio}};
}

// FrontShoulderTakenUp, BackShoulderTakenUp: the shoulder taken up at its neck end; the neck point
// at the centre comes down as far.
Opened with_neck_end_lowered(const Opened& open, double by) {
  Redrawing work(open);
  put_shoulder(work, open, neck_end_raised(closed_shoulder(work, open), -by));
  work.move(Corner::CentreNeck, {0.0, -by});
  return work.finished();
}

std::vector<Law> front_take_up_laws(const HalfBlock&, const RowAsk& ask) {
  return {{"front.centre_front", -ask.by}, kFrontShoulderKept, kBackShoulderKept};
}

std::vector<Law> back_take_up_laws(const HalfBlock&, const RowAsk& ask) {
  return {{"back.centre_back", -ask.by}, kFrontShoulderKept, kBackShoulderKept};
}

// BackShoulderDartWider: the back shoulder dart wider; the shoulder point goes out by what the seam
// would lose.
void widen_back_shoulder_dart(HalfBlock& half, const RowAsk& ask) {
  const DartSpot spot = shoulder_dart(half.back);
  Redrawing work(half.back);
  set_mouth(work, half.back, spot, half.back.at(spot).intake() + ask.by);
  half.back = work.finished();
}

std::vector<Law> back_dart_laws(const HalfBlock&, const RowAsk& ask) {
  return {{"back.shoulder dart", ask.by}, kFrontShoulderKept, kBackShoulderKept};
}

// UpperChestTakenIn: a wedge across the upper chest, from the centre front to nothing at the across
// point, with the shoulder dart closed; the centre front stays straight.
void take_in_upper_chest(HalfBlock& half, const RowAsk& ask) {
  Redrawing work(half.front);
  const ClosedShoulder old = closed_shoulder(work, half.front);
  const Point hinge = rotated_about(work.at(work.across()), old.apex, old.angle);
  const double run = hinge.x - centre_at(half.front, hinge.y);
  const Placement by = Placement::turn(lifting_angle(ask.by, run), hinge);
  put_shoulder(work, half.front, moved_off_apex(old, by));
  work.move(Corner::CentreNeck, {0.0, -ask.by});
  work.lengthen_armhole(0.0);
  half.front = work.finished();
}

std::vector<Law> upper_chest_laws(const HalfBlock&, const RowAsk& ask) {
  return {{"front.centre_front", -ask.by},
          {"front.armhole", 0.0},
          {"front.shoulder dart", 0.0},
          kFrontShoulderKept};
}

using enum CorrectionRow;

constexpr auto kShoulderRows = std::to_array<RowMoves>({
    {ShoulderShorter, 1, shorten_shoulder, shorten_laws},
    {ShoulderLonger, -1, shorten_shoulder, shorten_laws},
    {ShoulderPointHigher, 1, on_both<with_tip_raised>, raise_laws},
    {ShoulderPointLower, -1, on_both<with_tip_raised>, raise_laws},
    {OneShoulderLower, -1, on_both<with_tip_raised>, raise_laws},
    {ShoulderPointForward, 1, forward_shoulder_point, forward_point_laws},
    {ShoulderSeamForward, 1, forward_shoulder_seam, forward_seam_laws},
    {FrontShoulderTakenUp, 1, on_front<with_neck_end_lowered>, front_take_up_laws},
    {BackShoulderTakenUp, 1, on_back<with_neck_end_lowered>, back_take_up_laws},
    {BackShoulderDartWider, 1, widen_back_shoulder_dart, back_dart_laws},
    {UpperChestTakenIn, 1, take_in_upper_chest, upper_chest_laws},
});
static_assert(are_all_moves_of(RowPart::Shoulder, kShoulderRows));

}  // namespace

const std::span<const RowMoves> kShoulderMoves = kShoulderRows;

}  // namespace blockwright
