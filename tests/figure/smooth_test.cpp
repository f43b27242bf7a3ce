#include "smooth.hpp"

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
