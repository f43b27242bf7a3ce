// Armholes and necklines as they are drafted, over a grid of shapes: the laws of their curves. The
// limits are ours; that an armhole and a joined neckline are one smooth curve is common practice.
#include "blockwright/block/armhole.hpp"
#include "blockwright/block/neckline.hpp"
#include "support/each.hpp"

#include <catch2/catch.hpp>

#include <algorithm>
#include <cmath>
#include <vector>

using namespace blockwright;

namespace {

// An armhole's frame by what a body gives: mm and degrees.
struct ArmholeShape {
  double width = 52.0;     // across point to underarm, level
  double rise = 95.0;      // across point over the underarm
  double upper = 95.0;     // shoulder point over the across point
  double out = 12.0;       // shoulder point outside the across point
  double slope = 20.0;     // of the shoulder
  double lean = 0.0;       // of the underarm, upwards into the piece
  double bust_dart = 0.0;  // which turns across point and shoulder point
};

ArmholeLine line_of(const ArmholeShape& s) {
  const Point bust_point{-75.0, -25.0};
  const Angle open = Angle::degrees(-s.bust_dart);
  const Point across = rotated_about({-s.width, s.rise}, bust_point, open);
  // The underarm lies so far out that the open armhole is as wide.
  const Point underarm{across.x + s.width, 0.0};
  return {underarm,
          rotated(Vec{-1.0, 0.0}, Angle::degrees(-s.lean)),
          across,
          rotated(Vec{0.0, 1.0}, open),
          rotated_about({s.out - s.width, s.rise + s.upper}, bust_point, open),
          left_of(direction(open - Angle::degrees(s.slope)))};
}

template <class Visit>
void each_upper(ArmholeShape s, Visit&& visit) {
  for (const double upper : {75.0, 95.0, 120.0}) {
    for (const double out : {6.0, 14.0, 28.0}) {
      for (const double slope : {10.0, 20.0, 30.0}) {
        for (const double lean : {-9.0, 0.0, 9.0}) {
          s.upper = upper, s.out = out, s.slope = slope, s.lean = lean;
          visit(s);
        }
      }
    }
  }
}

template <class Visit>
void each_back(Visit&& visit) {
  for (const double width : {46.0, 56.0, 66.0}) {
    for (const double rise : {80.0, 100.0, 125.0}) {
      each_upper({.width = width, .rise = rise}, visit);
    }
  }
}

template <class Visit>
void each_front(Visit&& visit) {
  for (const double width : {45.0, 56.0, 70.0, 85.0}) {
    for (const double rise : {80.0, 100.0, 120.0}) {
      for (const double dart : {8.0, 16.0, 25.0}) {
        each_upper({.width = width, .rise = rise, .bust_dart = dart}, visit);
      }
    }
  }
}

// The greatest distance from the straight line between the ends, over that line's length.
double hollow(const Path& path) {
  const Vec chord = path.end() - path.start();
  double most = 0.0;
  for (const Curve& curve : path.curves()) {
    for (int i = 0; i <= 40; ++i) {
      most = std::fmax(most, cross(unit(chord), point_at(curve, i / 40.0) - path.start()));
    }
  }
  return most / norm(chord);
}

double apart(const Path& a, const Path& b) {
  double most = 0.0;
  for (std::size_t i = 0; i < a.curves().size(); ++i) {
    for (int j = 0; j <= 20; ++j) {
      most = std::fmax(
          most, distance(point_at(a.curves()[i], j / 20.0), point_at(b.curves()[i], j / 20.0)));
    }
  }
  return most;
}

void keeps_the_laws(const ArmholeShape& s) {
  CAPTURE(s.width, s.rise, s.upper, s.out, s.slope, s.lean, s.bust_dart);
  const ArmholeLine line = line_of(s);
  const Path path = armhole(line);
  REQUIRE(path.curves().size() == 2);
  const auto& [lower, upper] = std::pair(path.curves()[0], path.curves()[1]);
  CHECK(distance(end_of(lower), line.across) < 1e-9);
  CHECK(std::abs(turn_between(tangent_at(lower, 0.0), line.along_underarm).degrees()) < 1e-6);
  CHECK(std::abs(turn_between(tangent_at(upper, 1.0), line.into_shoulder).degrees()) < 1e-6);
  CHECK(std::abs(turn_between(tangent_at(lower, 1.0), tangent_at(upper, 0.0)).degrees()) < 1e-6);
  CHECK(std::abs(turn_between(line.up, tangent_at(upper, 0.0)).degrees()) < 10.001);
  CHECK(curvature_at(lower, 1.0) == Approx(curvature_at(upper, 0.0)).epsilon(1e-6));
  CHECK(least_radius(path) >= 12.0);
  CHECK(inflections({path}) <= 1);
}

// Half a neck by its width, front depth over width and shoulder slope.
struct Neck {
  double width = 70.0, depth = 1.25, slope = 20.0;
};

Necklines necklines_of(const Neck& n) {
  const double depth = n.depth * n.width;
  const Angle front = Angle::degrees(n.slope + 2.0), back = Angle::degrees(n.slope - 2.0);
  const Angle lean = std::min(front, steepest_neckline({n.width, depth}));
  return necklines({{n.width, depth}, -direction(Angle::degrees(90.0) - lean), {0.0, 0.0}},
                   {{n.width, kBackNeckRise * n.width},
                    -direction(Angle::degrees(90.0) - back - (front - lean)),
                    {0.0, 0.0}});
}

template <class Visit>
void each_neck(Visit&& visit) {
  for (const double width : {60.0, 70.0, 80.0, 90.0}) {
    for (const double depth : {0.9, 1.1, 1.3, 1.6, 1.9}) {
      for (const double slope : {10.0, 16.0, 22.0, 28.0, 34.0}) visit(Neck{width, depth, slope});
    }
  }
}

}  // namespace

TEST_CASE("A back armhole has no jump of curvature, no sharp place, and a hollow") {
  each_back([](const ArmholeShape& s) {
    keeps_the_laws(s);
    // How deep it can be is given by where its points lie.
    const double share = s.width / (s.rise + s.upper);
    if (share < 0.24 || share > 0.34) return;
    const double deep = hollow(armhole(line_of(s)));
    CHECK(deep >= 0.13);
    CHECK(deep <= 0.28);
  });
}

TEST_CASE("A front armhole keeps the same laws with its bust dart open, and is hooked deeper") {
  each_front([](const ArmholeShape& s) {
    keeps_the_laws(s);
    ArmholeShape closed = s;
    closed.bust_dart = 0.0;
    CHECK(hollow(armhole(line_of(s))) > hollow(armhole(line_of(closed))));
  });
}

TEST_CASE("0.1 mm or 0.1 degrees in moves no point of an armhole by 2 mm") {
  const auto tried = [](const ArmholeShape& s) {
    const Path was = armhole(line_of(s));
    for (double ArmholeShape::*part :
         {&ArmholeShape::width, &ArmholeShape::rise, &ArmholeShape::upper, &ArmholeShape::out,
          &ArmholeShape::slope, &ArmholeShape::lean, &ArmholeShape::bust_dart}) {
      ArmholeShape other = s;
      other.*part += 0.1;
      CAPTURE(s.width, s.rise, s.upper, s.out, s.slope, s.lean, s.bust_dart);
      CHECK(apart(was, armhole(line_of(other))) < 2.0);
    }
  };
  each_back(tried);
  each_front(tried);
}

// The tangents at underarm and across point meet behind one of them, or nowhere.
TEST_CASE("An armhole without room is still drawn through its points") {
  for (const ArmholeShape& s :
       {ArmholeShape{.rise = 20.0, .bust_dart = 34.0}, ArmholeShape{.width = 8.0, .out = -30.0},
        ArmholeShape{.rise = -20.0}, ArmholeShape{.lean = -90.0}}) {
    const ArmholeLine line = line_of(s);
    const Path path = armhole(line);
    CHECK(path.start() == line.underarm);
    CHECK(distance(end_of(path.curves()[0]), line.across) < 1e-9);
    CHECK(path.end() == line.shoulder_point);
    CHECK(length(path) < 1000.0);
  }
}

TEST_CASE("Necklines bend one way with one radius at the shoulder, nowhere within 10 mm") {
  each_neck([](const Neck& n) {
    CAPTURE(n.width, n.depth, n.slope);
    const auto [front, back] = necklines_of(n);
    const double ratio = curvature_at(front, 0.0) / -curvature_at(back, 0.0);
    CHECK(std::abs(ratio) >= 0.5);
    CHECK(std::abs(ratio) <= 2.0);
    CHECK(least_radius(Path({front})) >= 10.0);
    CHECK(least_radius(Path({back})) >= 10.0);
    CHECK(inflections({Path({front})}) == 0);
    CHECK(inflections({Path({back})}) == 0);
    CHECK(std::abs(tangent_at(front, 1.0).y) < 1e-9);
    CHECK(std::abs(tangent_at(back, 1.0).y) < 1e-9);
    // The back is nowhere flat but next to its centre, where it may be.
    for (int i = 0; i <= 10; ++i) CHECK(std::abs(curvature_at(back, 0.05 * i)) > 1.0 / 1000.0);
  });
}

TEST_CASE("0.1 mm or 0.1 degrees in moves no point of a neckline by 1 mm") {
  each_neck([](const Neck& n) {
    const auto was = necklines_of(n);
    for (const Neck& other :
         {Neck{n.width + 0.1, n.depth, n.slope}, Neck{n.width, n.depth + 0.1 / n.width, n.slope},
          Neck{n.width, n.depth, n.slope + 0.1}}) {
      const auto is = necklines_of(other);
      CAPTURE(n.width, n.depth, n.slope);
      CHECK(apart(Path({was.front}), Path({is.front})) < 1.0);
      CHECK(apart(Path({was.back}), Path({is.back})) < 1.0);
    }
  });
}

TEST_CASE("A neck without a corner ahead is still drawn to its ends") {
  const Necklines drawn =
      necklines({{60.0, 80.0}, {0.0, 1.0}, {0.0, 0.0}}, {{60.0, 25.0}, {-1.0, 0.0}, {0.0, 0.0}});
  CHECK(drawn.front.p3 == Point{0.0, 0.0});
  CHECK(drawn.back.p0 == Point{60.0, 25.0});
  CHECK(length(Curve(drawn.front)) < 1000.0);
}

TEST_CASE("The across point comes in once the shoulder point lies less than 7.5 mm outside it",
          "[kLeastAcrossInside]") {
  const auto in = [](double outside, double new_outside) {
    const ArmholeLine line{
        {100.0, 0.0}, {-1.0, 0.0}, {70.0, 60.0}, {0.0, 1.0}, {70.0 + outside, 140.0}, {0.0, 1.0}};
    return across_in(line, {70.0 + new_outside, 145.0});
  };
  CHECK(in(25.0, 7.6) == 0.0);
  CHECK(in(25.0, 7.4) == Approx(0.1));
  CHECK(in(25.0, -5.0) == Approx(12.5));
  // One that lay nearer stays as near; one that goes out brings nothing in.
  CHECK(in(4.0, 4.0) == 0.0);
  CHECK(in(4.0, 1.0) == Approx(3.0));
  CHECK(in(-3.0, -5.0) == Approx(2.0));
  CHECK(in(4.0, 12.0) == 0.0);
}
