#include "blockwright/geometry/point.hpp"

#include "support/each.hpp"
#include "support/random_shapes.hpp"

#include <catch2/catch.hpp>

#include <numbers>

using namespace blockwright;

TEST_CASE("left is a quarter anticlockwise, right a quarter clockwise") {
  CHECK(left_of(Vec{1.0, 0.0}) == Vec{0.0, 1.0});
  CHECK(right_of(Vec{0.0, 1.0}) == Vec{1.0, 0.0});
  CHECK(cross({1.0, 0.0}, {0.0, 1.0}) == 1.0);
  CHECK(dot({3.0, 4.0}, {4.0, -3.0}) == 0.0);
}

TEST_CASE("points and displacements measure as with a ruler") {
  CHECK(distance({1.0, 1.0}, {4.0, 5.0}) == 5.0);
  CHECK(norm({-3.0, 4.0}) == 5.0);
  CHECK(midpoint({0.0, 2.0}, {4.0, 0.0}) == Point{2.0, 1.0});
  CHECK(between({0.0, 0.0}, {8.0, 4.0}, 0.25) == Point{2.0, 1.0});
  CHECK(Point{5.0, 1.0} - Vec{2.0, 3.0} == Point{3.0, -2.0});
}

TEST_CASE("a unit vector keeps its direction and has length 1; nothing stays nothing") {
  CHECK(unit({0.0, -7.0}) == Vec{0.0, -1.0});
  CHECK(unit({}) == Vec{});
  for (Random& random : each_random(1000, 1)) {
    const Vec v = random.between(1e-6, 1e6) * random_heading(random);
    REQUIRE(norm(unit(v)) == Approx(1.0).epsilon(1e-15));
    REQUIRE(std::abs(cross(unit(v), v)) <= 1e-15 * norm(v));
    REQUIRE(dot(unit(v), v) > 0.0);
  }
}

TEST_CASE("a direction and its angle belong together") {
  for (double degrees = -179.0; degrees <= 180.0; degrees += 1.0) {
    CAPTURE(degrees);
    CHECK(angle_of(direction(Angle::degrees(degrees))).degrees() == Approx(degrees).margin(1e-12));
  }
  CHECK(angle_of({}) == Angle{});
}

TEST_CASE("half a turn is always +180 degrees, whatever the signs of the noughts") {
  CHECK(angle_of({-1.0, 0.0}).degrees() == 180.0);
  CHECK(angle_of({-1.0, -0.0}).degrees() == 180.0);
  CHECK(turn_between({1.0, 0.0}, {-1.0, 0.0}).degrees() == 180.0);
  CHECK(turn_between({-1.0, 0.0}, {1.0, 0.0}).degrees() == 180.0);
  CHECK(turn_between({0.0, 1.0}, {0.0, -1.0}).degrees() == 180.0);
  CHECK(turn_between({0.0, -1.0}, {0.0, 1.0}).degrees() == 180.0);
}

TEST_CASE("there is no turn from or to nothing") {
  for (const Vec v : each({Vec{1.0, 2.0}, Vec{-1.0, -2.0}, Vec{-1.0, 2.0}, Vec{}})) {
    CHECK(turn_between({}, v) == Angle{});
    CHECK(turn_between(v, {}) == Angle{});
  }
}

TEST_CASE("the turn between two directions carries one into the other") {
  for (Random& random : each_random(1000, 2)) {
    const Vec a = random_heading(random);
    const Vec b = random_heading(random);
    const Angle turn = turn_between(a, b);
    REQUIRE(norm(rotated(a, turn) - b) < 1e-15 * 4.0);
    REQUIRE(std::abs(turn.degrees()) <= 180.0);
    REQUIRE(turn_between(b, a).radians() == Approx(-turn.radians()).margin(1e-15));
  }
}

TEST_CASE("a point turned about another keeps its distance, and comes back") {
  const Point there = rotated_about({3.0, 1.0}, {1.0, 1.0}, Angle::degrees(90.0));
  CHECK(distance(there, {1.0, 3.0}) < 1e-15);
  for (Random& random : each_random(1000, 3)) {
    const Point p = random_point(random, 1000.0);
    const Point centre = random_point(random, 1000.0);
    const Angle turn = Angle::degrees(random.between(-180.0, 180.0));
    const Point q = rotated_about(p, centre, turn);
    REQUIRE(distance(q, centre) == Approx(distance(p, centre)).epsilon(1e-14));
    REQUIRE(distance(rotated_about(q, centre, -turn), p) < 1e-12);
  }
}
