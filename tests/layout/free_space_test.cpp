#include "free_space.hpp"

#include "blockwright/geometry/path.hpp"
#include "drawing.hpp"
#include "support/each.hpp"

#include <catch2/catch.hpp>

#include <cmath>

using namespace blockwright;

TEST_CASE("an empty area is free where it is wished, and only inside") {
  FreeSpace space({0, 0, 100, 50}, 1.0);
  CHECK(space.is_free({0, 0, 100, 50}));
  CHECK(!space.is_free({90, 10, 101, 20}));
  const auto found = space.find({20, 10}, {50, 25});
  REQUIRE(found);
  CHECK(found->left == Approx(40.0).margin(1.0));
  CHECK(found->bottom == Approx(20.0).margin(1.0));
  CHECK(!space.find({101, 10}, {50, 25}));
}

TEST_CASE("what is found is free of everything taken") {
  int found_in_all = 0;
  for (Random& random : each_random(60, 41)) {
    FreeSpace space({0, 0, 120, 80}, 1.0);
    std::vector<Path> lines;
    for (int k = 0; k < 6; ++k) {
      const Point a = {random.between(0, 120), random.between(0, 80)};
      lines.push_back(Path::through({a, {random.between(0, 120), random.between(0, 80)}}));
      space.take(lines.back());
    }
    const auto found = space.find({18.0, 9.0}, {random.between(0, 120), random.between(0, 80)});
    if (!found) continue;
    ++found_in_all;
    CHECK(space.is_free(
        {found->left + 0.01, found->bottom + 0.01, found->right - 0.01, found->top - 0.01}));
    for (const Path& line : lines) {
      for (double s = 0.0; s < length(line); s += 0.3) {
        const Point p = point_at_length(line, s);
        CHECK(
            !(p.x > found->left && p.x < found->right && p.y > found->bottom && p.y < found->top));
      }
    }
  }
  CHECK(found_in_all > 20);
}

TEST_CASE("outside an outline nothing is free") {
  const Path round = circle({50, 50}, 40);
  FreeSpace space({0, 0, 100, 100}, 1.0);
  space.take_outside(round);
  for (Random& random : each_random(2000, 42)) {
    const Point p = {random.between(0, 100), random.between(0, 100)};
    const bool free = space.is_free({p.x, p.y, p.x, p.y});
    if (free) CHECK(contains(round, p, 0.01));
    if (distance(p, {50, 50}) < 38.0) CHECK(free);
  }
}

TEST_CASE("the nearest free place to the wish is taken") {
  FreeSpace space({0, 0, 100, 100}, 1.0);
  space.take(Box{0, 0, 60, 100});
  const auto found = space.find({10, 10}, {50, 50});
  REQUIRE(found);
  CHECK(found->left == Approx(61.0));
  CHECK(0.5 * (found->bottom + found->top) == Approx(50.0).margin(1.0));
}

// Every place tried in turn, which takes long and cannot be wrong.
TEST_CASE("no free place is nearer to the wish than the one that is found") {
  constexpr int kWide = 90, kHigh = 40;
  int moved = 0, none = 0;
  for (Random& random : each_random(80, 46)) {
    const double cell = random.between(0, 1) < 0.5 ? 1.0 : 2.0;
    const double left = -7.0, bottom = 11.0;
    FreeSpace space({left, bottom, left + kWide * cell, bottom + kHigh * cell}, cell);
    const auto box_of_cells = [&](double x, double y, double wide, double high) {
      return Box{left + x * cell, bottom + y * cell, left + (x + wide) * cell,
                 bottom + (y + high) * cell};
    };
    const int boxes = static_cast<int>(random.between(5, 50));
    for (int k = 0; k < boxes; ++k) {
      const double x = random.between(0, kWide), y = random.between(0, kHigh);
      space.take(box_of_cells(x, y, random.between(0, 12), random.between(0, 12)));
    }
    const int wide = static_cast<int>(random.between(3, 26));
    const int high = static_cast<int>(random.between(2, 14));
    const Box about =
        box_of_cells(random.between(-5, kWide + 5), random.between(-5, kHigh + 5), 0, 0);
    const Point wish = {about.left, about.bottom};
    const auto found = space.find({wide * cell, high * cell}, wish);
    double nearest = 1e9;
    for (int x = 0; x + wide <= kWide; ++x) {
      for (int y = 0; y + high <= kHigh; ++y) {
        // Short of the cells beyond, which a box would touch with its edge.
        if (!space.is_free(box_of_cells(x + 0.01, y + 0.01, wide - 0.02, high - 0.02))) continue;
        const Point middle = {left + (x + 0.5 * wide) * cell, bottom + (y + 0.5 * high) * cell};
        nearest = std::fmin(nearest, distance(middle, wish));
      }
    }
    REQUIRE(found.has_value() == (nearest < 1e9));
    none += found ? 0 : 1;
    if (!found) continue;
    const Point middle = {0.5 * (found->left + found->right), 0.5 * (found->bottom + found->top)};
    if (distance(middle, wish) < 1e-9) continue;  // free where it was wished, between cells
    CHECK(distance(middle, wish) == Approx(nearest));
    ++moved;
  }
  CHECK(moved > 20);
  CHECK(none > 0);
}

TEST_CASE("what is found after a window is cut out lies inside the window") {
  FreeSpace space({0, 0, 100, 100}, 1.0);
  space.take(Box{30, 30, 40, 70});
  space.take_outside(Box{20.5, 30.5, 60.5, 70.5});
  CHECK(space.is_free({41.5, 31.5, 59.5, 69.5}));
  CHECK(!space.is_free({41.5, 30.2, 59.5, 69.5}));
  CHECK(!space.is_free({41.5, 31.5, 60.9, 69.5}));
  CHECK(!space.is_free({5, 5, 10, 10}));
  for (Random& random : each_random(40, 43)) {
    const auto found = space.find({12, 9}, {random.between(-50, 150), random.between(-50, 150)});
    REQUIRE(found);
    CHECK(found->left >= 41.0);
    CHECK(found->right <= 60.0);
    CHECK(found->bottom >= 31.0);
    CHECK(found->top <= 70.0);
  }
  CHECK(!space.find({20, 9}, {50, 50}));
}

TEST_CASE("a window that reaches over an edge of the area takes nothing there") {
  FreeSpace space({0, 0, 100, 100}, 1.0);
  space.take_outside(Box{-20, -20, 50.5, 200});
  CHECK(space.is_free({0, 0, 49.5, 100}));
  space.take_outside(Box{300, 300, 400, 400});
  CHECK(!space.find({1, 1}, {50, 50}));
}

TEST_CASE("everything near a line is taken, and nothing far from it") {
  const Path round = circle({50, 50}, 40);
  FreeSpace space({0, 0, 100, 100}, 1.0);
  space.take_near(round, 10.0);
  for (Random& random : each_random(2000, 44)) {
    const Point p = {random.between(0, 100), random.between(0, 100)};
    const bool free = space.is_free({p.x, p.y, p.x, p.y});
    const double away = std::abs(distance(p, {50, 50}) - 40.0);
    if (away < 9.5) CHECK(!free);
    if (away > 10.0 * std::sqrt(2.0) + 1.5) CHECK(free);
  }
}
