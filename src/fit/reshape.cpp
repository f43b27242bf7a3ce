#include "blockwright/fit/redrawing.hpp"
#include "blockwright/geometry/construct.hpp"
#include "blockwright/geometry/solve.hpp"

#include <algorithm>
#include <cmath>

namespace blockwright {
namespace {

// Handles that reach between these shares of the way to the corner of the end tangents bend a cubic
// one way; a handle is not changed by more than four times to keep it so.
constexpr double kLeastFullness = 0.01;
constexpr double kMostFullness = 0.97;
constexpr double kMostStretch = 4.0;
// Bounds of with_length().
constexpr double kLeastHandles = 0.75;
constexpr double kMostHandles = 1.33;

// Ways from both ends to where the end tangents meet.
struct Ways {
  double from, to;
};

std::optional<Ways> ways_to_corner(Point from, Vec leaving, Point to, Vec arriving) {
  const auto corner = lines_meet(from, leaving, to, arriving);
  if (!corner) return std::nullopt;
  return Ways{dot(*corner - from, leaving), dot(to - *corner, arriving)};
}

bool is_fullness(double share) { return share >= kLeastFullness && share <= kMostFullness; }
bool is_like(double ratio) { return ratio >= 1.0 / kMostStretch && ratio <= kMostStretch; }

CubicCurve with_handles(Point from, Vec out, Point to, Vec in) {
  return {from, from + out, to - in, to};
}

}  // namespace

namespace {

CubicCurve with_kept_handles(const CubicCurve& old, Point from, Vec out, Point to, Vec in) {
  return with_handles(from, distance(old.p0, old.p1) * out, to, distance(old.p2, old.p3) * in);
}

// Empty where the old curve does not bend one way, or the new one cannot.
std::optional<CubicCurve> with_kept_fullness(const CubicCurve& old, Point from, Vec out, Point to,
                                             Vec in) {
  const double first = distance(old.p0, old.p1), last = distance(old.p2, old.p3);
  const auto was = ways_to_corner(old.p0, unit(old.p1 - old.p0), old.p3, unit(old.p3 - old.p2));
  const auto is = ways_to_corner(from, out, to, in);
  if (!was || !is || !is_fullness(first / was->from) || !is_fullness(last / was->to)) return {};
  const Ways by{is->from / was->from, is->to / was->to};
  if (!is_like(by.from) || !is_like(by.to)) return {};
  return with_handles(from, by.from * first * out, to, by.to * last * in);
}

bool bends_one_way(const CubicCurve& curve) {
  const Vec out = unit(curve.p1 - curve.p0), in = unit(curve.p3 - curve.p2);
  const auto ways = ways_to_corner(curve.p0, out, curve.p3, in);
  return ways && is_fullness(distance(curve.p0, curve.p1) / ways->from) &&
         is_fullness(distance(curve.p2, curve.p3) / ways->to);
}

}  // namespace

CubicCurve reshaped(const CubicCurve& old, Point from, Vec leaving, Point to, Vec arriving) {
  const Vec out = unit(leaving), in = unit(arriving);
  const CubicCurve kept = with_kept_handles(old, from, out, to, in);
  if (bends_one_way(kept)) return kept;
  return with_kept_fullness(old, from, out, to, in).value_or(kept);
}

CubicCurve reshaped_neckline(const CubicCurve& old, Point from, Vec leaving, Point to,
                             Vec arriving) {
  const Vec out = unit(leaving), in = unit(arriving);
  return with_kept_fullness(old, from, out, to, in)
      .value_or(with_kept_handles(old, from, out, to, in));
}

namespace {

// Shortest upper handle of an upper armhole, of its chord. As drafted.
constexpr double kLeastHandle = 0.12;

CubicCurve fair_upper_armhole(Point from, Vec leaving, Point to, Vec arriving) {
  CubicCurve curve = fair_curve(from, leaving, to, arriving);
  const Vec chord = to - from;
  const double out = -turn_between(leaving, chord).radians();
  const double bend = -turn_between(chord, arriving).radians();
  if (bend <= 0.0) return curve;
  const double corner = out > 0.0 ? std::sin(out) / std::sin(out + bend) : 0.0;
  const double reach = std::max(kLeastHandle, corner) * norm(chord);
  curve.p2 = curve.p3 - std::min(distance(curve.p2, curve.p3), reach) * unit(arriving);
  return curve;
}

}  // namespace

CubicCurve reshaped_upper_armhole(const CubicCurve& old, Point from, Vec leaving, Point to,
                                  Vec arriving) {
  const CubicCurve was = fair_upper_armhole(old.p0, old.p1 - old.p0, old.p3, old.p3 - old.p2);
  const CubicCurve is = fair_upper_armhole(from, leaving, to, arriving);
  const double first = distance(old.p0, old.p1) / distance(was.p0, was.p1);
  const double last = distance(old.p2, old.p3) / distance(was.p2, was.p3);
  return with_handles(from, first * (is.p1 - is.p0), to, last * (is.p3 - is.p2));
}

CubicCurve with_length(const CubicCurve& curve, double wanted) {
  const auto scaled = [&](double by) {
    return with_handles(curve.p0, by * (curve.p1 - curve.p0), curve.p3, by * (curve.p3 - curve.p2));
  };
  const auto too_long = [&](double by) { return length(Curve(scaled(by))) - wanted; };
  return scaled(solve_between(too_long, kLeastHandles, kMostHandles, 1e-12));
}

}  // namespace blockwright
