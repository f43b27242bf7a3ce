#include "blockwright/geometry/intersections.hpp"

#include "support/each.hpp"
#include "support/random_shapes.hpp"

#include <catch2/catch.hpp>

#include <algorithm>
#include <cmath>
#include <limits>
#include <numbers>
#include <vector>

using namespace blockwright;

namespace {

double nearest_of(const std::vector<PathCrossing>& found, Point p) {
  double least = 1e9;
  for (const PathCrossing& crossing : found) {
    least = std::min(least, distance(crossing.point, p));
  }
  return least;
}

bool lies_on_both(const PathCrossing& crossing, const Path& a, const Path& b) {
  return distance(point_at(a, crossing.on_a), crossing.point) <= kCrossingTolerance &&
         distance(point_at(b, crossing.on_b), crossing.point) <= kCrossingTolerance;
}

// Where the chords of two finely flattened paths cross at more than 10 degrees: a slow second way.
std::vector<Point> crossings_of_chords(const Path& a, const Path& b) {
  const auto as = flattened(a, 1e-3), bs = flattened(b, 1e-3);
  std::vector<Point> found;
  for (std::size_t i = 1; i < as.size(); ++i) {
    for (std::size_t j = 1; j < bs.size(); ++j) {
      const Vec u = as[i] - as[i - 1], v = bs[j] - bs[j - 1], w = bs[j - 1] - as[i - 1];
      const double turn = cross(u, v);
      if (std::abs(turn) < 0.17 * norm(u) * norm(v)) continue;
      const double s = cross(w, v) / turn, t = cross(w, u) / turn;
      if (s >= 0.0 && s <= 1.0 && t >= 0.0 && t <= 1.0) found.push_back(as[i - 1] + s * u);
    }
  }
  return found;
}

Path moved(const CubicCurve& curve, Point from, Point to) {
  return placed(Path({curve}), Placement::shift(to - from));
}

}  // namespace

TEST_CASE("two straight strokes meet where their lines meet, or not at all") {
  int met = 0;
  for (Random& random : each_random(500, 1)) {
    const Segment s = {random_point(random, 100.0), random_point(random, 100.0)};
    const Segment t = {random_point(random, 100.0), random_point(random, 100.0)};
    const auto found = intersections(Path({s}), Path({t}));
    const auto expected = lines_meet(s.a, s.b - s.a, t.a, t.b - t.a);
    REQUIRE(expected);
    const auto inside = [&](const Segment& x) {
      return dot(*expected - x.a, *expected - x.b) <= 0.0;
    };
    REQUIRE(found.size() == (inside(s) && inside(t) ? 1U : 0U));
    if (found.empty()) continue;
    ++met;
    CHECK(distance(found[0].point, *expected) < 1e-9);
  }
  CHECK(met > 50);
}

TEST_CASE("every crossing of two cubics is found, and every point found lies on both") {
  std::size_t expected_in_all = 0;
  for (Random& random : each_random(300, 2)) {
    const Path a({random_cubic(random, 200.0)}), b({random_cubic(random, 200.0)});
    const auto found = intersections(a, b);
    for (const PathCrossing& crossing : found) CHECK(lies_on_both(crossing, a, b));
    CHECK(found.size() <= 9);  // Bezout: two cubics cross at most nine times
    const auto expected = crossings_of_chords(a, b);
    expected_in_all += expected.size();
    for (const Point p : expected) CHECK(nearest_of(found, p) < 0.02);
  }
  CHECK(expected_in_all > 150);
}

TEST_CASE("a crossing planted in two curves is found to a nanometre") {
  for (Random& random : each_random(300, 3)) {
    const CubicCurve a = random_fair_curve(random), b = random_fair_curve(random);
    const double s = random.between(0.05, 0.95), t = random.between(0.05, 0.95);
    const Vec u = tangent_at(Curve(a), s), v = tangent_at(Curve(b), t);
    if (std::abs(cross(u, v)) < 0.2) continue;
    const Point planted = point_at(Curve(a), s);
    const auto found = intersections(Path({a}), moved(b, point_at(Curve(b), t), planted));
    CHECK(nearest_of(found, planted) < 1e-8);
  }
}

TEST_CASE("curves that touch without crossing are found at their touch") {
  for (Random& random : each_random(100, 4)) {
    const CubicCurve a = random_fair_curve(random);
    const double s = random.between(0.2, 0.8);
    const Point touch = point_at(Curve(a), s);
    const Vec along = tangent_at(Curve(a), s);
    const double side = curvature_at(Curve(a), s) > 0.0 ? -1.0 : 1.0;
    const CubicCurve b = fair_curve(touch - 40.0 * along + side * 15.0 * left_of(along),
                                    rotated(along, Angle::degrees(-side * 40.0)),
                                    touch + 40.0 * along + side * 15.0 * left_of(along),
                                    rotated(along, Angle::degrees(side * 40.0)));
    const Path touching = moved(b, point_at(Curve(b), 0.5), touch);
    const auto found = intersections(Path({a}), touching);
    REQUIRE(!found.empty());
    CHECK(nearest_of(found, touch) < 1e-3);
  }
}

TEST_CASE("swapping the paths swaps the places and nothing else") {
  for (Random& random : each_random(50, 5)) {
    const Path a = random_path(random, 4), b = random_path(random, 4);
    const auto there = intersections(a, b), back = intersections(b, a);
    REQUIRE(there.size() == back.size());
    for (const PathCrossing& crossing : there) CHECK(nearest_of(back, crossing.point) < 1e-6);
  }
}

TEST_CASE("crossings come in the order of travel along the first path") {
  const Path comb = Path::through({{0, 0}, {0, 10}, {10, 10}, {10, 0}, {20, 0}, {20, 10}});
  const auto found = intersections(comb, Path::through({{30, 5}, {-5, 5}}));
  REQUIRE(found.size() == 3);
  CHECK(found[0].point.x == Approx(0.0).margin(1e-9));
  CHECK(found[1].point.x == Approx(10.0));
  CHECK(found[2].point.x == Approx(20.0));
  CHECK(found[1].on_a.curve == 2);
}

TEST_CASE("a joint of two strokes counts once") {
  const Path bent = Path::through({{0, 0}, {10, 10}, {20, 0}});
  const auto found = intersections(bent, Path::through({{0, 10}, {20, 10}}));
  REQUIRE(found.size() == 1);
  CHECK(distance(found[0].point, {10, 10}) < 1e-9);
}

TEST_CASE("strokes that run along each other give the ends of the shared stretch") {
  const auto lines =
      intersections(Path::through({{0, 0}, {10, 0}}), Path::through({{4, 0}, {14, 0}}));
  REQUIRE(lines.size() == 2);
  CHECK(lines[0].point.x == Approx(4.0));
  CHECK(lines[1].point.x == Approx(10.0));
  const CubicCurve curve = {{0, 0}, {30, 60}, {90, 60}, {120, 0}};
  const auto same = intersections(Path({curve}), Path({curve}));
  REQUIRE(same.size() == 2);
  CHECK(distance(same[0].point, curve.p0) < 1e-9);
  CHECK(distance(same[1].point, curve.p3) < 1e-9);
}

TEST_CASE("two circles meet where compasses say") {
  // 64 arcs leave the true circle by less than 1e-10 of the radius.
  const Path a = round_path({0, 0}, 50.0, 64), b = round_path({60, 10}, 40.0, 64);
  const auto found = intersections(a, b);
  REQUIRE(found.size() == 2);
  CHECK(distance(found[0].point, found[1].point) > 1.0);
  for (const PathCrossing& crossing : found) {
    CHECK(distance(crossing.point, {0, 0}) == Approx(50.0).margin(1e-7));
    CHECK(distance(crossing.point, {60, 10}) == Approx(40.0).margin(1e-7));
  }
}

TEST_CASE("an endless line through a point of a curve finds that point") {
  for (Random& random : each_random(300, 6)) {
    const CubicCurve curve = random_cubic(random, 200.0);
    const double t = random.between(0.0, 1.0);
    const Point planted = point_at(Curve(curve), t);
    const Vec along = random_heading(random);
    const auto found = intersections(Path({curve}), planted - 70.0 * along, 3.0 * along);
    CHECK(!found.empty());
    CHECK(found.size() <= 3);
    double least = 1e9;
    for (const LineCrossing& hit : found) {
      least = std::min(least, distance(hit.point, planted));
      CHECK(std::abs(cross(hit.point - planted, along)) < 1e-8);
      CHECK(hit.along_line == Approx(dot(hit.point - planted, along) + 70.0).margin(1e-9));
    }
    CHECK(least < 1e-4);
  }
}

TEST_CASE("a line that touches an arch is met once, at the crown") {
  const CubicCurve arch = {{0, 0}, {0, 40}, {60, 40}, {60, 0}};  // crown at (30, 30)
  const auto touch = intersections(Path({arch}), {0, 30}, {1, 0});
  REQUIRE(touch.size() == 1);
  CHECK(distance(touch[0].point, {30, 30}) < 1e-3);
  CHECK(intersections(Path({arch}), {0, 30.001}, {1, 0}).empty());
  CHECK(intersections(Path({arch}), {0, 29.999}, {1, 0}).size() == 2);
}

TEST_CASE("a stroke that lies in the line gives its two ends") {
  const auto found = intersections(Path::through({{0, 5}, {10, 5}, {10, 0}}), {-3, 5}, {1, 0});
  REQUIRE(found.size() == 2);
  CHECK(found[0].along_line == Approx(3.0));
  CHECK(found[1].along_line == Approx(13.0));
}

TEST_CASE("what is not a number meets no line") {
  const double none = std::numeric_limits<double>::quiet_NaN();
  const double endless = std::numeric_limits<double>::infinity();
  for (const double bad : each({none, endless, -endless})) {
    const CubicCurve curve = {{0, 0}, {0, bad}, {60, 40}, {60, 0}};
    CHECK(intersections(Path({curve}), {0, 1}, {1, 0}).empty());
    CHECK(intersections(Path::through({{0, 0}, {0, 9}}), {0, bad}, {1, 0}).empty());
  }
}
