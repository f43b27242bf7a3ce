#include "blockwright/geometry/construct.hpp"

#include <algorithm>
#include <cmath>

namespace blockwright {
namespace {

// A gap between circles that is rounding, in mm.
constexpr double kTouchingGap = 1e-9;
// No handle reaches further than this many chords; only ends that turn almost right round ask for
// more. As in the author's own implementation (from memory).
constexpr double kLongestHandle = 4.0;

struct Corner {
  double ahead_of_start;  // mm along `leaving` from the start to the corner
  double before_end;      // mm along `arriving` from the corner to the end
};

std::optional<Corner> corner_of(Point from, Vec leaving, Point to, Vec arriving) {
  const auto meet = lines_meet(from, leaving, to, arriving);
  if (!meet) return std::nullopt;
  return Corner{dot(*meet - from, unit(leaving)), dot(to - *meet, unit(arriving))};
}

// Hobby's velocity, as a share of the chord: `near` is the turn between chord and this handle.
double handle_share(double near, double far) {
  const double sqrt2 = 1.4142135623730951;
  const double sqrt5 = 2.2360679774997898;
  const double sn = std::sin(near), sf = std::sin(far), cn = std::cos(near), cf = std::cos(far);
  const double above = 2.0 + sqrt2 * (sn - sf / 16.0) * (sf - sn / 16.0) * (cn - cf);
  const double below = 1.0 + 0.5 * (sqrt5 - 1.0) * cn + 0.5 * (3.0 - sqrt5) * cf;
  // `below` is null where both ends turn by 180 degrees.
  return above < kLongestHandle * 3.0 * below ? above / (3.0 * below) : kLongestHandle;
}

}  // namespace

std::optional<Point> lines_meet(Point a, Vec along_a, Point b, Vec along_b) {
  const double turn = cross(along_a, along_b);
  if (std::abs(turn) <= 1e-12 * norm(along_a) * norm(along_b)) return std::nullopt;
  return a + (cross(b - a, along_b) / turn) * along_a;
}

std::optional<std::pair<Point, Point>> circles_meet(Point a, double radius_a, Point b,
                                                    double radius_b) {
  const double apart = distance(a, b);
  if (apart == 0.0) return std::nullopt;
  if (radius_a < 0.0 || radius_b < 0.0) return std::nullopt;
  if (apart > radius_a + radius_b + kTouchingGap) return std::nullopt;
  if (apart < std::abs(radius_a - radius_b) - kTouchingGap) return std::nullopt;
  const double radical = 0.5 * (apart + (radius_a - radius_b) * (radius_a + radius_b) / apart);
  // Beyond the circle only by the gap that counts as touching.
  const double along = std::clamp(radical, -radius_a, radius_a);
  const double square = (radius_a - along) * (radius_a + along);
  const double aside = square > 0.0 ? std::sqrt(square) : 0.0;
  const Vec u = unit(b - a);
  const Point foot = a + along * u;
  return std::pair{foot + aside * left_of(u), foot + aside * right_of(u)};
}

bool corner_is_ahead(Point from, Vec leaving, Point to, Vec arriving) {
  const auto corner = corner_of(from, leaving, to, arriving);
  return corner && corner->ahead_of_start > 0.0 && corner->before_end > 0.0;
}

CubicCurve corner_curve(Point from, Vec leaving, Point to, Vec arriving, double fullness) {
  return corner_curve(from, leaving, to, arriving, fullness, fullness);
}

CubicCurve corner_curve(Point from, Vec leaving, Point to, Vec arriving, double fullness_from,
                        double fullness_to) {
  const Vec out = unit(leaving);
  const Vec in = unit(arriving);
  const auto corner = corner_of(from, out, to, in);
  if (corner && corner->ahead_of_start > 0.0 && corner->before_end > 0.0) {
    return {from, from + fullness_from * corner->ahead_of_start * out,
            to - fullness_to * corner->before_end * in, to};
  }
  return fair_curve(from, leaving, to, arriving);
}

CubicCurve fair_curve(Point from, Vec leaving, Point to, Vec arriving, double fullness) {
  const Vec out = unit(leaving);
  const Vec in = unit(arriving);
  const double theta = turn_between(out, to - from).radians();
  const double phi = turn_between(to - from, in).radians();
  const double chord = fullness * distance(from, to);
  return {from, from + chord * handle_share(theta, phi) * out,
          to - chord * handle_share(phi, theta) * in, to};
}

}  // namespace blockwright
