#include "blockwright/fit/apply.hpp"
#include "blockwright/fit/redrawing.hpp"

#include <cmath>

// The directions of armhole and front neckline, which follow points further off.
namespace blockwright {
namespace {

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

// Where a front neckline's side neck point has moved, or its shoulder turned, it leaves the
// shoulder as it is drafted: square, but for what its corner needs of room at the centre front.
Vec Redrawing::neck_leaving(const Stroke& neck) const {
  const auto& was = std::get<CubicCurve>(neck.was);
  const Vec arriving = arriving_of(was);
  const auto drafted = [&](Point NodeState::*at) {
    const Point from = nodes_[neck.from].*at, before = nodes_[neck.from - 1].*at;
    return neckline_leaving(from, left_of(unit(from - before)), nodes_[neck.to].*at, arriving,
                            kNeckCornerRoom);
  };
  const Angle turn = turn_between(drafted(&NodeState::was), drafted(&NodeState::now));
  return rotated(leaving_of(was), turn);
}

// Where only its depth has changed, a neckline keeps its direction at the side neck point, as long
// as its end tangents meet on its own side of the centre front.
Vec Redrawing::neck_kept(const Stroke& neck, Vec leaving) const {
  const auto& was = std::get<CubicCurve>(neck.was);
  const Vec arriving = arriving_of(was);
  const double least =
      std::fmin(kLeastNeckRoom, neckline_room(was.p0, leaving_of(was), was.p3, arriving));
  return neckline_leaving(nodes_[neck.from].now, leaving, nodes_[neck.to].now, arriving, least);
}

// The neckline of a piece without a neck dart.
CubicCurve Redrawing::bent_neckline(const Stroke& neck, const EndTurns& turns) const {
  const auto& was = std::get<CubicCurve>(neck.was);
  const bool front = is_a(open_->piece, kBodiceFront);
  const bool at_shoulder = moved_by(neck.from) != Vec{} || turns.from != Angle();
  const Vec kept = rotated(leaving_of(was), turns.from);
  const bool as_drafted = front && at_shoulder && !neck.turn_from;
  const Vec leaving = as_drafted ? neck_leaving(neck) : neck_kept(neck, kept);
  const Point start = nodes_[neck.from].now, end = nodes_[neck.to].now;
  const Vec arriving = rotated(arriving_of(was), turns.to);
  const auto draw = front ? reshaped_front_neckline : reshaped_neckline;
  return rounder_neckline(draw(was, start, leaving, end, arriving),
                          std::fmin(kLeastRadius, least_radius(Path({was}))));
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
  const bool whole_neck = open_->edges[index_of(BlockEdge::Neckline)].stretches.size() == 1;
  if (whole_neck && here.spot == kNeckline) return bent_neckline(here, {from, to});
  const Vec leaving = rotated(leaving_of(was), from), arriving = rotated(arriving_of(was), to);
  if (here.spot == kLowerArmhole) {
    return reshaped_lower_armhole(was, start, leaving, end, arriving);
  }
  return upper ? reshaped_upper_armhole(was, start, leaving, end, arriving)
               : reshaped(was, start, leaving, end, arriving);
}

}  // namespace blockwright
