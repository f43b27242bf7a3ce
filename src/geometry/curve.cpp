#include "blockwright/geometry/curve.hpp"

#include "arc_length.hpp"

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

// A turn from one direction to another, by its sine and cosine.
struct Turn {
  double sine = 0.0, cosine = 1.0;
};

// How a curve turns from a handle to the chord, and how at the other handle.
struct Turns {
  Turn near, far;
};

// Requires: unit vectors.
Turn turn(Vec from, Vec to) { return {cross(from, to), dot(from, to)}; }

// Hobby's velocity, as a share of the chord: for the handle at `near`.
double handle_share(const Turns& turns) {
  const double sqrt2 = 1.4142135623730951;
  const double sqrt5 = 2.2360679774997898;
  const auto [sn, cn] = turns.near;
  const auto [sf, cf] = turns.far;
  const double above = 2.0 + sqrt2 * (sn - sf / 16.0) * (sf - sn / 16.0) * (cn - cf);
  const double below = 1.0 + 0.5 * (sqrt5 - 1.0) * cn + 0.5 * (3.0 - sqrt5) * cf;
  // `below` is null where both ends turn by 180 degrees.
  return above < kLongestHandle * 3.0 * below ? above / (3.0 * below) : kLongestHandle;
}

}  // namespace

Vec second_derivative(const CubicCurve& c, double t) {
  return 6.0 * (1.0 - t) * ((c.p2 - c.p1) - (c.p1 - c.p0)) +
         6.0 * t * ((c.p3 - c.p2) - (c.p2 - c.p1));
}

CubicCurve as_cubic(const Curve& curve) {
  if (const auto* c = std::get_if<CubicCurve>(&curve)) return *c;
  const auto& s = std::get<Segment>(curve);
  return {s.a, between(s.a, s.b, 1.0 / 3.0), between(s.a, s.b, 2.0 / 3.0), s.b};
}

Point start_of(const Curve& curve) {
  if (const auto* s = std::get_if<Segment>(&curve)) return s->a;
  return std::get<CubicCurve>(curve).p0;
}

Point end_of(const Curve& curve) {
  if (const auto* s = std::get_if<Segment>(&curve)) return s->b;
  return std::get<CubicCurve>(curve).p3;
}

Point point_at(const Curve& curve, double t) {
  if (const auto* s = std::get_if<Segment>(&curve)) return between(s->a, s->b, t);
  const auto& c = std::get<CubicCurve>(curve);
  const double u = 1.0 - t;
  const double b0 = u * u * u, b1 = 3.0 * u * u * t, b2 = 3.0 * u * t * t, b3 = t * t * t;
  return {b0 * c.p0.x + b1 * c.p1.x + b2 * c.p2.x + b3 * c.p3.x,
          b0 * c.p0.y + b1 * c.p1.y + b2 * c.p2.y + b3 * c.p3.y};
}

Vec derivative_at(const Curve& curve, double t) {
  if (const auto* s = std::get_if<Segment>(&curve)) return s->b - s->a;
  const auto& c = std::get<CubicCurve>(curve);
  const double u = 1.0 - t;
  return 3.0 * u * u * (c.p1 - c.p0) + 6.0 * u * t * (c.p2 - c.p1) + 3.0 * t * t * (c.p3 - c.p2);
}

Vec tangent_at(const Curve& curve, double t) {
  const Vec d = derivative_at(curve, t);
  if (norm(d) > 1e-12) return unit(d);
  if (const auto* c = std::get_if<CubicCurve>(&curve)) {
    const Vec second = second_derivative(*c, t);
    if (norm(second) > 1e-12) return unit(t < 0.5 ? second : -second);
    return unit(c->p3 - c->p0);
  }
  return {};
}

double curvature_at(const Curve& curve, double t) {
  const auto* c = std::get_if<CubicCurve>(&curve);
  if (c == nullptr) return 0.0;
  const Vec d = derivative_at(curve, t);
  const double speed = norm(d);
  return speed > 1e-12 ? cross(d, second_derivative(*c, t)) / (speed * speed * speed) : 0.0;
}

double length(const Curve& curve, double accuracy) {
  if (const auto* s = std::get_if<Segment>(&curve)) return distance(s->a, s->b);
  return arc_length(std::get<CubicCurve>(curve), {0.0, 1.0}, accuracy);
}

double parameter_at_length(const Curve& curve, double s) {
  return parameter_at_length(Measured{curve, length(curve)}, s);
}

std::pair<Curve, Curve> split_at(const Curve& curve, double t) {
  if (const auto* s = std::get_if<Segment>(&curve)) {
    const Point m = between(s->a, s->b, t);
    return {Segment{s->a, m}, Segment{m, s->b}};
  }
  const auto& c = std::get<CubicCurve>(curve);
  const Point a = between(c.p0, c.p1, t), b = between(c.p1, c.p2, t), d = between(c.p2, c.p3, t);
  const Point ab = between(a, b, t), bd = between(b, d, t), m = between(ab, bd, t);
  return {CubicCurve{c.p0, a, ab, m}, CubicCurve{m, bd, d, c.p3}};
}

Curve reversed(const Curve& curve) {
  if (const auto* s = std::get_if<Segment>(&curve)) return Segment{s->b, s->a};
  const auto& c = std::get<CubicCurve>(curve);
  return CubicCurve{c.p3, c.p2, c.p1, c.p0};
}

Curve placed(const Curve& curve, const Placement& placement) {
  if (const auto* s = std::get_if<Segment>(&curve)) {
    return Segment{placement(s->a), placement(s->b)};
  }
  const auto& c = std::get<CubicCurve>(curve);
  return CubicCurve{placement(c.p0), placement(c.p1), placement(c.p2), placement(c.p3)};
}

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
  const Vec straight = to == from ? out : unit(to - from);
  const Turn theta = turn(out, straight), phi = turn(straight, in);
  const double chord = fullness * distance(from, to);
  return {from, from + chord * handle_share({theta, phi}) * out,
          to - chord * handle_share({phi, theta}) * in, to};
}

}  // namespace blockwright
