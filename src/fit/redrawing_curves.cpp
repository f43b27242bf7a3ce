#include "blockwright/fit/redrawing.hpp"

#include <cmath>

// The directions of armhole and front neckline, which follow points further off.
namespace blockwright {
namespace {

// Directions that differ by less are the same.
constexpr double kSameDirection = 1e-12;

Vec leaving_of(const CubicCurve& c) { return tangent_at(c, 0.0); }
Vec arriving_of(const CubicCurve& c) { return tangent_at(c, 1.0); }

}  // namespace

// How the armhole's heading at the across point turns: with what a row asked for, and so that it
// leans as the new points ask for. Straight up is square to the closed shoulder's level: on the
// front it is turned by the shoulder dart.
Angle Redrawing::armhole_turn() const {
  const std::size_t at_shoulder = place_of(kUpperArmhole);
  const Stroke &lower = strokes_[place_of(kLowerArmhole)], &upper = strokes_[at_shoulder];
  const Angle asked = lower.turn_to.value_or(Angle());
  const Angle shoulder = turn_at(at_shoulder, false);
  const Vec by = moved_by(lower.from);
  const bool only_shifted = by == moved_by(lower.to) && by == moved_by(upper.to);
  if (only_shifted && asked == Angle() && shoulder == Angle()) return {};
  const auto& darts = open_->edges[index_of(BlockEdge::Shoulder)].darts;
  const bool turned = is_a(open_->piece, kBodiceFront) && !darts.empty();
  const Angle open = turned ? darts.front().angle() : Angle();
  const Vec up = rotated({0.0, 1.0}, -open);
  const Vec into = arriving_of(std::get<CubicCurve>(upper.was));
  const double most = hollow_kept_ ? kHollowLean : kMostArmholeLean;
  const auto lean = [&](Point NodeState::*at, Vec across_up, Vec into_shoulder) {
    const auto place = [&](Node node) { return nodes_[node].*at; };
    const ArmholeLine line{place(lower.from), {},           place(lower.to), across_up,
                           place(upper.to),   into_shoulder};
    return lean_at_across(line, most);
  };
  const double was = lean(&NodeState::was, up, into);
  const double is = lean(&NodeState::now, rotated(up, asked), rotated(into, shoulder));
  return asked + Angle::radians(is - was);
}

// A front neckline turns one way only while its end tangents meet well on its own side of the
// centre front. On the back there is always room.
Vec Redrawing::neck_leaving(const CubicCurve& was, Vec wished, Point from, Point to) const {
  const Vec arriving = arriving_of(was);
  const bool turned = distance(Point{} + wished, Point{} + leaving_of(was)) > kSameDirection;
  const double least = std::fmin(turned ? kTurnedNeckRoom : kLeastNeckRoom,
                                 neckline_room(was.p0, leaving_of(was), was.p3, arriving));
  return neckline_leaving(from, wished, to, arriving, least);
}

CubicCurve Redrawing::bent(std::size_t stroke) const {
  const Stroke& here = strokes_[stroke];
  const auto& was = std::get<CubicCurve>(here.was);
  const Point start = nodes_[here.from].now, end = nodes_[here.to].now;
  if (here.placed) {
    const auto whole = std::get<CubicCurve>(placed(here.was, *here.placed));
    if (whole.p0 == start && whole.p3 == end) return whole;
  }
  const bool upper = here.spot == kUpperArmhole;
  const Angle from = upper ? armhole_turn() : turn_at(stroke, true);
  const Angle to = here.spot == kLowerArmhole ? armhole_turn() : turn_at(stroke, false);
  const Vec by = moved_by(here.from);
  if (by == moved_by(here.to) && from == Angle() && to == Angle()) {
    return by == Vec{} ? was : CubicCurve{was.p0 + by, was.p1 + by, was.p2 + by, was.p3 + by};
  }
  Vec leaving = rotated(leaving_of(was), from);
  const bool whole_neck =
      open_->edges[index_of(BlockEdge::Neckline)].stretches.size() == 1 && here.spot == kNeckline;
  if (whole_neck) leaving = neck_leaving(was, leaving, start, end);
  const Vec arriving = rotated(arriving_of(was), to);
  if (whole_neck) return reshaped_neckline(was, start, leaving, end, arriving);
  if (here.spot == kLowerArmhole) {
    return reshaped_lower_armhole(was, start, leaving, end, arriving);
  }
  return upper ? reshaped_upper_armhole(was, start, leaving, end, arriving)
               : reshaped(was, start, leaving, end, arriving);
}

}  // namespace blockwright
