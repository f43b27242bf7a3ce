#include "blockwright/geometry/curve.hpp"

#include "support/each.hpp"
#include "support/random_shapes.hpp"

#include <catch2/catch.hpp>

#include <algorithm>
#include <limits>
#include <numbers>
#include <vector>

using namespace blockwright;

namespace {

const std::vector<double> kAccuracies = {1e-1, 1e-2, 1e-3, 1e-4, 1e-5,
                                         1e-6, 1e-7, 1e-8, 1e-9, 1e-10};

struct KnownLength {
  const char* what;
  CubicCurve curve;
  double length;
};

Point at(double x, double y) { return {x, y}; }

// y = bend x^2 from x = 0 to x = width, raised from a parabola to a cubic.
KnownLength parabola(double bend, double width) {
  const double h = bend * width * width;
  const double k = 2.0 * bend * width;
  const CubicCurve curve = {at(0, 0), at(width / 3.0, 0), at(2.0 * width / 3.0, h / 3.0),
                            at(width, h)};
  return {"parabola", curve, 0.5 * width * std::sqrt(1.0 + k * k) + std::asinh(k) / (4.0 * bend)};
}

// The semicubical parabola (t^2, t^3) in units of 100 mm, for t from -1 to 1, with its cusp in the
// middle, or for t from 0 to 1, with its cusp at the start.
KnownLength cusp_in_the_middle() {
  const CubicCurve c = {at(100, -100), at(-100.0 / 3, 100), at(-100.0 / 3, -100), at(100, 100)};
  return {"cusp in the middle", c, 200.0 * (13.0 * std::sqrt(13.0) - 8.0) / 27.0};
}

KnownLength cusp_at_the_start() {
  const CubicCurve c = {at(0, 0), at(0, 0), at(100.0 / 3, 0), at(100, 100)};
  return {"cusp at the start", c, 100.0 * (13.0 * std::sqrt(13.0) - 8.0) / 27.0};
}

// The derivative of such a cubic is the square of a linear complex function, a (1 - t) + b t, so
// that its speed is a polynomial (R. T. Farouki and T. Sakkalis, "Pythagorean hodographs", 1990).
KnownLength squared_hodograph(Vec a, Vec b) {
  const auto product = [](Vec u, Vec v) {
    return Vec{u.x * v.x - u.y * v.y, u.x * v.y + u.y * v.x};
  };
  const Point p0 = {10.0, 20.0};
  const Point p1 = p0 + 1.0 / 3.0 * product(a, a);
  const Point p2 = p1 + 1.0 / 3.0 * product(a, b);
  const Point p3 = p2 + 1.0 / 3.0 * product(b, b);
  return {"squared hodograph", {p0, p1, p2, p3}, (dot(a, a) + dot(a, b) + dot(b, b)) / 3.0};
}

// A cubic that runs along a line at uneven speed and may turn back on it: the four control points'
// places on the line, and what it runs from turn to turn.
KnownLength straight(double p0, double p1, double p2, double p3, double length) {
  const Vec along = direction(Angle::degrees(37.0));
  const Point o = {5.0, -3.0};
  return {"straight", {o + p0 * along, o + p1 * along, o + p2 * along, o + p3 * along}, length};
}

KnownLength out_and_back() { return straight(0, 80, 80, 0, 120); }          // turns at 60
KnownLength to_and_fro() { return straight(0, 300, -200, 100, 300); }       // turns at 100 and 0
KnownLength standing_still() { return straight(0, 100, 0, 100, 100); }      // rests at 50
KnownLength even() { return straight(0, 100.0 / 3, 200.0 / 3, 100, 100); }  // a steady pace

std::vector<KnownLength> known_lengths() {
  std::vector<KnownLength> known = {parabola(0.001, 200.0),
                                    parabola(0.05, 120.0),
                                    parabola(2.0, 20.0),
                                    cusp_in_the_middle(),
                                    cusp_at_the_start(),
                                    out_and_back(),
                                    to_and_fro(),
                                    standing_still(),
                                    even(),
                                    straight(0, 10, 90, 100, 100),
                                    straight(0, 0, 0, 100, 100)};
  for (RandomCase& random : each_random(500, 11)) {
    const Vec a = random.between(5.0, 20.0) * random_heading(random);
    // A third of them pass close to standing still, where b is nearly -a.
    const Vec b = random.number % 3 == 0 ? -a + random.between(0.0, 0.1) * random_heading(random)
                                         : random.between(5.0, 20.0) * random_heading(random);
    known.push_back(squared_hodograph(a, b));
  }
  return known;
}

// The longest that rounding alone may change a length of some 100 mm.
constexpr double kRounding = 2e-12;

}  // namespace

TEST_CASE("arc lengths agree with their closed forms within the accuracy asked for") {
  for (const KnownLength& known : known_lengths()) {
    for (const double accuracy : kAccuracies) {
      CAPTURE(known.what, known.length, accuracy);
      REQUIRE(std::abs(length(known.curve, accuracy) - known.length) <= accuracy + kRounding);
    }
    REQUIRE(std::abs(length(known.curve) - known.length) <= kLengthAccuracy);
  }
}

TEST_CASE("the lengths of ever more arcs tend to the circle's") {
  // The radius is off by 2.7e-4 for four arcs and by the sixth power of the angle for more.
  for (const int arcs : {4, 8, 16, 64}) {
    const Path circle = round_path({200.0, 100.0}, 100.0, arcs);
    const double off = length(circle) - 2.0 * std::numbers::pi * 100.0;
    CAPTURE(arcs);
    CHECK(std::abs(off) < 0.2 * std::pow(4.0 / arcs, 6.0) + 1e-9);
    CHECK(off > -1e-9);
  }
}

TEST_CASE("a cusp anywhere and a curve that all but has one keep their accuracy") {
  // No closed form: the reference is the sum of 4096 parts, each measured by itself.
  for (Random& random : each_random(20, 12)) {
    const double past = std::pow(10.0, random.between(-12.0, -1.0));
    const CubicCurve curve = {{0, 0}, {100.0 + past, 70}, {0.0, 70.0 + past}, {100, 0}};
    double sum = 0.0;
    Curve rest = curve;
    for (int k = 4096; k > 1; --k) {
      const auto [head, tail] = split_at(rest, 1.0 / k);
      sum += length(head, 1e-15);
      rest = tail;
    }
    sum += length(rest, 1e-15);
    for (const double accuracy : kAccuracies) {
      REQUIRE(std::abs(length(curve, accuracy) - sum) <= accuracy + 1e-11);
    }
  }
}

TEST_CASE("the parts of a split curve add up to the whole and join exactly") {
  for (Random& random : each_random(2000, 1)) {
    const Curve curve = random_cubic(random, 300.0);
    const double t = random.between(0.0, 1.0);
    const auto [before, after] = split_at(curve, t);
    REQUIRE(length(before) + length(after) == Approx(length(curve)).margin(3e-10).epsilon(0));
    REQUIRE(end_of(before) == start_of(after));
    REQUIRE(start_of(before) == start_of(curve));
    REQUIRE(end_of(after) == end_of(curve));
    const double u = random.between(0.0, 1.0);
    REQUIRE(distance(point_at(before, u), point_at(curve, u * t)) < 1e-12);
    REQUIRE(distance(point_at(after, u), point_at(curve, t + u * (1.0 - t))) < 1e-12);
  }
}

TEST_CASE("splitting a straight stroke leaves two straight strokes") {
  const auto [before, after] = split_at(Segment{{0.0, 0.0}, {8.0, 4.0}}, 0.25);
  CHECK(before == Curve(Segment{{0.0, 0.0}, {2.0, 1.0}}));
  CHECK(after == Curve(Segment{{2.0, 1.0}, {8.0, 4.0}}));
}

TEST_CASE("reversing, mirroring and turning change no length, only the signs they should") {
  for (Random& random : each_random(500, 2)) {
    const Curve curve = random_cubic(random, 300.0);
    const double t = random.between(0.05, 0.95);
    const Angle turn = Angle::degrees(random.between(-180.0, 180.0));
    const Curve back = reversed(curve);
    const Curve mirrored = placed(curve, Placement::mirror(50.0));
    const Curve turned = placed(curve, Placement::turn(turn, random_point(random, 300.0)));
    for (const Curve& same : each({back, mirrored, turned})) {
      REQUIRE(length(same) == Approx(length(curve)).margin(2e-10).epsilon(0));
    }
    const Vec along = tangent_at(curve, t);
    const double bend = curvature_at(curve, t);
    REQUIRE(distance(point_at(back, 1.0 - t), point_at(curve, t)) < 1e-12);
    REQUIRE(norm(tangent_at(back, 1.0 - t) + along) < 1e-10);
    REQUIRE(norm(tangent_at(turned, t) - rotated(along, turn)) < 1e-10);
    REQUIRE(curvature_at(back, 1.0 - t) == Approx(-bend).margin(1e-9));
    REQUIRE(curvature_at(mirrored, t) == Approx(-bend).margin(1e-9));
    REQUIRE(curvature_at(turned, t) == Approx(bend).margin(1e-9));
    REQUIRE(reversed(back) == curve);
  }
}

TEST_CASE("a curve twice as large is twice as long and bends half as much") {
  for (Random& random : each_random(200, 3)) {
    const CubicCurve c = random_cubic(random, 300.0);
    const auto doubled = [](Point p) { return Point{2.0 * p.x, 2.0 * p.y}; };
    const CubicCurve twice = {doubled(c.p0), doubled(c.p1), doubled(c.p2), doubled(c.p3)};
    REQUIRE(length(twice) == Approx(2.0 * length(c)).margin(4e-10).epsilon(0));
    REQUIRE(curvature_at(twice, 0.3) == Approx(0.5 * curvature_at(c, 0.3)).epsilon(1e-9));
  }
}

TEST_CASE("the derivative is what the points' differences tend to") {
  constexpr double kStep = 1e-4;
  for (Random& random : each_random(500, 4)) {
    const CubicCurve c = random_cubic(random, 300.0);
    const double t = random.between(kStep, 1.0 - kStep);
    const Vec difference = (0.5 / kStep) * (point_at(c, t + kStep) - point_at(c, t - kStep));
    // A central difference is off by step^2 / 6 of the third derivative, which is at most
    // 6 * 8 * 300 mm for points in a square of 300 mm, and by rounding over the step.
    REQUIRE(norm(derivative_at(c, t) - difference) < 2.0 * 300.0 * 48.0 / 6.0 * kStep * kStep);
  }
  CHECK(derivative_at(Segment{{1.0, 1.0}, {3.0, 2.0}}, 0.7) == Vec{2.0, 1.0});
}

TEST_CASE("the curvature of a parabola is its closed form") {
  const double bend = 0.004;
  const CubicCurve curve = parabola(bend, 200.0).curve;
  for (double t = 0.0; t <= 1.0; t += 0.125) {
    CAPTURE(t);
    const double slope = 2.0 * bend * 200.0 * t;
    const double expected = 2.0 * bend / std::pow(1.0 + slope * slope, 1.5);
    CHECK(curvature_at(curve, t) == Approx(expected).epsilon(1e-12));
    CHECK(curvature_at(reversed(curve), 1.0 - t) == Approx(-expected).epsilon(1e-12));
  }
}

TEST_CASE("a round path bends as the circle does") {
  for (const auto& [arcs, within] : each({std::pair{4, 0.03}, std::pair{16, 2e-4}})) {
    for (const Curve& arc : round_path({0.0, 0.0}, 50.0, arcs).curves()) {
      for (double t = 0.0; t <= 1.0; t += 0.1) {
        CHECK(curvature_at(arc, t) == Approx(1.0 / 50.0).epsilon(within));
      }
    }
  }
  CHECK(curvature_at(Segment{{0.0, 0.0}, {1.0, 1.0}}, 0.5) == 0.0);
}

TEST_CASE("the tangent at an end without a handle is the direction the curve starts in") {
  const CubicCurve no_first = {{0, 0}, {0, 0}, {10, 10}, {30, 0}};
  CHECK(norm(tangent_at(no_first, 0.0) - unit({1.0, 1.0})) < 1e-15);
  CHECK(norm(tangent_at(reversed(no_first), 1.0) - unit({-1.0, -1.0})) < 1e-15);
  const CubicCurve no_handles = {{0, 0}, {0, 0}, {30, 40}, {30, 40}};
  CHECK(norm(tangent_at(no_handles, 0.0) - Vec{0.6, 0.8}) < 1e-15);
  CHECK(norm(tangent_at(no_handles, 1.0) - Vec{0.6, 0.8}) < 1e-15);
  const CubicCurve all_at_start = {{0, 0}, {0, 0}, {0, 0}, {30, 40}};
  CHECK(norm(tangent_at(all_at_start, 0.0) - Vec{0.6, 0.8}) < 1e-15);
  CHECK(norm(tangent_at(reversed(all_at_start), 1.0) - Vec{-0.6, -0.8}) < 1e-15);
  // The limit, seen from just inside.
  CHECK(norm(tangent_at(no_first, 1e-9) - tangent_at(no_first, 0.0)) < 1e-8);
}

TEST_CASE("the parameter at a length gives that length back") {
  for (RandomCase& random : each_random(1000, 5)) {
    const Curve curve =
        random.number % 2 == 0 ? random_cubic(random, 300.0) : random_fair_curve(random);
    const double whole = length(curve);
    const double s = random.between(0.0, whole);
    const double t = parameter_at_length(curve, s);
    REQUIRE(length(split_at(curve, t).first) == Approx(s).margin(2e-10).epsilon(0));
  }
}

TEST_CASE("the parameter at a length is found where the curve stands still") {
  for (const KnownLength& known :
       {cusp_in_the_middle(), cusp_at_the_start(), to_and_fro(), out_and_back()}) {
    for (double share = 0.0; share <= 1.0; share += 0.0625) {
      const double s = share * known.length;
      const double t = parameter_at_length(known.curve, s);
      CAPTURE(known.what, share);
      CHECK(length(split_at(known.curve, t).first) == Approx(s).margin(2e-10).epsilon(0));
    }
  }
}

TEST_CASE("a length beyond the curve means its end, one before it its start") {
  for (const Curve& curve :
       each({Curve(Segment{{0, 0}, {10, 0}}), Curve(parabola(0.05, 120.0).curve)})) {
    CHECK(parameter_at_length(curve, -1.0) == 0.0);
    CHECK(parameter_at_length(curve, 0.0) == 0.0);
    CHECK(parameter_at_length(curve, 1e6) == 1.0);
  }
  CHECK(parameter_at_length(Segment{{0, 0}, {10, 0}}, 2.5) == 0.25);
}

TEST_CASE("a single point has no length, no direction and no bend, and takes no time") {
  const Point p = {3.0, 4.0};
  for (const Curve& point : each({Curve(Segment{p, p}), Curve(CubicCurve{p, p, p, p})})) {
    CHECK(length(point) == 0.0);
    CHECK(tangent_at(point, 0.0) == Vec{});
    CHECK(curvature_at(point, 0.5) == 0.0);
    CHECK(parameter_at_length(point, 1.0) == 0.0);
    CHECK(distance(point_at(point, 0.3), p) < 1e-15);
  }
}

TEST_CASE("an accuracy beyond rounding, huge and tiny curves and NaN come to an end") {
  const CubicCurve small = cusp_in_the_middle().curve;
  const double expected = cusp_in_the_middle().length;
  CHECK(length(small, 0.0) == Approx(expected).epsilon(1e-14));
  CHECK(length(small, -1.0) == Approx(expected).epsilon(1e-14));
  for (const double scale : {1e-160, 1e-12, 1e9, 1e60}) {
    const auto scaled = [&](Point p) { return Point{scale * p.x, scale * p.y}; };
    const CubicCurve c = {scaled(small.p0), scaled(small.p1), scaled(small.p2), scaled(small.p3)};
    CAPTURE(scale);
    CHECK(length(c) == Approx(scale * expected).epsilon(1e-13).margin(kLengthAccuracy));
  }
  const double nan = std::numeric_limits<double>::quiet_NaN();
  const double infinity = std::numeric_limits<double>::infinity();
  CHECK(std::isnan(length(CubicCurve{{0, 0}, {nan, 1}, {2, 1}, {3, 0}})));
  CHECK_FALSE(std::isfinite(length(CubicCurve{{0, 0}, {infinity, 1}, {2, 1}, {3, 0}})));
  const double t = parameter_at_length(CubicCurve{{0, 0}, {nan, 1}, {2, 1}, {3, 0}}, 1.0);
  CHECK((t >= 0.0 && t <= 1.0));
}
