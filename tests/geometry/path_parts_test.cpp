#include "blockwright/geometry/path.hpp"
#include "support/each.hpp"
#include "support/random_shapes.hpp"

#include <catch2/catch.hpp>

using namespace blockwright;

TEST_CASE("the parts before and after a place make up the path") {
  for (Random& random : each_random(100, 11)) {
    const Path path = random_path(random, 4);
    const double whole = length(path);
    const PathPlace place = place_at_length(path, random.between(0.0, whole));
    const Path before = part_before(path, place), after = part_after(path, place);
    CHECK(length(before) + length(after) == Approx(whole).epsilon(1e-10));
    CHECK(distance(before.end(), after.start()) < 1e-9);
  }
}

TEST_CASE("the part between two places has the length between them, on one stroke or on several") {
  for (Random& random : each_random(100, 12)) {
    const Path path = random_path(random, 3);
    const double whole = length(path);
    const double low = random.between(0.0, 0.5 * whole);
    const double high = low + random.between(1.0, 0.5 * whole);
    const Path part = part_between(path, place_at_length(path, low), place_at_length(path, high));
    CHECK(length(part) == Approx(high - low).margin(1e-6));
    CHECK(distance(part.start(), point_at_length(path, low)) < 1e-7);
    CHECK(distance(part.end(), point_at_length(path, high)) < 1e-7);
  }
}

TEST_CASE("a part of no extent is empty, and places in the wrong order have none between them") {
  const Path path = Path::through({{0, 0}, {10, 0}, {10, 10}});
  CHECK(part_before(path, {0, 0.0}).empty());
  CHECK(part_after(path, {1, 1.0}).empty());
  CHECK(part_between(path, {1, 0.5}, {0, 0.5}).empty());
}

TEST_CASE("appending joins a rounding gap and bridges a wide one") {
  Path path = Path::through({{0, 0}, {10, 0}});
  append(path, Path::through({{10, 1e-8}, {10, 5}}));
  CHECK(path.curves().size() == 2);
  CHECK(start_of(path.curves()[1]) == Point{10, 0});
  append(path, Path::through({{12, 5}, {20, 5}}));
  CHECK(path.curves().size() == 4);
  append_line(path, {20, 5});
  CHECK(path.curves().size() == 4);
}
