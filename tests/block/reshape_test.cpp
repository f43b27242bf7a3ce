// Curves redrawn between new ends: the laws of block/reshape.hpp, on curves of a block's size.
#include "blockwright/block/reshape.hpp"

#include "blockwright/block/armhole.hpp"
#include "blockwright/block/waist_edge.hpp"
#include "blockwright/geometry/path.hpp"
#include "support/each.hpp"

#include <catch2/catch.hpp>

#include <algorithm>
#include <vector>

using namespace blockwright;

namespace {

const std::vector<CubicCurve> kCurves = {{{0, 0}, {40, 0}, {70, 30}, {70, 80}},
                                         {{-20, 5}, {10, 20}, {60, 10}, {75, -60}},
                                         {{0, 0}, {25, 3}, {30, 90}, {5, 120}}};

Vec leaving(const CubicCurve& c) { return unit(c.p1 - c.p0); }
Vec arriving(const CubicCurve& c) { return unit(c.p3 - c.p2); }

double apart(const CubicCurve& a, const CubicCurve& b) {
  return std::max(
      {distance(a.p0, b.p0), distance(a.p1, b.p1), distance(a.p2, b.p2), distance(a.p3, b.p3)});
}

/// How far each handle reaches on the way to the corner of the end tangents.
std::pair<double, double> shares(const CubicCurve& c) {
  const auto corner = lines_meet(c.p0, leaving(c), c.p3, arriving(c));
  REQUIRE(corner);
  return {distance(c.p0, c.p1) / distance(c.p0, *corner),
          distance(c.p2, c.p3) / distance(*corner, c.p3)};
}

CubicCurve moved_end(const CubicCurve& c, Vec by, Angle turn, double follows) {
  return bent_one_way(c, c.p0, leaving(c), c.p3 + by, rotated(arriving(c), turn), follows);
}

}  // namespace

TEST_CASE("A curve redrawn there and back is the old one, however its handles follow") {
  for (const CubicCurve& c : each(kCurves)) {
    for (const double follows : {0.0, 1.0, 2.0}) {
      CAPTURE(follows);
      CHECK(apart(moved_end(c, {}, {}, follows), c) < 1e-9);
      const Vec by{-6.0, 9.0};
      const Angle turn = Angle::degrees(4.0);
      const CubicCurve there = moved_end(c, by, turn, follows);
      CHECK(apart(there, c) > 5.0);
      CHECK(apart(moved_end(there, -by, -turn, follows), c) < 1e-9);
    }
  }
}

TEST_CASE("A curve whose ends are shifted and turned alike is shifted and turned") {
  const Vec by{31.0, -12.0};
  const Angle turn = Angle::degrees(25.0);
  const auto put = [&](Point p) { return rotated_about(p, {10, 10}, turn) + by; };
  for (const CubicCurve& c : each(kCurves)) {
    const CubicCurve whole{put(c.p0), put(c.p1), put(c.p2), put(c.p3)};
    const Vec out = rotated(leaving(c), turn), in = rotated(arriving(c), turn);
    CHECK(apart(reshaped(c, whole.p0, out, whole.p3, in), whole) < 1e-9);
    for (const double follows : {0.0, 2.0}) {
      CHECK(apart(bent_one_way(c, whole.p0, out, whole.p3, in, follows), whole) < 1e-9);
    }
  }
}

TEST_CASE(
    "As a curve is drawn together its handles keep their share, or their length, not beyond") {
  for (const CubicCurve& c : each(kCurves)) {
    const auto was = shares(c);
    const Vec shorter = 0.3 * (c.p0 - c.p3);
    const CubicCurve shared = moved_end(c, shorter, {}, 0.0),
                     long_handles = moved_end(c, shorter, {}, 2.0);
    CHECK(shares(shared).first == Approx(was.first));
    CHECK(shares(shared).second == Approx(was.second));
    CHECK(shares(long_handles).first > was.first);
    CHECK(shares(long_handles).second > was.second);
    CHECK(std::max(shares(long_handles).first, shares(long_handles).second) < 1.0);
  }
}

TEST_CASE("A waist dart takes of a level line what its triangle is wide there, nothing above") {
  Dart dart;
  dart.point = {50.0, 120.0};
  dart.legs = {Point{40.0, 0.0}, Point{60.0, 0.0}};
  CHECK(taken_at_level(dart, 0.0) == Approx(20.0));
  CHECK(taken_at_level(dart, 60.0) == Approx(10.0));
  CHECK(taken_at_level(dart, 119.0) == Approx(20.0 / 120.0));
  CHECK(taken_at_level(dart, 120.0) == 0.0);
  CHECK(taken_at_level(dart, 150.0) == 0.0);
  // Legs that end at two heights: each line is met where it is.
  dart.legs = {Point{40.0, 0.0}, Point{60.0, -10.0}};
  CHECK(taken_at_level(dart, 60.0) == Approx(5.0 + 60.0 / 13.0));
}

// --- the armhole -------------------------------------------------------------------------------

namespace {

const ArmholeLine kArmhole{{230, 215}, {-1, 0}, {175, 265}, {0, 1}, {195, 385}, {0.25, 1}};

ArmholeStrokes drafted(const ArmholeLine& line) {
  const Path path = armhole(line);
  return {std::get<CubicCurve>(path.curves()[0]), std::get<CubicCurve>(path.curves()[1])};
}

double apart(const ArmholeStrokes& a, const ArmholeStrokes& b) {
  return std::max(apart(a.lower, b.lower), apart(a.upper, b.upper));
}

/// The line with underarm, across point and shoulder point moved, one at a time and all.
std::vector<ArmholeLine> other_lines() {
  std::vector<ArmholeLine> lines(4, kArmhole);
  lines[0].underarm = {220, 205};
  lines[1].across = {170, 268};
  lines[2].shoulder_point = {185, 390};
  lines[3] = {{240, 210}, {-1, 0.1}, {180, 262}, {0.02, 1}, {190, 380}, {0.3, 1}};
  return lines;
}

}  // namespace

TEST_CASE("A drafted armhole through other points is the one that is drafted through them") {
  for (const ArmholeLine& line : each(other_lines())) {
    const ArmholeStrokes there = reshaped_armhole(drafted(kArmhole), kArmhole, line);
    CHECK(apart(there, drafted(line)) < 1e-9);
    // No jump of the curvature at the across point.
    CHECK(curvature_at(there.lower, 1.0) == Approx(curvature_at(there.upper, 0.0)).epsilon(1e-9));
    CHECK(apart(reshaped_armhole(there, line, kArmhole), drafted(kArmhole)) < 1e-9);
  }
}

TEST_CASE("What a fitting has changed of an armhole stays changed by as much") {
  ArmholeStrokes fuller = drafted(kArmhole);
  fuller.lower.p1 = fuller.lower.p0 + 1.2 * (fuller.lower.p1 - fuller.lower.p0);
  for (const ArmholeLine& line : each(other_lines())) {
    const ArmholeStrokes is = reshaped_armhole(fuller, kArmhole, line), plain = drafted(line);
    const double reach = distance(is.lower.p0, is.lower.p1);
    CHECK(reach == Approx(1.2 * distance(plain.lower.p0, plain.lower.p1)).epsilon(0.03));
    CHECK(apart(is.upper, plain.upper) < 1e-9);
    CHECK(apart(reshaped_armhole(is, line, kArmhole), fuller) < 1e-9);
  }
}

TEST_CASE("An armhole drawn almost into the corner of its tangents still bends one way elsewhere") {
  ArmholeStrokes full = drafted(kArmhole);
  CubicCurve& lower = full.lower;
  const auto corner = lines_meet(lower.p0, lower.p1 - lower.p0, lower.p3, lower.p3 - lower.p2);
  REQUIRE(corner.has_value());
  lower.p1 = between(lower.p0, *corner, 0.98);
  for (const ArmholeLine& line : each(other_lines())) {
    CHECK(inflections({Path({reshaped_armhole(full, kArmhole, line).lower})}) == 0);
  }
}

TEST_CASE("A curve is made rounder only where it is too sharp, and only as far as it takes") {
  const CubicCurve sharp{{0, 0}, {0, -10}, {-30, -80}, {-50, -80}};
  const double was = least_radius(Path({sharp}));
  REQUIRE(was < 20.0);
  CHECK(apart(rounder(sharp, was - 0.1), sharp) == 0.0);
  const CubicCurve round = rounder(sharp, 24.0);
  CHECK(least_radius(Path({round})) >= 24.0);
  CHECK(least_radius(Path({round})) < 27.0);
  CHECK(norm(leaving(round) - leaving(sharp)) < 1e-9);
  CHECK(norm(arriving(round) - arriving(sharp)) < 1e-9);
  // More than can be had: the roundest.
  const double most = least_radius(Path({rounder(sharp, 1000.0)}));
  CHECK(most > 24.0);
  CHECK(most < 60.0);
}
