#include "blockwright/block/reshape.hpp"

#include "blockwright/geometry/path.hpp"
#include "blockwright/geometry/solve.hpp"

#include <cmath>
#include <optional>

namespace blockwright {
namespace {

// Handles that reach between these shares of the way to the corner of the end tangents bend a cubic
// one way.
constexpr double kLeastFullness = 0.01;
constexpr double kMostFullness = 0.999;
// A curve is made rounder in so many steps, and the roundest is sought on a grid of as many. Ours.
constexpr int kRoundSteps = 20;
// Bounds of with_length().
constexpr double kLeastHandles = 0.75;
constexpr double kMostHandles = 1.33;

// The ways from both ends to where the end tangents meet. Requires: directions of length 1.
std::optional<Ends> ways_to_corner(Point from, Vec leaving, Point to, Vec arriving) {
  const auto corner = lines_meet(from, leaving, to, arriving);
  if (!corner) return std::nullopt;
  return Ends{dot(*corner - from, leaving), dot(to - *corner, arriving)};
}

// Of a handle that reaches so far on its way: scaled, they stay those of a share below 1.
double odds_of(double share) { return share / (1.0 - share); }
double share_of(double odds) { return odds / (1.0 + odds); }

bool is_fullness(double share) { return share >= kLeastFullness && share <= kMostFullness; }

CubicCurve with_handles(Point from, Vec out, Point to, Vec in) {
  return {from, from + out, to - in, to};
}

CubicCurve with_kept_handles(const CubicCurve& old, Point from, Vec out, Point to, Vec in) {
  return with_handles(from, distance(old.p0, old.p1) * out, to, distance(old.p2, old.p3) * in);
}

// How far each handle reaches on the way to the corner of the end tangents; empty if they do not
// meet ahead, or if a handle reaches beyond.
std::optional<Ends> fullness_of(const CubicCurve& curve) {
  const Vec out = unit(curve.p1 - curve.p0), in = unit(curve.p3 - curve.p2);
  const auto ways = ways_to_corner(curve.p0, out, curve.p3, in);
  if (!ways) return std::nullopt;
  const Ends full{distance(curve.p0, curve.p1) / ways->from,
                  distance(curve.p2, curve.p3) / ways->to};
  if (!is_fullness(full.from) || !is_fullness(full.to)) return std::nullopt;
  return full;
}

// A handle that turns and grows as the drafted one does.
Vec redrawn_handle(Vec old, Vec was, Vec is) {
  return norm(is) / norm(was) * rotated(old, turn_between(was, is));
}

double radius_of(const CubicCurve& curve) { return least_radius(Path({curve})); }

// How far both handles of the roundest curve reach to the corner. `drawn`: a curve with such
// handles.
Ends roundest(const auto& drawn) {
  Ends best{};
  double most = 0.0;
  for (int i = 1; i < kRoundSteps; ++i) {
    for (int j = 1; j < kRoundSteps; ++j) {
      const Ends reach{static_cast<double>(i) / kRoundSteps, static_cast<double>(j) / kRoundSteps};
      const double radius = radius_of(drawn(reach));
      if (radius <= most) continue;
      most = radius;
      best = reach;
    }
  }
  return best;
}

}  // namespace

CubicCurve bent_one_way(const CubicCurve& old, Point from, Vec out, Point to, Vec in,
                        double follows) {
  const auto full = fullness_of(old);
  const auto was = ways_to_corner(old.p0, unit(old.p1 - old.p0), old.p3, unit(old.p3 - old.p2));
  const auto is = ways_to_corner(from, out, to, in);
  if (!full || !is || is->from <= 0.0 || is->to <= 0.0) {
    return with_kept_handles(old, from, out, to, in);
  }
  // The odds s / (1 - s) of a handle's share s of the way are scaled, so that it stays below 1.
  const auto handle = [&](double Ends::*end) {
    const double share = *full.*end, way = *is.*end;
    return share_of(odds_of(share) * std::pow(*was.*end / way, follows)) * way;
  };
  return with_handles(from, handle(&Ends::from) * out, to, handle(&Ends::to) * in);
}

CubicCurve reshaped(const CubicCurve& old, Point from, Vec leaving, Point to, Vec arriving) {
  return with_kept_handles(old, from, unit(leaving), to, unit(arriving));
}

CubicCurve redrawn_as(const CubicCurve& old, const DraftedCurves& drafted) {
  const auto& [was, is] = drafted;
  const Vec leaving = redrawn_handle(old.p1 - old.p0, was.p1 - was.p0, is.p1 - is.p0);
  const Vec arriving = redrawn_handle(old.p3 - old.p2, was.p3 - was.p2, is.p3 - is.p2);
  const auto share = fullness_of(old), share_was = fullness_of(was), share_is = fullness_of(is);
  const auto ways = ways_to_corner(is.p0, unit(leaving), is.p3, unit(arriving));
  const bool bends_one_way = share && share_was && share_is && ways;
  if (!bends_one_way || ways->from <= 0.0 || ways->to <= 0.0) {
    return with_handles(is.p0, leaving, is.p3, arriving);
  }
  const auto handle = [&](double Ends::*end) {
    const double odds = odds_of(*share.*end) * odds_of(*share_is.*end) / odds_of(*share_was.*end);
    return share_of(odds) * *ways.*end;
  };
  return with_handles(is.p0, handle(&Ends::from) * unit(leaving), is.p3,
                      handle(&Ends::to) * unit(arriving));
}

CubicCurve with_length(const CubicCurve& curve, double wanted) {
  const auto scaled = [&](double by) {
    return with_handles(curve.p0, by * (curve.p1 - curve.p0), curve.p3, by * (curve.p3 - curve.p2));
  };
  double most = kMostHandles;
  if (const auto full = fullness_of(curve)) {
    most = std::fmin(most, kMostFullness / std::fmax(full->from, full->to));
  }
  const auto too_long = [&](double by) { return length(Curve(scaled(by))) - wanted; };
  return scaled(solve_between(too_long, {kLeastHandles, most}, 1e-12));
}

CubicCurve rounder(const CubicCurve& curve, double radius) {
  const Vec leaving = unit(curve.p1 - curve.p0), arriving = unit(curve.p3 - curve.p2);
  const auto ways = ways_to_corner(curve.p0, leaving, curve.p3, arriving);
  if (!ways || ways->from <= 0.0 || ways->to <= 0.0 || radius_of(curve) >= radius) return curve;
  const Ends own{distance(curve.p0, curve.p1) / ways->from,
                 distance(curve.p2, curve.p3) / ways->to};
  const auto drawn = [&](const Ends& reach) {
    return corner_curve(curve.p0, leaving, curve.p3, arriving, reach);
  };
  const Ends best = roundest(drawn);
  if (radius_of(drawn(best)) <= radius_of(curve)) return curve;
  for (int step = 1; step < kRoundSteps; ++step) {
    const double share = static_cast<double>(step) / kRoundSteps;
    const CubicCurve nearer =
        drawn({std::lerp(own.from, best.from, share), std::lerp(own.to, best.to, share)});
    if (radius_of(nearer) >= radius) return nearer;
  }
  return drawn(best);
}

}  // namespace blockwright
