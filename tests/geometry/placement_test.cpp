#include "blockwright/geometry/point.hpp"
#include "support/each.hpp"
#include "support/random_shapes.hpp"

#include <catch2/catch.hpp>

using namespace blockwright;

namespace {

Placement random_placement(Random& random) {
  Placement placement =
      Placement::turn(Angle::degrees(random.between(-180.0, 180.0)), random_point(random, 500.0));
  if (random.whole(0, 1) == 1) {
    placement = placement.then(Placement::mirror(random.between(0.0, 500.0)));
  }
  return placement.then(Placement::shift(random.between(0.0, 500.0) * random_heading(random)));
}

}  // namespace

TEST_CASE("a placement that does nothing leaves everything where it is") {
  CHECK(Placement{}(Point{3.0, 4.0}) == Point{3.0, 4.0});
  CHECK(Placement{}(Vec{3.0, 4.0}) == Vec{3.0, 4.0});
  CHECK_FALSE(Placement{}.mirrors());
}

TEST_CASE("a shift moves points but not directions") {
  const Placement shift = Placement::shift({10.0, -2.0});
  CHECK(shift(Point{1.0, 1.0}) == Point{11.0, -1.0});
  CHECK(shift(Vec{1.0, 1.0}) == Vec{1.0, 1.0});
}

TEST_CASE("a mirror swaps left and right in its line") {
  const Placement mirror = Placement::mirror(5.0);
  CHECK(mirror(Point{7.0, 1.0}) == Point{3.0, 1.0});
  CHECK(mirror(Vec{1.0, 2.0}) == Vec{-1.0, 2.0});
  CHECK(mirror.mirrors());
  CHECK_FALSE(mirror.then(mirror).mirrors());
  CHECK(mirror.then(mirror)(Point{7.0, 1.0}) == Point{7.0, 1.0});
}

TEST_CASE("a turn agrees with turning the point") {
  for (Random& random : each_random(500, 1)) {
    const Point p = random_point(random, 1000.0), centre = random_point(random, 1000.0);
    const Angle by = Angle::degrees(random.between(-180.0, 180.0));
    REQUIRE(distance(Placement::turn(by, centre)(p), rotated_about(p, centre, by)) < 1e-12);
    REQUIRE(distance(Placement::turn(by, centre)(centre), centre) < 1e-12);
  }
}

TEST_CASE("one placement then another is the two in this order") {
  for (Random& random : each_random(500, 2)) {
    const Placement first = random_placement(random), next = random_placement(random);
    const Point p = random_point(random, 1000.0);
    const Vec v = random_heading(random);
    REQUIRE(distance(first.then(next)(p), next(first(p))) < 1e-11);
    REQUIRE(norm(first.then(next)(v) - next(first(v))) < 1e-14);
  }
}

TEST_CASE("placing keeps lengths; angles change sign when mirrored") {
  for (Random& random : each_random(500, 3)) {
    const Placement place = random_placement(random);
    const Point p = random_point(random, 1000.0), q = random_point(random, 1000.0);
    const Vec a = random_heading(random), b = random_heading(random);
    REQUIRE(distance(place(p), place(q)) == Approx(distance(p, q)).margin(1e-11));
    const double sign = place.mirrors() ? -1.0 : 1.0;
    REQUIRE(cross(place(a), place(b)) == Approx(sign * cross(a, b)).margin(1e-14));
    REQUIRE(norm(place(p) - place(q) - place(p - q)) < 1e-11);
  }
}
