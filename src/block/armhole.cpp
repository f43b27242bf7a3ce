#include "blockwright/block/armhole.hpp"

#include "blockwright/block/reshape.hpp"

#include <algorithm>
#include <cmath>

namespace blockwright {
namespace {

// How far the lower armhole's handles reach to the corner of its end tangents (a quarter ellipse
// has 0.5523): the more, the shorter the way to the corner is against the other. Ours, by eye.
constexpr double kLeastArmholeFullness = 0.42;
constexpr double kMostArmholeFullness = 0.90;
// Shortest upper handle of an upper armhole, of its chord. Ours, by eye.
constexpr double kLeastHandle = 0.12;
// As the way to the corner grows shorter, the handles of a lower armhole rather keep their length,
// as far as it still bends one way.
constexpr double kArmholeFollows = 2.0;

// The turn to the right, in radians, from a to b.
double right_turn(Vec a, Vec b) { return -turn_between(a, b).radians(); }

// A fair curve whose upper handle stops short of the corner of the end tangents, so that it bends
// one way wherever it can. `along` is `arriving` as a unit vector.
CubicCurve fair_upper_armhole(Vec along, Point across, Vec heading, Point shoulder_point,
                              Vec arriving) {
  CubicCurve curve = fair_curve(across, heading, shoulder_point, arriving);
  const Vec chord = shoulder_point - across;
  const double out = right_turn(heading, chord);
  const double bend = right_turn(chord, arriving);
  if (bend <= 0.0) return curve;
  const double corner = out > 0.0 ? std::sin(out) / std::sin(out + bend) : 0.0;
  const double reach = std::max(kLeastHandle, corner) * norm(chord);
  curve.p2 = curve.p3 - std::min(distance(curve.p2, curve.p3), reach) * along;
  return curve;
}

// Its handles reach further to the corner of the end tangents on the shorter way, so that it is
// round both where a narrow armhole is deep and where a wide one is shallow.
CubicCurve lower_armhole(const ArmholeLine& line, Vec heading) {
  const auto corner = lines_meet(line.underarm, line.along_underarm, line.across, heading);
  const double level = corner ? distance(line.underarm, *corner) : 1.0;
  const double up = corner ? distance(*corner, line.across) : 1.0;
  const double share = up / (level + up);
  const double more = kMostArmholeFullness - kLeastArmholeFullness;
  return corner_curve(
      line.underarm, line.along_underarm, line.across, heading,
      {kLeastArmholeFullness + more * share, kLeastArmholeFullness + more * (1.0 - share)});
}

}  // namespace

double lean_at_across(const ArmholeLine& line, double most) {
  const Vec upper = line.shoulder_point - line.across;
  const double out = right_turn(line.up, upper);
  const double bend = right_turn(upper, line.into_shoulder);
  const double lower = right_turn(line.across - line.underarm, line.up);
  return std::fmin(std::fmax(kUpperArmholeEvenness * bend - out, 0.0), most * lower);
}

Path armhole(const ArmholeLine& line) {
  const Vec heading = rotated(line.up, Angle::radians(lean_at_across(line)));
  Path path;
  path.add(lower_armhole(line, heading));
  path.add(fair_upper_armhole(line.into_shoulder, line.across, heading, line.shoulder_point,
                              line.into_shoulder));
  return path;
}

CubicCurve reshaped_lower_armhole(const CubicCurve& old, Point from, Vec leaving, Point to,
                                  Vec arriving) {
  return bent_one_way(old, from, unit(leaving), to, unit(arriving), kArmholeFollows);
}

CubicCurve reshaped_upper_armhole(const CubicCurve& old, Point from, Vec leaving, Point to,
                                  Vec arriving) {
  const Vec ended = old.p3 - old.p2;
  const CubicCurve was = fair_upper_armhole(unit(ended), old.p0, old.p1 - old.p0, old.p3, ended);
  const CubicCurve is = fair_upper_armhole(unit(arriving), from, leaving, to, arriving);
  const double first = distance(old.p0, old.p1) / distance(was.p0, was.p1);
  const double last = distance(old.p2, old.p3) / distance(was.p2, was.p3);
  return {from, from + first * (is.p1 - is.p0), to - last * (is.p3 - is.p2), to};
}

}  // namespace blockwright
