#include "blockwright/geometry/offset.hpp"

#include "support/each.hpp"
#include "support/random_shapes.hpp"

#include <catch2/catch.hpp>

#include <algorithm>
#include <cmath>
#include <vector>

using namespace blockwright;

namespace {

std::vector<Point> samples(const Path& path, int per_curve) {
  std::vector<Point> points;
  for (const Curve& curve : path.curves()) {
    for (int i = 0; i <= per_curve; ++i) {
      points.push_back(point_at(curve, static_cast<double>(i) / per_curve));
    }
  }
  return points;
}

double sharpest_bend(const Curve& curve) {
  double most = 0.0;
  for (int i = 0; i <= 200; ++i) most = std::max(most, std::abs(curvature_at(curve, i / 200.0)));
  return most;
}

// Distance to the chain through closely spaced points, which also holds where the path turns back.
double distance_to(const std::vector<Point>& chain, Point p) {
  double least = 1e9;
  for (std::size_t i = 1; i < chain.size(); ++i) {
    const Vec along = chain[i] - chain[i - 1];
    const double square = dot(along, along);
    const double at =
        square > 0.0 ? std::clamp(dot(p - chain[i - 1], along) / square, 0.0, 1.0) : 0.0;
    least = std::min(least, distance(p, chain[i - 1] + at * along));
  }
  return least;
}

// The largest distance of the true parallel, laid off along the curve's own normals, from the
// offset: independent of how the offset was fitted.
double worst_deviation(const CubicCurve& curve, double by) {
  const auto beside = samples(offset(Path({curve}), by), 400);
  double worst = 0.0;
  for (int i = 0; i <= 200; ++i) {
    const double t = i / 200.0;
    const Point truth = point_at(Curve(curve), t) + by * right_of(tangent_at(Curve(curve), t));
    worst = std::max(worst, distance_to(beside, truth));
  }
  return worst;
}

}  // namespace

TEST_CASE("a straight stroke's offset is its parallel, to the right where positive") {
  const Path line = Path::through({{0, 0}, {30, 40}});
  const Path right = offset(line, 10.0), left = offset(line, -10.0);
  REQUIRE(right.curves().size() == 1);
  CHECK(distance(right.start(), {8, -6}) < 1e-12);
  CHECK(distance(right.end(), {38, 34}) < 1e-12);
  CHECK(distance(left.start(), {-8, 6}) < 1e-12);
  CHECK(offset(line, 0.0) == line);
}

TEST_CASE("the offset of a circle is a circle") {
  const Path round = round_path({20, 30}, 100.0, 32);  // true to 1e-8 mm
  for (const double by : each({20.0, -20.0, 60.0, -90.0})) {
    for (const Point p : samples(offset(round, by), 20)) {
      CHECK(distance(p, {20, 30}) == Approx(100.0 + by).margin(kOffsetTolerance));
    }
  }
}

TEST_CASE("an offset keeps its distance from fair curves, within the tolerance asked for") {
  int tried = 0;
  for (Random& random : each_random(300, 21)) {
    const CubicCurve curve = random_fair_curve(random);
    const double by = random.between(3.0, 40.0) * (random.whole(0, 1) == 0 ? -1.0 : 1.0);
    if (sharpest_bend(curve) * std::abs(by) > 0.95) continue;
    ++tried;
    const Path beside = offset(Path({curve}), by);
    for (const Point p : samples(beside, 15)) {
      CHECK(nearest(Path({curve}), p).distance == Approx(std::abs(by)).margin(kOffsetTolerance));
    }
  }
  CHECK(tried > 100);
}

TEST_CASE("an offset reaches every point of the true parallel") {
  for (Random& random : each_random(20, 22)) {
    const CubicCurve curve = random_fair_curve(random);
    CHECK(worst_deviation(curve, 20.0) < kOffsetTolerance);
    CHECK(worst_deviation(curve, -20.0) < kOffsetTolerance);
  }
}

TEST_CASE("a curve bent more sharply than the distance still has its parallel") {
  // A quarter round of 5 mm radius, 20 mm to its inner side: the parallel turns back on itself and
  // ends square to the curve's ends.
  const double handle = 5.0 * kQuarterCircleHandle;
  const CubicCurve tight = {{5, 0}, {5, handle}, {handle, 5}, {0, 5}};
  const Path beside = offset(Path({tight}), -20.0);
  CHECK(distance(beside.start(), {-15, 0}) < 1e-9);
  CHECK(distance(beside.end(), {0, -15}) < 1e-9);
  CHECK(worst_deviation(tight, -20.0) < kOffsetTolerance);
  for (const Point p : each(samples(beside, 15)))
    CHECK(nearest(Path({tight}), p).distance <= 20.01);
}

TEST_CASE("curves with a null handle are offset like any other") {
  const CubicCurve hooked = {{0, 0}, {0, 0}, {40, 30}, {100, 0}};
  CHECK(worst_deviation(hooked, 15.0) < kOffsetTolerance);
  const CubicCurve ending = {{0, 0}, {40, 30}, {100, 0}, {100, 0}};
  CHECK(worst_deviation(ending, -15.0) < kOffsetTolerance);
}

TEST_CASE("an offset starts and ends square to its path") {
  for (Random& random : each_random(50, 23)) {
    const Path path({random_fair_curve(random)});
    const Path beside = offset(path, 12.0);
    CHECK(distance(beside.start(), path.start() + 12.0 * right_of(start_tangent(path))) < 1e-9);
    CHECK(distance(beside.end(), path.end() + 12.0 * right_of(end_tangent(path))) < 1e-9);
  }
}

TEST_CASE("outer corners are mitred, sharp ones bevelled") {
  const Path square = offset(Path::through({{0, 0}, {50, 0}, {50, 50}}), 10.0);
  REQUIRE(square.curves().size() == 2);
  CHECK(distance(end_of(square.curves()[0]), {60, -10}) < 1e-9);
  const Path sharp = offset(Path::through({{0, 0}, {50, 0}, {0, 5}}), 10.0);
  REQUIRE(sharp.curves().size() == 3);
  for (const Point p : each(samples(sharp, 10))) {
    CHECK(nearest(Path::through({{0, 0}, {50, 0}, {0, 5}}), p).distance <= 10.0 + 1e-9);
  }
}

TEST_CASE("inner corners are cut off where the parallels meet") {
  const Path inner = offset(Path::through({{0, 0}, {50, 0}, {50, 50}}), -10.0);
  REQUIRE(inner.curves().size() == 2);
  CHECK(distance(end_of(inner.curves()[0]), {40, 10}) < 1e-9);
  CHECK(distance(inner.end(), {40, 50}) < 1e-9);
}

TEST_CASE("an inner corner that the parallels cannot reach is gone back through") {
  // The middle stroke is shorter than the corners take: the result passes through both corners.
  const Path path = Path::through({{0, 0}, {50, 0}, {50, 4}, {0, 4}});
  const Path inner = offset(path, -10.0);
  CHECK(nearest(inner, {50, 0}).distance < 1e-9);
  CHECK(distance(inner.end(), {0, -6}) < 1e-9);
}

TEST_CASE("a smooth joint of two strokes stays smooth") {
  const CubicCurve whole = {{0, 0}, {30, 60}, {90, 60}, {120, 0}};
  const auto [first, second] = split_at(Curve(whole), 0.37);
  const Path beside = offset(Path({first, second}), 15.0);
  for (std::size_t i = 1; i < beside.curves().size(); ++i) {
    CAPTURE(i);
    const Vec before = tangent_at(beside.curves()[i - 1], 1.0);
    const Vec after = tangent_at(beside.curves()[i], 0.0);
    CHECK(std::abs(cross(before, after)) < 1e-6);
  }
}

TEST_CASE("the offset of the reversed path to the other side is the same line") {
  for (Random& random : each_random(30, 24)) {
    const Path path({random_fair_curve(random)});
    const Path there = offset(path, 9.0), back = offset(reversed(path), -9.0);
    for (const Point p : samples(there, 8)) {
      CHECK(nearest(back, p).distance < 2.0 * kOffsetTolerance);
    }
  }
}
