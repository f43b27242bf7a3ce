#include "blockwright/geometry/construct.hpp"

#include <cmath>

namespace blockwright {
namespace {

// No handle reaches further than this many chords; only ends that turn almost right round ask for
// more. As in the author's own implementation (from memory).
constexpr double kLongestHandle = 4.0;

// The ways along the end directions from the start to the corner and from there to the end; empty
// where it does not lie ahead of the start and before the end.
std::optional<Ends> ways_by_corner(Point from, Vec leaving, Point to, Vec arriving) {
  const auto corner = lines_meet(from, leaving, to, arriving);
  if (!corner) return std::nullopt;
  const Ends ways{dot(*corner - from, unit(leaving)), dot(to - *corner, unit(arriving))};
  return ways.from > 0.0 && ways.to > 0.0 ? std::optional(ways) : std::nullopt;
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

CubicCurve corner_curve(Point from, Vec leaving, Point to, Vec arriving, double fullness) {
  return corner_curve(from, leaving, to, arriving, Ends{fullness, fullness});
}

CubicCurve corner_curve(Point from, Vec leaving, Point to, Vec arriving, Ends fullness) {
  const Vec out = unit(leaving), in = unit(arriving);
  const auto ways = ways_by_corner(from, out, to, in);
  if (!ways) return fair_curve(from, leaving, to, arriving);
  return {from, from + fullness.from * ways->from * out, to - fullness.to * ways->to * in, to};
}

CubicCurve fair_curve(Point from, Vec leaving, Point to, Vec arriving, double fullness) {
  const Vec out = unit(leaving), in = unit(arriving);
  const double theta = turn_between(out, to - from).radians();
  const double phi = turn_between(to - from, in).radians();
  const double chord = fullness * distance(from, to);
  return {from, from + chord * handle_share(theta, phi) * out,
          to - chord * handle_share(phi, theta) * in, to};
}

}  // namespace blockwright
