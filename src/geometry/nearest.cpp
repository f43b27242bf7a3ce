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
double refine_nearest(const Curve& curve, double low, double high, Point to) {
  const auto slope = [&](double t) {
    return dot(point_at(curve, t) - to, derivative_at(curve, t));
  };
  if (slope(low) < 0.0 && slope(high) > 0.0) return solve_between(slope, low, high, 1e-15);
  double a = high - kGolden * (high - low);
  double b = low + kGolden * (high - low);
  double at_a = squared_distance(curve, a, to);
  double at_b = squared_distance(curve, b, to);
  for (int step = 0; step < 24; ++step) {
    if (at_a <= at_b) {
      high = b;
      b = a;
      at_b = at_a;
      a = high - kGolden * (high - low);
      at_a = squared_distance(curve, a, to);
    } else {
      low = a;
      a = b;
      at_a = at_b;
      b = low + kGolden * (high - low);
      at_b = squared_distance(curve, b, to);
    }
  }
  return solve_between(slope, low, high, 1e-15);
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
  const double t = refine_nearest(curve, low, high, to);
  double answer = t;
  for (const double end : {0.0, 1.0}) {
    if (squared_distance(curve, end, to) < squared_distance(curve, answer, to)) answer = end;
  }
  return answer;
}

}  // namespace blockwright
