#include "blockwright/geometry/curve.hpp"
#include "blockwright/geometry/solve.hpp"

#include <algorithm>
#include <limits>

namespace blockwright {
namespace {

constexpr int kNearestSamples = 32;
constexpr double kGolden = 0.6180339887498949;

double squared_distance(const Curve& curve, double t, Point to) {
  const Vec v = point_at(curve, t) - to;
  return dot(v, v);
}

// The zero of the distance's derivative between two places on either side of it; without such,
// first a golden-section search down to where the distance no longer tells its places apart.
double refine_nearest(const Curve& curve, Stretch within, Point to) {
  auto [low, high] = within;
  const auto slope = [&](double t) {
    return dot(point_at(curve, t) - to, derivative_at(curve, t));
  };
  if (slope(low) < 0.0 && slope(high) > 0.0) return solve_between(slope, {low, high}, 1e-15);
  const auto tried = [&](double t) { return Tried{t, squared_distance(curve, t, to)}; };
  Tried a = tried(high - kGolden * (high - low)), b = tried(low + kGolden * (high - low));
  for (int step = 0; step < 24; ++step) {
    if (a.value <= b.value) {
      high = b.x;
      b = a;
      a = tried(high - kGolden * (high - low));
    } else {
      low = a.x;
      a = b;
      b = tried(low + kGolden * (high - low));
    }
  }
  return solve_between(slope, {low, high}, 1e-15);
}

}  // namespace

double nearest_parameter(const Curve& curve, Point to) {
  if (const auto* s = std::get_if<Segment>(&curve)) {
    const Vec along = s->b - s->a;
    const double square = dot(along, along);
    return square > 0.0 ? std::clamp(dot(to - s->a, along) / square, 0.0, 1.0) : 0.0;
  }
  for (const double end : {0.0, 1.0}) {
    if (squared_distance(curve, end, to) == 0.0) return end;
  }
  int best = 0;
  double best_distance = std::numeric_limits<double>::infinity();
  for (int i = 0; i <= kNearestSamples; ++i) {
    const double d = squared_distance(curve, static_cast<double>(i) / kNearestSamples, to);
    if (d < best_distance) {
      best_distance = d;
      best = i;
    }
  }
  const double low = std::max(0, best - 1) / static_cast<double>(kNearestSamples);
  const double high = std::min(kNearestSamples, best + 1) / static_cast<double>(kNearestSamples);
  double answer = refine_nearest(curve, {low, high}, to);
  for (const double end : {0.0, 1.0}) {
    if (squared_distance(curve, end, to) < squared_distance(curve, answer, to)) answer = end;
  }
  return answer;
}

}  // namespace blockwright
