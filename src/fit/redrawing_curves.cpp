#include "blockwright/fit/apply.hpp"
#include "blockwright/fit/redrawing.hpp"

#include <cmath>

// The directions of armhole and front neckline, which follow points further off.
namespace blockwright {
namespace {

Vec leaving_of(const CubicCurve& c) { return tangent_at(c, 0.0); }
Vec arriving_of(const CubicCurve& c) { return tangent_at(c, 1.0); }

// A redrawn neckline turns nowhere more sharply than within this share of its least radius, where
// it can be drawn so. Ours: a neck narrowed by 1.5 cm on each side is cut so by eye.
constexpr double kKeptRoundness = 0.75;

// Where the side neck points moved along their shoulders it turns nowhere within less than this, in
// mm, or than what it had. Ours: so round are most that are drafted.
constexpr double kRoundNeck = 20.0;
constexpr double kAlong = 1e-6;  // off the shoulder, in shares of the way

double least_radius_kept(const CubicCurve& was) {
  const double radius = least_radius(Path({was}));
  return std::fmax(kKeptRoundness * radius, std::fmin(kLeastRadius, radius));
}

// Moved as a whole, so that its ends come to lie there.
CubicCurve shifted(const CubicCurve& c, Point from, Point to) {
  const Vec by = from - c.p0;
  return by == Vec{} ? c : CubicCurve{from, c.p1 + by, c.p2 + by, to};
}

bool is_only_shifted(const ArmholeLine& was, const ArmholeLine& is) {
  const Vec by = is.underarm - was.underarm;
  return by == is.across - was.across && by == is.shoulder_point - was.shoulder_point &&
         is.along_underarm == was.along_underarm && is.up == was.up &&
         is.into_shoulder == was.into_shoulder;
}

}  // namespace

double round_enough(const CubicCurve& was) {
  constexpr double enough = 15.0;
  return std::fmin(enough, least_radius(Path({was})));
}

// What the armhole runs through before and now. Straight up is square to the closed shoulder's
// level: on the front it is turned by the shoulder dart.
Redrawing::ArmholeLines Redrawing::armhole_lines() const {
  const std::size_t at_underarm = place_of(kLowerArmhole), at_shoulder = place_of(kUpperArmhole);
  const Stroke &lower = strokes_[at_underarm], &upper = strokes_[at_shoulder];
  const auto& darts = open_->edges[index_of(BlockEdge::Shoulder)].darts;
  const bool turned = is_a(open_->piece, kBodiceFront) && !darts.empty();
  const Vec up = rotated({0.0, 1.0}, turned ? -darts.front().angle() : Angle());
  const Vec out = leaving_of(std::get<CubicCurve>(lower.was));
  const Vec into = arriving_of(std::get<CubicCurve>(upper.was));
  const auto line = [&](Point NodeState::*at, Vec along_underarm, Vec across_up,
                        Vec into_shoulder) {
    const auto place = [&](Node node) { return nodes_[node].*at; };
    return ArmholeLine{place(lower.from), along_underarm,  place(lower.to),
                       across_up,         place(upper.to), into_shoulder};
  };
  const ArmholeLine now = line(&NodeState::now, rotated(out, turn_at(at_underarm, true)),
                               rotated(up, lower.turn_to.value_or(Angle())),
                               rotated(into, turn_at(at_shoulder, false)));
  return {line(&NodeState::was, out, up, into), now};
}

double Redrawing::bring_across_in() {
  const ArmholeLine was = armhole_lines().was;
  const double by = across_in(was, at(Corner::ShoulderPoint));
  move(across(), by * left_of(was.up));
  return by;
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
  const Vec moved = moved_by(neck.from);
  const Vec along = unit(nodes_[neck.from].was - nodes_[neck.from - 1].was);
  const bool other_width = moved != Vec{};
  const bool along_shoulder = other_width && std::abs(cross(moved, along)) < kAlong * norm(moved);
  const double round = along_shoulder ? std::fmin(kRoundNeck, least_radius(Path({was})))
                       : other_width  ? round_enough(was)
                                      : 0.0;
  const double least = std::fmax(least_radius_kept(was), round);
  return rounder(draw(was, start, leaving, end, arriving), least);
}

// As a whole: each stroke depends on where both lie.
ArmholeStrokes Redrawing::redrawn_armhole() const {
  const Stroke &lower = strokes_[place_of(kLowerArmhole)],
               &upper = strokes_[place_of(kUpperArmhole)];
  const ArmholeStrokes old{std::get<CubicCurve>(lower.was), std::get<CubicCurve>(upper.was)};
  const auto [was, is] = armhole_lines();
  if (is_only_shifted(was, is)) {
    return {shifted(old.lower, is.underarm, is.across),
            shifted(old.upper, is.across, is.shoulder_point)};
  }
  const ArmholeStrokes redrawn = reshaped_armhole(old, was, is);
  return {rounder(redrawn.lower, round_enough(old.lower)), redrawn.upper};
}

CubicCurve Redrawing::bent(std::size_t stroke) const {
  const Stroke& here = strokes_[stroke];
  const auto& was = std::get<CubicCurve>(here.was);
  const Point start = nodes_[here.from].now, end = nodes_[here.to].now;
  if (here.spot == kLowerArmhole) return redrawn_armhole().lower;
  if (here.spot == kUpperArmhole) return redrawn_armhole().upper;
  if (here.placed) {
    const auto whole = std::get<CubicCurve>(placed(here.was, *here.placed));
    if (whole.p0 == start && whole.p3 == end) return whole;
  }
  const Angle from = turn_at(stroke, true), to = turn_at(stroke, false);
  const Vec by = moved_by(here.from);
  if (by == moved_by(here.to) && from == Angle() && to == Angle()) {
    return shifted(was, start, end);
  }
  const bool whole_neck = open_->edges[index_of(BlockEdge::Neckline)].stretches.size() == 1;
  if (whole_neck && here.spot == kNeckline) return bent_neckline(here, {from, to});
  const Vec leaving = rotated(leaving_of(was), from), arriving = rotated(arriving_of(was), to);
  return reshaped(was, start, leaving, end, arriving);
}

}  // namespace blockwright
