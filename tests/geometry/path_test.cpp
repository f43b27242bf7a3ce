#include "blockwright/geometry/path.hpp"

#include "support/each.hpp"
#include "support/random_shapes.hpp"

#include <catch2/catch.hpp>

#include <algorithm>
#include <limits>
#include <numbers>
#include <vector>

using namespace blockwright;

namespace {

// A quarter round of 100 mm radius between two straight strokes of 50 mm.
Path bent_strip() {
  constexpr double kHandle = 100.0 * kQuarterCircleHandle;
  Path path;
  path.add(Segment{{0.0, 0.0}, {50.0, 0.0}});
  path.add(
      CubicCurve{{50.0, 0.0}, {50.0 + kHandle, 0.0}, {150.0, 100.0 - kHandle}, {150.0, 100.0}});
  path.add(Segment{{150.0, 100.0}, {150.0, 150.0}});
  return path;
}

double distance_to_segment(Point p, Point a, Point b) {
  const Vec along = b - a;
  const double square = dot(along, along);
  const double at = square > 0.0 ? std::clamp(dot(p - a, along) / square, 0.0, 1.0) : 0.0;
  return distance(p, a + at * along);
}

double distance_to_chain(Point p, const std::vector<Point>& chain) {
  double least = std::numeric_limits<double>::infinity();
  for (std::size_t i = 1; i < chain.size(); ++i) {
    least = std::min(least, distance_to_segment(p, chain[i - 1], chain[i]));
  }
  return least;
}

// The least distance from p to so many places of each stroke.
double sampled_distance(const Path& path, Point p, int samples) {
  double least = std::numeric_limits<double>::infinity();
  for (std::size_t i = 0; i < path.curves().size(); ++i) {
    for (int k = 0; k <= samples; ++k) {
      const double t = static_cast<double>(k) / samples;
      least = std::min(least, distance(point_at(path, {i, t}), p));
    }
  }
  return least;
}

}  // namespace

TEST_CASE("a stroke must start where the path ends") {
  Path path;
  path.add(Segment{{0.0, 0.0}, {1.0, 0.0}});
  CHECK_THROWS_AS(path.add(Segment{{1.1, 0.0}, {2.0, 0.0}}), std::logic_error);
  CHECK_NOTHROW(path.add(Segment{{1.0, 0.5e-9}, {2.0, 0.0}}));
  CHECK_THROWS_AS(path.add(Path::through({{0.0, 0.0}, {1.0, 1.0}})), std::logic_error);
  CHECK(path.curves().size() == 2);
  CHECK_THROWS_AS(Path({Segment{{0.0, 0.0}, {1.0, 0.0}}, Segment{{2.0, 0.0}, {3.0, 0.0}}}),
                  std::logic_error);
}

TEST_CASE("an empty path has no length, no ends and no places") {
  const Path path;
  CHECK(path.empty());
  CHECK(length(path) == 0.0);
  CHECK(flattened(path, 0.1).empty());
  CHECK(sub_path(path, {0.0, 10.0}).empty());
  CHECK(reversed(path).empty());
  CHECK_THROWS_AS(path.start(), std::logic_error);
  CHECK_THROWS_AS(path.end(), std::logic_error);
  CHECK_THROWS_AS(point_at_length(path, 0.0), std::logic_error);
  CHECK_THROWS_AS(start_tangent(path), std::logic_error);
  CHECK_THROWS_AS(end_tangent(path), std::logic_error);
  CHECK_THROWS_AS(nearest(path, {0.0, 0.0}), std::logic_error);
}

TEST_CASE("a path through points is the chain of straight strokes") {
  const Path path = Path::through({{0.0, 0.0}, {3.0, 4.0}, {3.0, 10.0}});
  CHECK(path.curves().size() == 2);
  CHECK(length(path) == 11.0);
  CHECK(path.start() == Point{0.0, 0.0});
  CHECK(path.end() == Point{3.0, 10.0});
  CHECK_THROWS_AS(Path::through({{0.0, 0.0}}), std::logic_error);
}

TEST_CASE("a closed path can be gone round twice by adding it to itself") {
  Path twice = Path::through({{0.0, 0.0}, {3.0, 0.0}, {0.0, 4.0}, {0.0, 0.0}});
  twice.add(twice);
  CHECK(twice.curves().size() == 6);
  CHECK(length(twice) == 24.0);
}

TEST_CASE("a path is as long as its strokes together") {
  const double quarter = 50.0 * std::numbers::pi;
  CHECK(length(bent_strip()) == Approx(100.0 + quarter).epsilon(3e-4));
  for (Random& random : each_random(200, 1)) {
    const Path path = random_path(random, 5);
    double sum = 0.0;
    for (const Curve& curve : path.curves()) sum += length(curve);
    REQUIRE(length(path) == Approx(sum).margin(1e-12));
  }
}

TEST_CASE("reversing, mirroring and turning keep a path's length and swap its ends") {
  for (Random& random : each_random(200, 2)) {
    const Path path = random_path(random, 5);
    const double whole = length(path);
    const Placement turn = Placement::turn(Angle::degrees(33.0), {100.0, 50.0});
    REQUIRE(length(reversed(path)) == Approx(whole).margin(1e-9).epsilon(0));
    REQUIRE(length(placed(path, turn)) == Approx(whole).margin(1e-9).epsilon(0));
    REQUIRE(length(placed(path, Placement::mirror(10.0))) == Approx(whole).margin(1e-9).epsilon(0));
    REQUIRE(reversed(path).start() == path.end());
    REQUIRE(reversed(path).end() == path.start());
    REQUIRE(reversed(reversed(path)) == path);
    REQUIRE(placed(path, turn).end() == turn(path.end()));
    REQUIRE(norm(start_tangent(reversed(path)) + end_tangent(path)) < 1e-14);
  }
}

TEST_CASE("places along a path are clamped to its ends") {
  const Path path = bent_strip();
  CHECK(point_at_length(path, -5.0) == path.start());
  CHECK(point_at_length(path, 0.0) == path.start());
  CHECK(point_at_length(path, 1e6) == path.end());
  CHECK(point_at_length(path, 20.0) == Point{20.0, 0.0});
  CHECK(place_at_length(path, 60.0).curve == 1);
}

TEST_CASE("a point at a length lies that far along the path") {
  for (Random& random : each_random(500, 3)) {
    const Path path = random_path(random, 4);
    const double s = random.between(0.0, length(path));
    const PathPlace place = place_at_length(path, s);
    double along = length(split_at(path.curves()[place.curve], place.t).first);
    for (std::size_t k = 0; k < place.curve; ++k) along += length(path.curves()[k]);
    REQUIRE(along == Approx(s).margin(1e-9).epsilon(0));
    REQUIRE(point_at_length(path, s) == point_at(path, place));
  }
}

TEST_CASE("tangents point in the direction of travel and have length 1") {
  const Path path = bent_strip();
  CHECK(start_tangent(path) == Vec{1.0, 0.0});
  CHECK(end_tangent(path) == Vec{0.0, 1.0});
  const double middle = 0.5 * length(path);
  CHECK(norm(tangent_at_length(path, middle) - unit({1.0, 1.0})) < 1e-9);
  CHECK(norm(tangent_at_length(path, 10.0) - Vec{1.0, 0.0}) < 1e-12);
}

TEST_CASE("a stroke that is a single point does not hide the direction of the path") {
  const Path path = Path::through({{0.0, 0.0}, {0.0, 0.0}, {3.0, 4.0}, {3.0, 4.0}});
  CHECK(norm(start_tangent(path) - Vec{0.6, 0.8}) < 1e-15);
  CHECK(norm(end_tangent(path) - Vec{0.6, 0.8}) < 1e-15);
  CHECK(norm(tangent_at_length(path, 0.0) - Vec{0.6, 0.8}) < 1e-15);
  CHECK(norm(tangent_at_length(path, 5.0) - Vec{0.6, 0.8}) < 1e-15);
}

TEST_CASE("a part of a path is as long as its two ends are apart along the path") {
  for (Random& random : each_random(500, 4)) {
    const Path path = random_path(random, 4);
    const double whole = length(path);
    const double a = random.between(0.0, whole), b = random.between(0.0, whole);
    const double from = std::min(a, b), to = std::max(a, b);
    const Path part = sub_path(path, {from, to});
    REQUIRE(length(part) == Approx(to - from).margin(1e-9).epsilon(0));
    REQUIRE(distance(part.start(), point_at_length(path, from)) < 1e-9);
    REQUIRE(distance(part.end(), point_at_length(path, to)) < 1e-9);
    REQUIRE(length(sub_path(path, {0.0, from})) + length(part) +
                length(sub_path(path, {to, whole})) ==
            Approx(whole).margin(1e-9).epsilon(0));
  }
}

TEST_CASE("a part of a path lies on the path") {
  for (Random& random : each_random(100, 5)) {
    const Path path = random_path(random, 3);
    const double whole = length(path);
    const Path part = sub_path(path, {0.2 * whole, 0.7 * whole});
    for (double share = 0.0; share <= 1.0; share += 0.1) {
      const Point on_part = point_at_length(part, share * 0.5 * whole);
      REQUIRE(distance(on_part, point_at_length(path, (0.2 + share * 0.5) * whole)) < 1e-8);
    }
  }
}

TEST_CASE("parts are clamped to the path; nothing is left of nothing") {
  const Path path = bent_strip();
  CHECK(sub_path(path, {-10.0, 1e6}) == path);
  CHECK(sub_path(path, {0.0, length(path)}) == path);
  CHECK(sub_path(path, {20.0, 20.0}).empty());
  CHECK(sub_path(path, {30.0, 20.0}).empty());
  CHECK(sub_path(path, {1e6, 2e6}).empty());
  CHECK(sub_path(path, {-10.0, 0.0}).empty());
  CHECK(sub_path(path, {0.0, 50.0}) == Path::through({{0.0, 0.0}, {50.0, 0.0}}));
}

TEST_CASE("a flattened path stays within its tolerance and keeps its joints") {
  for (const double tolerance : each({1.0, 0.1, 0.01})) {
    double worst = 0.0;
    for (RandomCase& random : each_random(60, 6)) {
      const Path path =
          random.number % 2 == 0 ? Path({random_cubic(random, 300.0)}) : random_path(random, 3);
      const auto chain = flattened(path, tolerance);
      REQUIRE(chain.front() == path.start());
      REQUIRE(chain.back() == path.end());
      for (std::size_t k = 0; k < path.curves().size(); ++k) {
        REQUIRE(std::find(chain.begin(), chain.end(), end_of(path.curves()[k])) != chain.end());
        for (int s = 0; s <= 100; ++s) {
          worst = std::max(worst, distance_to_chain(point_at(path, {k, s / 100.0}), chain));
        }
      }
    }
    CHECK(worst <= tolerance);
    CHECK(worst > 0.1 * tolerance);  // and not by using far more points than needed
  }
}

TEST_CASE("a straight stroke is flattened to its ends") {
  CHECK(flattened(Path::through({{0.0, 0.0}, {5.0, 5.0}}), 0.01).size() == 2);
  const CubicCurve even = {{0.0, 0.0}, {1.0, 1.0}, {2.0, 2.0}, {3.0, 3.0}};
  CHECK(flattened(Path({even}), 0.01).size() == 2);
  CHECK_THROWS_AS(flattened(bent_strip(), 0.0), std::logic_error);
}

TEST_CASE("no sampled point of a path is nearer than the nearest") {
  for (Random& random : each_random(400, 7)) {
    const Path path = random_path(random, 3);
    const Point p = random_point(random, 600.0);
    const NearestOnPath found = nearest(path, p);
    const double sampled = sampled_distance(path, p, 1000);
    REQUIRE(found.distance <= sampled + 1e-9);
    REQUIRE(found.distance > sampled - 0.5);
    REQUIRE(found.distance == distance(found.point, p));
    REQUIRE(found.point == point_at(path, found.place));
    REQUIRE(distance(found.point, point_at_length(path, found.along)) < 1e-9);
  }
}

TEST_CASE("the nearest point is square to the path, to 1e-9 mm even from far away") {
  int inside_strokes = 0;
  for (Random& random : each_random(1000, 8)) {
    const Path path({random_fair_curve(random)});
    const Point p = random_point(random, 600.0);
    const NearestOnPath found = nearest(path, p);
    const double t = found.place.t;
    if (t == 0.0 || t == 1.0) continue;
    ++inside_strokes;
    // How far the foot would have to move: off-square part over how fast it changes along the path.
    const double off = dot(found.point - p, tangent_at(path.curves()[0], t));
    const double change = 1.0 + curvature_at(path.curves()[0], t) *
                                    dot(found.point - p, left_of(tangent_at(path.curves()[0], t)));
    if (change > 0.05) REQUIRE(std::abs(off) < 1e-9 * change);
  }
  CHECK(inside_strokes > 300);
}

TEST_CASE("a point of the path is its own nearest") {
  for (Random& random : each_random(500, 9)) {
    const Path path = random_path(random, 4);
    const double s = random.between(0.0, length(path));
    const NearestOnPath found = nearest(path, point_at_length(path, s));
    REQUIRE(found.distance < 1e-9);
    const bool crossed_there = std::abs(found.along - s) > 1.0;
    if (!crossed_there) REQUIRE(found.along == Approx(s).margin(1e-9).epsilon(0));
  }
}

TEST_CASE("beyond an end the end is nearest; of two equally near the first") {
  const Path path = bent_strip();
  CHECK(nearest(path, {-30.0, -40.0}).distance == 50.0);
  CHECK(nearest(path, {-30.0, -40.0}).along == 0.0);
  CHECK(nearest(path, {150.0, 170.0}).point == path.end());
  const Path corner = Path::through({{0.0, 10.0}, {0.0, 0.0}, {10.0, 0.0}});
  CHECK(nearest(corner, {4.0, 4.0}).point == Point{0.0, 4.0});
  // A stroke that is a single point.
  CHECK(nearest(Path::through({{1.0, 1.0}, {1.0, 1.0}}), {4.0, 5.0}).distance == 5.0);
}

TEST_CASE("every point of a round path is as near to its middle as any other") {
  const NearestOnPath found = nearest(round_path({0.0, 0.0}, 80.0, 16), {0.0, 0.0});
  CHECK(found.distance == Approx(80.0).epsilon(1e-7));
}

TEST_CASE("The least radius is that of the sharpest place; straight strokes have none") {
  CHECK(least_radius(round_path({0.0, 0.0}, 80.0, 16)) == Approx(80.0).epsilon(1e-3));
  // A parabola y = x^2 / 40 has its least radius, 20, at its vertex, here off every sample.
  const Path parabola({CubicCurve{{-31, 24.025},
                                  {-31 + 70.0 / 3, 24.025 - 1.55 * 70.0 / 3},
                                  {39 - 70.0 / 3, 38.025 - 1.95 * 70.0 / 3},
                                  {39, 38.025}}});
  CHECK(least_radius(parabola) == Approx(20.0).epsilon(1e-3));
  CHECK(std::isinf(least_radius(Path::through({{0, 0}, {10, 0}, {10, 10}}))));
}

TEST_CASE("Inflections are counted across strokes and gaps; straight strokes have none") {
  const Path wave({CubicCurve{{0, 0}, {10, 10}, {20, -10}, {30, 0}}});
  const Path bow({CubicCurve{{0, 0}, {10, 10}, {20, 10}, {30, 0}}});
  const Path hollow({CubicCurve{{50, 0}, {60, -10}, {70, -10}, {80, 0}}});
  CHECK(inflections({wave}) == 1);
  CHECK(inflections({bow}) == 0);
  CHECK(inflections({bow, hollow}) == 1);
  CHECK(inflections({bow, Path::through({{30, 0}, {50, 0}}), hollow}) == 1);
  CHECK(inflections({Path::through({{0, 0}, {10, 0}, {10, 10}})}) == 0);
}
