#include "blockwright/geometry/curve.hpp"
#include "support/each.hpp"
#include "support/random_shapes.hpp"

#include <catch2/catch.hpp>

#include <algorithm>
#include <numbers>

using namespace blockwright;

namespace {

double least_curvature(const CubicCurve& curve) {
  double least = curvature_at(curve, 0.0);
  for (int i = 1; i <= 200; ++i) least = std::min(least, curvature_at(curve, i / 200.0));
  return least;
}

double largest_curvature(const CubicCurve& curve) {
  double largest = curvature_at(curve, 0.0);
  for (int i = 1; i <= 200; ++i) largest = std::max(largest, curvature_at(curve, i / 200.0));
  return largest;
}

double farthest_apart(const CubicCurve& a, const CubicCurve& b) {
  return std::max(std::max(distance(a.p0, b.p0), distance(a.p1, b.p1)),
                  std::max(distance(a.p2, b.p2), distance(a.p3, b.p3)));
}

// The fair curve over a chord of 1 mm along x that turns by these angles at its ends.
CubicCurve fair_over_chord(double leaving_degrees, double arriving_degrees) {
  return fair_curve({0.0, 0.0}, direction(Angle::degrees(-leaving_degrees)), {1.0, 0.0},
                    direction(Angle::degrees(arriving_degrees)));
}

// The largest distance of a curve's points from a circle, as a share of the radius.
double off_circle(const CubicCurve& curve, Point centre, double radius) {
  double worst = 0.0;
  for (int i = 0; i <= 200; ++i) {
    worst = std::max(worst, std::abs(distance(point_at(curve, i / 200.0), centre) / radius - 1.0));
  }
  return worst;
}

}  // namespace

TEST_CASE("two lines meet where both run through") {
  const auto meet = lines_meet({0.0, 0.0}, {1.0, 0.0}, {3.0, -5.0}, {0.0, 2.0});
  REQUIRE(meet);
  CHECK(*meet == Point{3.0, 0.0});
  for (Random& random : each_random(1000, 1)) {
    const Point p = random_point(random, 500.0);
    const Vec along_a = random_heading(random);
    const Vec along_b = rotated(along_a, Angle::degrees(random.between(1.0, 179.0)));
    const Point a = p + random.between(-300.0, 300.0) * along_a;
    const Point b = p + random.between(-300.0, 300.0) * along_b;
    const auto found = lines_meet(a, random.between(0.01, 100.0) * along_a, b, -along_b);
    REQUIRE(found);
    REQUIRE(distance(*found, p) < 1e-10);
  }
}

TEST_CASE("parallel lines and lines without a direction do not meet") {
  CHECK_FALSE(lines_meet({0.0, 0.0}, {1.0, 2.0}, {5.0, 0.0}, {1.0, 2.0}));
  CHECK_FALSE(lines_meet({0.0, 0.0}, {1.0, 2.0}, {5.0, 0.0}, {-2.0, -4.0}));
  CHECK_FALSE(lines_meet({0.0, 0.0}, {1.0, 2.0}, {0.0, 0.0}, {1.0, 2.0}));
  CHECK_FALSE(lines_meet({0.0, 0.0}, {1e-6, 2e-6}, {5.0, 0.0}, {1e6, 2e6}));
  CHECK_FALSE(lines_meet({0.0, 0.0}, {}, {5.0, 0.0}, {1.0, 2.0}));
  CHECK(lines_meet({0.0, 0.0}, {1.0, 0.0}, {5.0, 1.0}, {1.0, 1e-9}));
}

TEST_CASE("a corner curve with the circle's fullness is a quarter circle to 0.03 %") {
  const CubicCurve curve =
      corner_curve({50.0, 0.0}, {2.0, 0.0}, {150.0, 100.0}, {0.0, 3.0}, kQuarterCircleHandle);
  CHECK(off_circle(curve, {50.0, 100.0}, 100.0) < 3e-4);
}

TEST_CASE("a corner curve keeps its ends and directions, stays in its corner, turns one way") {
  for (Random& random : each_random(1000, 3)) {
    const Vec leaving = random_heading(random);
    const double side = random.whole(0, 1) == 0 ? 1.0 : -1.0;
    const Vec arriving = rotated(leaving, Angle::degrees(side * random.between(2.0, 178.0)));
    const Point from = random_point(random, 500.0);
    const Point corner = from + random.between(5.0, 300.0) * leaving;
    const Point to = corner + random.between(5.0, 300.0) * arriving;
    const double fullness = random.between(0.02, 0.98);
    const CubicCurve curve = corner_curve(from, 7.0 * leaving, to, 0.1 * arriving, fullness);
    REQUIRE(curve.p0 == from);
    REQUIRE(curve.p3 == to);
    REQUIRE(norm(tangent_at(curve, 0.0) - leaving) < 1e-9);
    REQUIRE(norm(tangent_at(curve, 1.0) - arriving) < 1e-9);
    REQUIRE(distance(curve.p1, between(from, corner, fullness)) < 1e-7);
    REQUIRE(distance(curve.p2, between(to, corner, fullness)) < 1e-7);
    const double wrong_way = side > 0.0 ? -least_curvature(curve) : largest_curvature(curve);
    REQUIRE(wrong_way <= 1e-12);
  }
}

TEST_CASE("where the corner is not ahead, the corner curve is the fair curve") {
  const Point from = {0.0, 0.0}, to = {100.0, 0.0};
  struct Ends {
    Vec leaving, arriving;
  };
  for (const Ends& ends : each({Ends{{1.0, 1.0}, {1.0, 1.0}},      // parallel
                                Ends{{1.0, 1.0}, {1.0, 2.0}},      // an S
                                Ends{{-1.0, 1.0}, {1.0, -1.0}},    // parallel, backwards
                                Ends{{-1.0, 1.0}, {-1.0, -2.0}},   // meets ahead only of one
                                Ends{{1.0, 0.0}, {1.0, 0.0}}})) {  // straight on
    CHECK(corner_curve(from, ends.leaving, to, ends.arriving, 0.5) ==
          fair_curve(from, ends.leaving, to, ends.arriving));
  }
}

TEST_CASE("a fair curve over a quarter circle's ends is a circle to 0.05 %") {
  const CubicCurve quarter = fair_curve({50.0, 0.0}, {1.0, 0.0}, {150.0, 100.0}, {0.0, 1.0});
  CHECK(off_circle(quarter, {50.0, 100.0}, 100.0) < 5e-4);
  const CubicCurve eighth =
      fair_curve({0.0, 0.0}, {1.0, 0.0}, Point{} + 100.0 * direction(Angle::degrees(22.5)),
                 direction(Angle::degrees(45.0)));
  const double radius = 50.0 / std::sin(std::numbers::pi / 8.0);
  CHECK(off_circle(eighth, {0.0, radius}, radius) < 1e-4);
}

TEST_CASE("a fair curve keeps its ends and directions for all directions there are") {
  for (int leaving = -180; leaving <= 180; leaving += 5) {
    for (int arriving = -180; arriving <= 180; arriving += 5) {
      const CubicCurve curve = fair_over_chord(leaving, arriving);
      CAPTURE(leaving, arriving);
      REQUIRE(curve.p0 == Point{0.0, 0.0});
      REQUIRE(curve.p3 == Point{1.0, 0.0});
      REQUIRE(distance(curve.p1, curve.p0) > 0.1);
      REQUIRE(distance(curve.p1, curve.p0) < 4.0 + 1e-12);
      REQUIRE(distance(curve.p2, curve.p3) > 0.1);
      REQUIRE(distance(curve.p2, curve.p3) < 4.0 + 1e-12);
      REQUIRE(norm(tangent_at(curve, 0.0) - direction(Angle::degrees(-leaving))) < 1e-12);
      REQUIRE(norm(tangent_at(curve, 1.0) - direction(Angle::degrees(arriving))) < 1e-12);
    }
  }
}

TEST_CASE("handles are as long as the source's formula says") {
  // Shares of the chord for the turns at the near and the far end, worked out apart from the code.
  struct Handle {
    double near_degrees, far_degrees, share;
  };
  for (const Handle& known : {Handle{0, 0, 0.333333333333}, Handle{90, 90, 0.666666666667},
                              Handle{60, 30, 0.367386823748}, Handle{30, 60, 0.423405273190},
                              Handle{90, 0, 0.503724001567}, Handle{0, 90, 0.393813658148},
                              Handle{45, -45, 0.390524291751}, Handle{20, -70, 0.326137622825},
                              Handle{-70, 20, 0.493647995800}}) {
    CAPTURE(known.near_degrees, known.far_degrees);
    const CubicCurve leaving = fair_over_chord(known.near_degrees, known.far_degrees);
    const CubicCurve arriving = fair_over_chord(known.far_degrees, known.near_degrees);
    CHECK(distance(leaving.p0, leaving.p1) == Approx(known.share).epsilon(1e-11));
    CHECK(distance(arriving.p3, arriving.p2) == Approx(known.share).epsilon(1e-11));
  }
}

TEST_CASE("equal turns at both ends make a symmetric fair curve") {
  for (double turn = 0.0; turn <= 150.0; turn += 7.5) {
    CAPTURE(turn);
    const CubicCurve curve = fair_over_chord(turn, turn);
    CHECK(distance({1.0 - curve.p1.x, curve.p1.y}, curve.p2) < 1e-14);
  }
}

TEST_CASE("a fair curve walked back, mirrored or turned is the fair curve of those ends") {
  for (Random& random : each_random(500, 4)) {
    const Point from = random_point(random, 300.0), to = random_point(random, 300.0);
    const Vec leaving = random_heading(random), arriving = random_heading(random);
    const CubicCurve curve = fair_curve(from, leaving, to, arriving);
    const CubicCurve back = fair_curve(to, -arriving, from, -leaving);
    REQUIRE(farthest_apart(std::get<CubicCurve>(reversed(curve)), back) < 1e-10);
    for (const Placement& place :
         each({Placement::mirror(20.0), Placement::turn(Angle::degrees(77.0), {5.0, 9.0})})) {
      const CubicCurve there = fair_curve(place(from), place(leaving), place(to), place(arriving));
      REQUIRE(farthest_apart(std::get<CubicCurve>(placed(curve, place)), there) < 1e-10);
    }
    const CubicCurve scaled = fair_curve(from, 3.0 * leaving, to, 0.2 * arriving);
    REQUIRE(farthest_apart(scaled, curve) < 1e-10);
  }
}

TEST_CASE("a small change of a direction makes a small change of the fair curve") {
  // Handles of up to 4 chords that turn by 0.01 degrees move by 0.0007 chords; the lengths change
  // at most about as fast again, and fastest where both ends turn nearly right round.
  constexpr double kStep = 0.01;
  double worst = 0.0, worst_ordinary = 0.0;
  for (double leaving = -180.0; leaving <= 180.0; leaving += 3.0) {
    for (double arriving = -180.0; arriving <= 180.0; arriving += 3.0) {
      const CubicCurve curve = fair_over_chord(leaving, arriving);
      const double moved =
          std::max(farthest_apart(curve, fair_over_chord(leaving + kStep, arriving)),
                   farthest_apart(curve, fair_over_chord(leaving, arriving + kStep)));
      worst = std::max(worst, moved);
      const bool ordinary = std::abs(leaving) <= 90.0 && std::abs(arriving) <= 90.0;
      if (ordinary) worst_ordinary = std::max(worst_ordinary, moved);
    }
  }
  CHECK(worst < 0.01);
  CHECK(worst_ordinary < 0.0003);
  CHECK(worst_ordinary > 0.0);
}

TEST_CASE("a fair curve bends one way where its ends turn one way and neither half of the other") {
  for (double leaving = 1.0; leaving <= 150.0; leaving += 3.0) {
    for (double arriving = 1.0; arriving <= 150.0; arriving += 3.0) {
      if (leaving < 0.5 * arriving || arriving < 0.5 * leaving) continue;
      CAPTURE(leaving, arriving);
      REQUIRE(least_curvature(fair_over_chord(leaving, arriving)) >= 0.0);
      REQUIRE(largest_curvature(fair_over_chord(-leaving, -arriving)) <= 0.0);
    }
  }
}

TEST_CASE("ends that turn against each other make an S with one inflection") {
  for (double leaving = 10.0; leaving <= 80.0; leaving += 10.0) {
    for (double arriving = 10.0; arriving <= 80.0; arriving += 10.0) {
      const CubicCurve curve = fair_over_chord(leaving, -arriving);
      int changes = 0;
      for (int i = 1; i <= 200; ++i) {
        const bool was = curvature_at(curve, (i - 1) / 200.0) > 0.0;
        if (was != (curvature_at(curve, i / 200.0) > 0.0)) ++changes;
      }
      CAPTURE(leaving, arriving);
      REQUIRE(changes == 1);
    }
  }
}

TEST_CASE("less fullness makes a flatter curve; one point makes one point") {
  const CubicCurve round = fair_curve({0.0, 0.0}, {1.0, -1.0}, {100.0, 0.0}, {1.0, 1.0});
  const CubicCurve flat = fair_curve({0.0, 0.0}, {1.0, -1.0}, {100.0, 0.0}, {1.0, 1.0}, 0.5);
  CHECK(point_at(round, 0.5).y < point_at(flat, 0.5).y);
  CHECK(distance(flat.p1, between(flat.p0, round.p1, 0.5)) < 1e-12);
  const Point p = {3.0, 4.0};
  CHECK(fair_curve(p, {1.0, 0.0}, p, {0.0, 1.0}) == CubicCurve{p, p, p, p});
  CHECK(corner_curve(p, {1.0, 0.0}, p, {0.0, 1.0}, 0.5) == CubicCurve{p, p, p, p});
}
