#include "blockwright/geometry/path.hpp"
#include "support/each.hpp"
#include "support/random_shapes.hpp"

#include <catch2/catch.hpp>

#include <numbers>
#include <vector>

using namespace blockwright;

namespace {

Path square(double side) {
  return Path::through({{0.0, 0.0}, {side, 0.0}, {side, side}, {0.0, side}, {0.0, 0.0}});
}

// A star round (500, 500) with so many points: never crosses itself.
std::vector<Point> star(Random& random, int points) {
  std::vector<Point> corners;
  for (int i = 0; i < points; ++i) {
    const Angle at = Angle::degrees(360.0 * (i + random.between(0.05, 0.95)) / points);
    corners.push_back(Point{500.0, 500.0} + random.between(50.0, 400.0) * direction(at));
  }
  return corners;
}

std::vector<Point> closed(std::vector<Point> corners) {
  corners.push_back(corners.front());
  return corners;
}

}  // namespace

TEST_CASE("a square has its side squared, positive anticlockwise") {
  CHECK(signed_area(square(20.0)) == 400.0);
  CHECK(signed_area(reversed(square(20.0))) == -400.0);
  CHECK(signed_area(Path{}) == 0.0);
}

TEST_CASE("the closing stroke of an area is implied") {
  CHECK(signed_area(Path::through({{0.0, 0.0}, {20.0, 0.0}, {20.0, 20.0}, {0.0, 20.0}})) == 400.0);
}

TEST_CASE("a parabola cuts off two thirds of its box") {
  // Archimedes. Under y = x^2 from 0 to 3: 9; between the curve and its chord: 27 / 6.
  const CubicCurve parabola = {{0.0, 0.0}, {1.0, 0.0}, {2.0, 3.0}, {3.0, 9.0}};
  CHECK(signed_area(Path({parabola})) == Approx(27.0 / 6.0).epsilon(1e-14));
  Path under({parabola});
  under.add(Segment{{3.0, 9.0}, {3.0, 0.0}});
  CHECK(signed_area(under) == Approx(-9.0).epsilon(1e-14));
}

TEST_CASE("the area of ever more arcs tends to the circle's") {
  for (const int arcs : each({4, 8, 16, 32})) {
    const double off =
        signed_area(round_path({30.0, -70.0}, 50.0, arcs)) / (2500.0 * std::numbers::pi) - 1.0;
    CHECK(std::abs(off) < 6e-4 * std::pow(4.0 / arcs, 6.0) + 1e-12);
  }
}

TEST_CASE("shifting, turning and splitting keep an area; mirroring changes its sign") {
  for (Random& random : each_random(300, 1)) {
    const CubicCurve first = random_cubic(random, 300.0);
    Path path({first});
    path.add(fair_curve(first.p3, random_heading(random), first.p0, random_heading(random)));
    const double area = signed_area(path);
    const Placement move =
        Placement::turn(Angle::degrees(40.0), {70.0, 10.0}).then(Placement::shift({900.0, -300.0}));
    REQUIRE(signed_area(placed(path, move)) == Approx(area).margin(1e-7));
    REQUIRE(signed_area(placed(path, Placement::mirror(4.0))) == Approx(-area).margin(1e-7));
    REQUIRE(signed_area(reversed(path)) == Approx(-area).margin(1e-7));
    const auto [before, after] = split_at(first, random.between(0.0, 1.0));
    REQUIRE(signed_area(Path({before, after, path.curves()[1]})) == Approx(area).margin(1e-7));
  }
}

TEST_CASE("points are inside or outside a square") {
  const Path path = square(10.0);
  CHECK(contains(path, {5.0, 5.0}, 0.1));
  CHECK(contains(path, {0.001, 9.999}, 0.1));
  CHECK_FALSE(contains(path, {-0.001, 5.0}, 0.1));
  CHECK_FALSE(contains(path, {5.0, 10.001}, 0.1));
  CHECK_FALSE(contains(path, {-5.0, 10.0}, 0.1));  // level with a corner
  CHECK_FALSE(contains(path, {-5.0, 0.0}, 0.1));
  CHECK_FALSE(contains(Path{}, {0.0, 0.0}, 0.1));
  CHECK(contains(reversed(path), {5.0, 5.0}, 0.1));
}

TEST_CASE("points are inside a round path if nearer to its middle than the radius") {
  const Path path = round_path({100.0, 100.0}, 80.0, 8);
  int inside = 0;
  for (Random& random : each_random(2000, 2)) {
    const Point p = random_point(random, 200.0);
    const double from_middle = distance(p, {100.0, 100.0});
    if (std::abs(from_middle - 80.0) < 0.02) continue;
    REQUIRE(contains(path, p, 0.01) == (from_middle < 80.0));
    inside += from_middle < 80.0 ? 1 : 0;
  }
  CHECK(inside > 500);
}

TEST_CASE("what is gone round twice counts as outside") {
  Path twice = square(10.0);
  twice.add(square(10.0));
  CHECK_FALSE(contains(twice, {5.0, 5.0}, 0.1));
}

TEST_CASE("an outline that keeps to itself has no crossing") {
  CHECK_FALSE(find_crossing(square(10.0), 0.1));
  CHECK_FALSE(find_crossing(Path::through({{0.0, 0.0}, {10.0, 0.0}, {0.0, 10.0}}), 0.1));
  CHECK_FALSE(find_crossing(round_path({0.0, 0.0}, 100.0, 4), 0.01));
  CHECK_FALSE(find_crossing(Path{}, 0.1));
  for (Random& random : each_random(300, 3)) {
    REQUIRE_FALSE(find_crossing(Path::through(closed(star(random, random.whole(3, 30)))), 0.1));
  }
}

TEST_CASE("a crossing is found where it is") {
  const Path bow = Path::through({{0.0, 0.0}, {10.0, 10.0}, {10.0, 0.0}, {0.0, 10.0}, {0.0, 0.0}});
  const auto crossing = find_crossing(bow, 0.1);
  REQUIRE(crossing);
  CHECK(distance(*crossing, {5.0, 5.0}) < 1e-12);
  CHECK(find_crossing(reversed(bow), 0.1));
}

TEST_CASE("the loop of a single cubic is a crossing") {
  Path loop({CubicCurve{{0.0, 0.0}, {150.0, 100.0}, {-50.0, 100.0}, {100.0, 0.0}}});
  loop.add(Path::through({{100.0, 0.0}, {100.0, -50.0}, {0.0, -50.0}, {0.0, 0.0}}));
  const auto crossing = find_crossing(loop, 0.01);
  REQUIRE(crossing);
  CHECK(crossing->x == Approx(50.0).margin(0.1));
}

TEST_CASE("an outline that touches itself counts as crossing") {
  // A corner on a side, two corners in one place, two sides along each other, and a side that runs
  // back over the one before it.
  const std::vector<std::vector<Point>> touching = {
      {{0, 0}, {10, 0}, {10, 10}, {5, 0}, {0, 10}},
      {{0, 0}, {4, 0}, {2, 2}, {4, 4}, {0, 4}, {2, 2}},
      {{0, 0}, {10, 0}, {10, 5}, {6, 5}, {6, 0}, {4, 0}, {4, 5}, {0, 5}},
      {{0, 0}, {10, 0}, {10, 5}, {10, 8}, {10, 5}, {0, 5}},
  };
  for (const auto& corners : touching) {
    CAPTURE(corners.size());
    CHECK(find_crossing(Path::through(closed(corners)), 0.1));
  }
}

TEST_CASE("sides along each other are found however they lie, in spite of rounding") {
  const Path pressed = Path::through(
      closed({{0, 0}, {90, 0}, {90, 50}, {60, 50}, {60, 0}, {40, 0}, {40, 50}, {0, 50}}));
  for (int degrees = 0; degrees < 360; ++degrees) {
    const Placement turn = Placement::turn(Angle::degrees(degrees), {300.0, 700.0});
    CAPTURE(degrees);
    CHECK(find_crossing(placed(pressed, turn), 0.1));
  }
}

TEST_CASE("strokes of no length do not count") {
  CHECK_FALSE(find_crossing(
      Path::through({{0, 0}, {10, 0}, {10, 0}, {10, 10}, {0, 10}, {0, 10}, {0, 0}, {0, 0}}), 0.1));
}

TEST_CASE("an outline keeps or crosses itself wherever it starts and however it lies") {
  int crossing = 0;
  for (RandomCase& random : each_random(300, 4)) {
    std::vector<Point> corners = star(random, 8);
    if (random.number % 2 == 0) std::swap(corners[1], corners[4]);
    const bool crosses = find_crossing(Path::through(closed(corners)), 0.1).has_value();
    crossing += crosses ? 1 : 0;
    for (std::size_t k = 1; k < corners.size(); ++k) {
      std::rotate(corners.begin(), corners.begin() + 1, corners.end());
      const Path path = Path::through(closed(corners));
      const Path turned =
          placed(path, Placement::turn(Angle::degrees(20.0 * static_cast<double>(k))));
      REQUIRE(find_crossing(path, 0.1).has_value() == crosses);
      REQUIRE(find_crossing(reversed(turned), 0.1).has_value() == crosses);
    }
  }
  CHECK(crossing > 100);
  CHECK(crossing <= 150);
}
