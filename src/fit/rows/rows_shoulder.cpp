#include "rows.hpp"

#include <cmath>

namespace blockwright {
namespace {

// The median of 300 drafted blocks, each armhole; a sample armhole has 0.25, and it depends much on
// how the armhole stands at the shoulder: one that must lean further in loses below what it gains.
constexpr double kArmholePerShoulder = 0.17;
// The same, for what an across point comes in with its shoulder point.
constexpr double kArmholePerAcross = 1.0;

// ShoulderShorter, ShoulderLonger: shoulder point in along the shoulder, and the across point with
// it as far as the armhole needs it. Returns how far that came in, in mm.
double shorten_shoulder(Redrawing& work, double by) {
  work.move(Corner::ShoulderPoint, -by * shoulder_at_tip(work.open()));
  return work.bring_across_in();
}

Opened with_shoulder_shortened(const Opened& open, double by) {
  Redrawing work(open);
  shorten_shoulder(work, by);
  return work.finished();
}

std::vector<Law> shorten_laws(const HalfBlock& before, const RowAsk& ask) {
  std::vector<Law> laws;
  double armhole = 2.0 * kArmholePerShoulder * ask.by;
  const auto add = [&](const char* across, const Opened& open) {
    Redrawing work(open);
    const double in = shorten_shoulder(work, ask.by);
    if (in > 0.0) laws.push_back({across, -2.0 * in});
    armhole += kArmholePerAcross * in;
  };
  add("across_front", before.front);
  add("across_back", before.back);
  laws.push_back({"armhole", armhole, LawKind::Rough});
  return laws;
}

// ShoulderPointHigher, ShoulderPointLower, OneShoulderLower: shoulder point up; the armhole goes up
// the side seam as far and keeps its length.
Opened with_tip_raised(const Opened& before, double by) {
  const Opened open = with_side_to_lower(before, -by);
  Redrawing work(open);
  const Vec up = by * up_to_the_underarm(open);
  work.move(Corner::Underarm, up);
  work.move(work.across(), up);
  put_shoulder(work, tip_raised(closed_shoulder(work), by));
  work.lengthen_armhole(0.0);
  return work.finished();
}

constexpr LawPerMm kRaiseLaws[] = {{"front.side", 1.0}, {"back.side", 1.0}, {"front.armhole"},
                                   {"back.armhole"},    {"front.shoulder"}, {"back.shoulder"}};

// ShoulderPointForward: the seam's outer end forward: front shoulder point down, back shoulder
// point up.
Opened with_tip_alone_raised(const Opened& open, double by) {
  Redrawing work(open);
  put_shoulder(work, tip_raised(closed_shoulder(work), by));
  return work.finished();
}

constexpr LawPerMm kForwardPointLaws[] = {{"front.armhole", -1.0, LawKind::Ratio},
                                          {"back.armhole", 1.0, LawKind::Rough},
                                          {"front.shoulder"},
                                          {"back.shoulder"}};

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
  const ClosedShoulder old = closed_shoulder(work);
  const ShoulderFrame frame = frame_of(old);
  const Curve neck = stroke_of(open, kNeckline), armhole = stroke_of(open, kUpperArmhole);
  const Curve rest = split_at(neck, parameter_at_length(neck, width)).second;
  const Curve below =
      split_at(armhole, parameter_at_length(armhole, length(armhole) - width)).first;
  const Point tip = rotated_about(end_of(below), old.apex, old.angle);
  put_shoulder(work, with_ends(old, {start_of(rest), tip}));
  work.draw(kNeckline, std::get<CubicCurve>(rest));
  work.draw(kUpperArmhole, std::get<CubicCurve>(below));
  open = work.finished();
  return {frame.seen(start_of(rest) - old.side_neck), frame.seen(tip - old.shoulder_point),
          turn_between(tangent_at(neck, 0.0), tangent_at(rest, 0.0)),
          turn_between(tangent_at(armhole, 1.0), tangent_at(below, 1.0))};
}

void join_strip(Opened& open, const ShoulderStrip& strip, double width) {
  Redrawing work(open);
  const ClosedShoulder old = closed_shoulder(work);
  const ShoulderFrame frame = frame_of(old);
  const Point neck = old.side_neck + frame.drawn({strip.at_neck.x, -strip.at_neck.y});
  const Point tip = old.shoulder_point + frame.drawn({strip.at_tip.x, -strip.at_tip.y});
  put_shoulder(work, with_ends(old, {neck, tip}));
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

constexpr LawPerMm kForwardSeamLaws[] = {{"back.neckline", 1.0, LawKind::Ratio},
                                         {"front.armhole", -1.0, LawKind::Ratio},
                                         {"back.armhole", 1.0, LawKind::Ratio}};

// FrontShoulderTakenUp, BackShoulderTakenUp: the shoulder taken up at its neck end; the neck point
// at the centre comes down as far.
Opened with_neck_end_lowered(const Opened& open, double by) {
  Redrawing work(open);
  put_shoulder(work, neck_end_raised(closed_shoulder(work), -by));
  work.move(Corner::CentreNeck, {0.0, -by});
  return work.finished();
}

constexpr LawPerMm kTakeUpLaws[] = {{"front.shoulder"}, {"back.shoulder"}};

// BackShoulderDartWider: the back shoulder dart wider; the shoulder point goes out by what the seam
// would lose.
Opened with_shoulder_dart_widened(const Opened& open, double by) {
  return with_dart_widened(open, shoulder_dart(open), by);
}

constexpr LawPerMm kBackDartLaws[] = {{"front.shoulder"}, {"back.shoulder"}, {"back.waist"}};

// UpperChestTakenIn: a wedge across the upper chest, from the centre front to nothing at the across
// point, with the shoulder dart closed; the centre front stays straight.
Opened with_upper_chest_taken_in(const Opened& open, double by) {
  Redrawing work(open);
  const ClosedShoulder old = closed_shoulder(work);
  const Point hinge = rotated_about(work.at(work.across()), old.apex, old.angle);
  const double run = hinge.x - centre_at(open, hinge.y);
  put_shoulder(work, moved_off_apex(old, Placement::turn(lifting_angle(by, run), hinge)));
  work.move(Corner::CentreNeck, {0.0, -by});
  work.lengthen_armhole(0.0);
  return work.finished();
}

constexpr LawPerMm kUpperChestLaws[] = {
    {"front.armhole"}, {"front.shoulder dart"}, {"front.shoulder"}};

// ShouldersTakenUp: both shoulders, front neck, nape and underarm down as one; what lies below the
// underarm stays. The bust dart keeps its lines and its angle, and the armhole its length.
Opened with_shoulder_taken_up(const Opened& before, double by) {
  const Opened open = with_side_to_lower(before, by);
  Redrawing work(open);
  const Vec down{0.0, -by};
  const ClosedShoulder shoulder = closed_shoulder(work);
  put_shoulder(work,
               with_ends(shoulder, {shoulder.side_neck + down, shoulder.shoulder_point + down}));
  work.move(Corner::CentreNeck, down);
  work.move(Corner::Underarm, -by * up_to_the_underarm(open));
  work.move(work.across(), rotated(down, -shoulder.angle));
  work.lengthen_armhole(0.0);
  return work.finished();
}

constexpr LawPerMm kTakenUpLaws[] = {
    {"front.side", -1.0}, {"back.side", -1.0}, {"neckline"},      {"front.armhole"},
    {"back.armhole"},     {"front.shoulder"},  {"back.shoulder"}, {"waist"}};

using enum CorrectionRow;

constexpr auto kShoulderRows = std::to_array<RowMoves>({
    {ShoulderShorter, 1, on_both<with_shoulder_shortened>, shorten_laws},
    {ShoulderLonger, -1, on_both<with_shoulder_shortened>, shorten_laws},
    {ShoulderPointHigher, 1, on_both<with_tip_raised>, in_proportion<kRaiseLaws>},
    {ShoulderPointLower, -1, on_both<with_tip_raised>, in_proportion<kRaiseLaws>},
    {OneShoulderLower, -1, on_both<with_tip_raised>, in_proportion<kRaiseLaws>},
    {ShoulderPointForward, 1, forward<with_tip_alone_raised>, in_proportion<kForwardPointLaws>},
    {ShoulderSeamForward, 1, forward_shoulder_seam, in_proportion<kForwardSeamLaws>},
    {FrontShoulderTakenUp, 1, on_front<with_neck_end_lowered>, in_proportion<kTakeUpLaws>},
    {BackShoulderTakenUp, 1, on_back<with_neck_end_lowered>, in_proportion<kTakeUpLaws>},
    {BackShoulderDartWider, 1, on_back<with_shoulder_dart_widened>, in_proportion<kBackDartLaws>},
    {ShouldersTakenUp, 1, on_both<with_shoulder_taken_up>, in_proportion<kTakenUpLaws>},
    {UpperChestTakenIn, 1, on_front<with_upper_chest_taken_in>, in_proportion<kUpperChestLaws>},
});
static_assert(are_all_moves_of(RowPart::Shoulder, kShoulderRows));

}  // namespace

const std::span<const RowMoves> kShoulderMoves = kShoulderRows;

}  // namespace blockwright
