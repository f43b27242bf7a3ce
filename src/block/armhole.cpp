#include "blockwright/block/armhole.hpp"

#include "blockwright/block/reshape.hpp"
#include "blockwright/geometry/solve.hpp"

#include <algorithm>
#include <cmath>

namespace blockwright {
namespace {

// How far the handle at the underarm reaches to the corner of the lower armhole's end tangents: the
// more, the shorter the way to the corner is against the other. Ours: the fairest curves (least
// change of the bend) of 2250 drafted armholes had it so.
constexpr double kLeastUnderarmFullness = 0.35;
constexpr double kMoreUnderarmFullness = 0.50;
// How far the handle below the across point would reach by itself, and how far it may. Ours, from
// the same.
constexpr double kAcrossFullness = 0.60;
constexpr double kLeastAcrossFullness = 0.30;
constexpr double kMostAcrossFullness = 0.90;
// The handle above the across point, of the upper armhole's chord. Ours.
constexpr double kLeastAcrossHandle = 0.12;
constexpr double kMostAcrossHandle = 0.62;
// The handle at the shoulder stops at this share of the way to the line of the heading, so that the
// upper armhole starts bending the way that the lower one ends. Ours.
constexpr double kMostShoulderHandle = 0.88;
// What is left of a way or an offset where the end tangents leave no room, of the chord: there the
// least radius is out of reach, and the checks refuse the block. Ours.
constexpr double kLeastWay = 0.03;
constexpr double kLeastOffset = 0.001;
// The fairest heading may lie this far from `up`, to either side. Ours: the narrowest place of the
// armhole then lies within 20 mm of the across line, and is mostly within 2 mm as wide.
constexpr Angle kMostHeadingOut = Angle::degrees(6.0);
constexpr Angle kMostHeadingIn = Angle::degrees(10.0);

// The turn to the right, in radians, from a to b.
double right_turn(Vec a, Vec b) { return -turn_between(a, b).radians(); }

// How far right of `up`, in radians, the heading at the across point lies if lower and upper
// armhole bend alike there: the natural cubic spline's condition on the turns from chord to
// tangent.
double spline_heading(const ArmholeLine& line) {
  const Vec lower = line.across - line.underarm, upper = line.shoulder_point - line.across;
  const double first = right_turn(line.along_underarm, lower);
  const double last = right_turn(upper, line.into_shoulder);
  const double below = 1.0 / norm(lower), above = 1.0 / norm(upper);
  const double turn =
      (above * (2.0 * right_turn(lower, upper) - last) + below * first) / (2.0 * (below + above));
  return turn - right_turn(lower, line.up);
}

// How far `up` must lean to the centre, in radians, so that the upper armhole bends at the across
// point by its share of what it bends at the shoulder; negative where it may lean outwards as far.
double lean_for_upper(const ArmholeLine& line) {
  const Vec upper = line.shoulder_point - line.across;
  const double bend = std::fmax(right_turn(upper, line.into_shoulder), 0.0);
  return kUpperArmholeEvenness * bend - right_turn(line.up, upper);
}

// How far the heading at the across point must lean to the centre, in radians off `up`; negative
// where it may lean outwards. It runs about straight up the piece, so that the across line is about
// the narrowest; where the shoulder point lies too far in for that it leans, so that the upper
// armhole still bends one way, as far as the lower armhole allows.
double lean_at_across(const ArmholeLine& line, double lower) {
  return std::fmin(std::fmax(lean_for_upper(line), -kMostHeadingOut.radians()),
                   std::fmax(kMostArmholeLean * lower, 0.0));
}

// The heading at the across point: the fairest within its bounds, and as far in as the upper
// armhole needs it to bend one way.
Vec heading_at_across(const ArmholeLine& line) {
  const double fairest = std::fmin(-spline_heading(line), kMostHeadingIn.radians());
  const double lower = right_turn(line.across - line.underarm, line.up);
  const double needed = lean_at_across(line, lower);
  const double most = std::fmax(kMostArmholeLean * lower, 0.0);
  return unit(rotated(line.up, Angle::radians(std::fmin(std::fmax(fairest, needed), most))));
}

// The curvature of a cubic where its handle of that length lies: `offset` is how far off the line
// of that handle the other handle ends.
double bend_at_handle(double offset, double handle) {
  return 2.0 / 3.0 * offset / (handle * handle);
}
double handle_for_bend(double offset, double bend) { return std::sqrt(2.0 / 3.0 * offset / bend); }

// One end of a stroke: the other handle's offset from the tangent there, and the handle's length as
// it would be by itself, at least and at most.
struct HandleAtAcross {
  double offset, natural, least, most;
  [[nodiscard]] double bend() const { return bend_at_handle(offset, natural); }
  [[nodiscard]] Bounds bends() const {
    return {bend_at_handle(offset, most), bend_at_handle(offset, least)};
  }
};

// One bend for both strokes at the across point: the geometric mean of what each has by itself,
// within what both can have.
double bend_at_across(const HandleAtAcross& lower, const HandleAtAcross& upper) {
  const Bounds a = lower.bends(), b = upper.bends();
  const double mean = std::sqrt(lower.bend() * upper.bend());
  return std::fmax(std::fmin(mean, std::fmin(a.high, b.high)), std::fmax(a.low, b.low));
}

// Both strokes but for their handles at the across point.
struct Strokes {
  Vec heading;
  Vec first{}, last{};  // the handles at underarm and shoulder point, in the direction of travel
  HandleAtAcross lower{}, upper{};
};

void set_lower(const ArmholeLine& line, Strokes& strokes) {
  const Vec along = unit(line.along_underarm), chord = line.across - line.underarm;
  const double least = kLeastWay * norm(chord);
  const auto corner = lines_meet(line.underarm, along, line.across, strokes.heading);
  const double level = corner ? std::fmax(dot(*corner - line.underarm, along), least) : least;
  const double up = corner ? std::fmax(dot(line.across - *corner, strokes.heading), least) : least;
  const double full = kLeastUnderarmFullness + kMoreUnderarmFullness * up / (level + up);
  strokes.first = full * level * along;
  const double offset = dot(chord - strokes.first, left_of(strokes.heading));
  strokes.lower = {std::fmax(offset, kLeastOffset * norm(chord)), kAcrossFullness * up,
                   kLeastAcrossFullness * up, kMostAcrossFullness * up};
}

void set_upper(const ArmholeLine& line, Strokes& strokes) {
  const Vec along = unit(line.into_shoulder), chord = line.shoulder_point - line.across;
  const Vec out = right_of(strokes.heading);
  const CubicCurve fair =
      fair_curve(line.across, strokes.heading, line.shoulder_point, line.into_shoulder);
  const double least = kLeastOffset * norm(chord);
  const double aside = std::fmax(dot(chord, out), least), outwards = dot(along, out);
  double handle = distance(fair.p2, fair.p3);
  if (outwards > 0.0) handle = std::fmin(handle, kMostShoulderHandle * aside / outwards);
  strokes.last = handle * along;
  strokes.upper = {std::fmax(aside - handle * outwards, least), distance(fair.p0, fair.p1),
                   kLeastAcrossHandle * norm(chord), kMostAcrossHandle * norm(chord)};
}

ArmholeStrokes drawn(const ArmholeLine& line) {
  Strokes strokes{.heading = heading_at_across(line)};
  set_lower(line, strokes);
  set_upper(line, strokes);
  const double bend = bend_at_across(strokes.lower, strokes.upper);
  const double below = handle_for_bend(strokes.lower.offset, bend);
  const double above = handle_for_bend(strokes.upper.offset, bend);
  return {CubicCurve{line.underarm, line.underarm + strokes.first,
                     line.across - below * strokes.heading, line.across},
          CubicCurve{line.across, line.across + above * strokes.heading,
                     line.shoulder_point - strokes.last, line.shoulder_point}};
}

}  // namespace

double across_in(const ArmholeLine& line, Point new_shoulder_point) {
  const Vec out = right_of(line.up);
  const double was = dot(line.shoulder_point - line.across, out);
  const double is = dot(new_shoulder_point - line.across, out);
  return std::fmax(std::fmin(was, kLeastAcrossInside) - is, 0.0);
}

Path armhole(const ArmholeLine& line) {
  const ArmholeStrokes strokes = drawn(line);
  return Path({strokes.lower, strokes.upper});
}

ArmholeStrokes reshaped_armhole(const ArmholeStrokes& old, const ArmholeLine& was,
                                const ArmholeLine& is) {
  const ArmholeStrokes drafted_was = drawn(was), drafted_is = drawn(is);
  const auto redrawn = [&](CubicCurve ArmholeStrokes::*stroke) {
    return redrawn_as(old.*stroke, {drafted_was.*stroke, drafted_is.*stroke});
  };
  return {redrawn(&ArmholeStrokes::lower), redrawn(&ArmholeStrokes::upper)};
}

}  // namespace blockwright
