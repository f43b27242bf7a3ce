#include "blockwright/geometry/fair_path.hpp"

#include "support/each.hpp"

#include <catch2/catch.hpp>

#include <cmath>
#include <numbers>

using namespace blockwright;

namespace {

std::vector<Point> on_circle(double radius, int count) {
  std::vector<Point> points;
  for (int i = 0; i < count; ++i) {
    const double turn = i * std::numbers::pi / (2.0 * count);
    points.push_back({radius * std::cos(turn), radius * std::sin(turn)});
  }
  return points;
}

}  // namespace

// Outside source: the circle itself.
TEST_CASE("A smooth line through points of a circle is that circle") {
  const double radius = 80.0;
  const Path path = smooth_through(on_circle(radius, 5), {});
  for (int i = 0; i <= 50; ++i) {
    const Point p = point_at_length(path, i / 50.0 * length(path));
    CHECK(std::hypot(p.x, p.y) == Approx(radius).epsilon(1e-3));
  }
}

TEST_CASE("A smooth line goes through its points, in the directions given, without a corner") {
  for (auto&& random : each_random(100, 7)) {
    std::vector<Point> points = {{0.0, 0.0}};
    for (int i = 0; i < 5; ++i) {
      points.push_back(points.back() + Vec{random.between(5, 60), random.between(-40, 40)});
    }
    const EndDirections ends{{1.0, random.between(-1, 1)}, {1.0, random.between(-1, 1)}};
    const Path path = smooth_through(points, ends);
    REQUIRE(path.curves().size() == points.size() - 1);
    CHECK(std::abs(turn_between(start_tangent(path), ends.leaving).degrees()) < 1e-6);
    CHECK(std::abs(turn_between(end_tangent(path), ends.arriving).degrees()) < 1e-6);
    for (std::size_t i = 0; i + 1 < path.curves().size(); ++i) {
      CHECK(end_of(path.curves()[i]) == points[i + 1]);
      const Vec in = tangent_at(path.curves()[i], 1.0), out = tangent_at(path.curves()[i + 1], 0.0);
      CHECK(std::abs(turn_between(in, out).degrees()) < 1e-6);
    }
  }
}

namespace {

/// A bowed row of points, as far apart as those of a neckline or a hem.
std::vector<Through> bowed(Random& random) {
  const double along = random.between(60, 120), across = random.between(0.6, 1.6) * along;
  std::vector<Through> points;
  double turn = random.between(0.0, 0.3);
  for (int i = 0; i < 5; ++i) {
    points.push_back({{along * std::cos(turn), across * std::sin(turn)}});
    turn += random.between(0.25, 0.4);
  }
  return points;
}

}  // namespace

TEST_CASE("A line through a bowed row of points bends one way") {
  for (auto&& random : each_random(300, 11)) {
    CHECK(inflections({fair_path(bowed(random))}) == 0);
  }
}

TEST_CASE("A line keeps the direction that is given at a point between") {
  for (auto&& random : each_random(100, 12)) {
    std::vector<Through> points = bowed(random);
    points[2].along = Vec{-1.0, random.between(-0.5, 0.5)};
    const Path path = fair_path(points);
    CHECK(end_of(path.curves()[1]) == points[2].at);
    for (const Vec at : {tangent_at(path.curves()[1], 1.0), tangent_at(path.curves()[2], 0.0)}) {
      CHECK(std::abs(turn_between(at, *points[2].along).degrees()) < 1e-9);
    }
  }
}

TEST_CASE("Points that are turned, mirrored and moved give the same line so placed") {
  for (auto&& random : each_random(100, 13)) {
    std::vector<Through> points = bowed(random);
    points[0].along = Vec{0.3, 1.0};
    const Placement placement = Placement::mirror(7.0)
                                    .then(Placement::turn(Angle::degrees(random.between(0, 360))))
                                    .then(Placement::shift({random.between(-90, 90), 40.0}));
    const Path as_placed = placed(fair_path(points), placement);
    for (Through& through : points) {
      through.at = placement(through.at);
      if (through.along) through.along = placement(*through.along);
    }
    const Path through_placed = fair_path(points);
    for (int i = 0; i <= 40; ++i) {
      const double s = i / 40.0 * length(as_placed);
      CHECK(distance(point_at_length(as_placed, s), point_at_length(through_placed, s)) < 1e-9);
    }
  }
}
