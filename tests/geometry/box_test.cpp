#include "blockwright/geometry/box.hpp"

#include "support/each.hpp"
#include "support/random_shapes.hpp"

#include <catch2/catch.hpp>

using namespace blockwright;

TEST_CASE("an empty box has no size and meets nothing") {
  const Box nothing = box_of(Path{});
  CHECK(nothing.empty());
  CHECK(nothing.width() == 0.0);
  CHECK(nothing.height() == 0.0);
  Box square;
  square.include(Point{0.0, 0.0});
  square.include(Point{1.0, 1.0});
  CHECK_FALSE(square.overlaps(nothing));
  square.include(nothing);
  CHECK(square.width() == 1.0);
}

TEST_CASE("boxes that only share an edge do not overlap") {
  const Box a = box_of(Path::through({{0.0, 0.0}, {1.0, 1.0}}));
  const Box beside = box_of(Path::through({{1.0, 0.0}, {2.0, 1.0}}));
  const Box across = box_of(Path::through({{0.5, 0.5}, {2.0, 2.0}}));
  CHECK_FALSE(a.overlaps(beside));
  CHECK(a.overlaps(across));
  CHECK(across.overlaps(a));
}

TEST_CASE("the box of a round path is as wide and as high as the circle") {
  const Box box = box_of(round_path({100.0, 50.0}, 40.0, 4));
  CHECK(box.left == Approx(60.0).margin(1e-9));
  CHECK(box.right == Approx(140.0).margin(1e-9));
  CHECK(box.bottom == Approx(10.0).margin(1e-9));
  CHECK(box.top == Approx(90.0).margin(1e-9));
}

TEST_CASE("the box of a curve reaches beyond its ends where the curve does") {
  // y = 3 t (1 - t), highest at the middle: 0.75 of the handles' height.
  const Box box = box_of(Path({CubicCurve{{0.0, 0.0}, {1.0, 4.0}, {2.0, 4.0}, {3.0, 0.0}}}));
  CHECK(box.top == Approx(3.0).margin(1e-12));
  CHECK(box.bottom == 0.0);
}

TEST_CASE("the box holds every point of the path and touches it on each side") {
  for (Random& random : each_random(300, 1)) {
    const Path path({random_cubic(random, 300.0)});
    const Box box = box_of(path);
    Box sampled;
    for (int k = 0; k <= 2000; ++k) sampled.include(point_at(path, {0, k / 2000.0}));
    REQUIRE(box.left <= sampled.left + 1e-9);
    REQUIRE(box.right >= sampled.right - 1e-9);
    REQUIRE(box.bottom <= sampled.bottom + 1e-9);
    REQUIRE(box.top >= sampled.top - 1e-9);
    // Between samples a 300 mm cubic rises at most 3 * 1800 / 8 / 2000^2 mm above them.
    REQUIRE(box.left > sampled.left - 1e-3);
    REQUIRE(box.right < sampled.right + 1e-3);
    REQUIRE(box.bottom > sampled.bottom - 1e-3);
    REQUIRE(box.top < sampled.top + 1e-3);
  }
}

TEST_CASE("a cubic that is a straight line has the line's box") {
  const Box box = box_of(Path({CubicCurve{{0.0, 5.0}, {1.0, 5.0}, {2.0, 5.0}, {3.0, 5.0}}}));
  CHECK(box.width() == 3.0);
  CHECK(box.height() == 0.0);
}
