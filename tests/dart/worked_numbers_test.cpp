// Worked numbers of the trade, moved by the program on a piece drawn for them.
#include "blockwright/block/kinds.hpp"
#include "blockwright/dart/pivot.hpp"
#include "blockwright/dart/truing.hpp"
#include "support/each.hpp"

#include <catch2/catch.hpp>

using namespace blockwright;

namespace {

/// A half front of straight lines, in mm: its bust point `under_bust` over a level waist, and one
/// dart of a given leg and mouth upright on a level shoulder.
Pattern straight_front(double leg, double mouth, double under_bust) {
  const Point bust{100.0, under_bust};
  const double rise = std::sqrt(leg * leg - 0.25 * mouth * mouth);
  const double top = under_bust + rise;
  Dart dart{"shoulder",
            "shoulder",
            bust,
            bust,
            {Point{bust.x + 0.5 * mouth, top}, Point{bust.x - 0.5 * mouth, top}},
            {}};
  dart.pressed_to = Leg::Second;
  // The seam is square to the closed dart: in the open piece it falls by half the angle to each
  // side.
  const Vec out = unit(right_of(dart.legs[0] - bust)), in = unit(left_of(dart.legs[1] - bust));
  dart.peak = dart_peak(bust, dart.legs[1], dart.legs[0], -in);
  const Point shoulder_point = dart.legs[0] + 40.0 * out;
  const Point side_neck = dart.legs[1] + 40.0 * in;
  const Point neck{0.0, side_neck.y - 60.0}, underarm{250.0, under_bust + 40.0};
  Piece piece;
  piece.name = "front";
  piece.kind = &kBodiceFront;
  piece.edges = {
      {"waist", EdgeRole::Hem, Path::through({{0.0, 0.0}, {250.0, 0.0}})},
      {"side", EdgeRole::Seam, Path::through({{250.0, 0.0}, underarm})},
      {"armhole", EdgeRole::FreeEdge, Path::through({underarm, shoulder_point})},
      {"shoulder", EdgeRole::Seam,
       Path::through({shoulder_point, dart.legs[0], dart.peak, dart.legs[1], side_neck})},
      {"neckline", EdgeRole::FreeEdge, Path::through({side_neck, neck})},
      {"centre_front", EdgeRole::Fold, Path::through({neck, {0.0, 0.0}})},
  };
  piece.darts = {dart};
  piece.grainline = {{30.0, 40.0}, {30.0, 160.0}};
  return {{piece}, {}};
}

}  // namespace

// Source: plane geometry; the same cases stand in tests/reference/dart_vectors_test.cpp.
TEST_CASE("A dart of 24 cm leg and 7 cm mouth opens 4.375 cm on a leg of 15 cm") {
  struct Case {
    double leg, mouth, to_leg, to_mouth;
  };
  for (const Case& c :
       each({Case{240, 70, 150, 43.75}, Case{240, 70, 100, 29.16667}, Case{250, 70, 180, 50.4},
             Case{120, 30, 90, 22.5}, Case{90, 15, 150, 25}})) {
    const Pattern front = straight_front(c.leg, c.mouth, c.to_leg);
    REQUIRE_FALSE(find_problem(front.piece("front")));
    const Pattern moved =
        pivot(front, {"front.shoulder", "front.waist", 1.0, std::nullopt, std::nullopt}).pattern;
    const Dart& waist = moved.piece("front").dart("waist");
    CHECK(waist.leg() == Approx(c.to_leg).margin(1e-9));
    CHECK(waist.intake() == Approx(c.to_mouth).margin(1e-5));
    CHECK(moved.piece("front").darts.size() == 1);
  }
}

// Common practice, no source: what is closed above opens below.
TEST_CASE("Closing a part of the upper dart opens the waist dart by the same angle") {
  const Pattern front = straight_front(240.0, 70.0, 150.0);
  const double whole = front.piece("front").darts[0].angle().degrees();
  CHECK(whole == Approx(16.771077).margin(1e-6));
  Pattern pattern = front;
  for (int quarter = 1; quarter <= 3; ++quarter) {
    CAPTURE(quarter);
    pattern = pivot(pattern, {"front.shoulder", "front.waist", 1.0, Angle::degrees(0.25 * whole),
                              std::nullopt})
                  .pattern;
    const Dart& waist = pattern.piece("front").dart("waist");
    CHECK(waist.angle().degrees() == Approx(0.25 * quarter * whole).margin(1e-9));
    CHECK(pattern.piece("front").dart("shoulder").angle().degrees() ==
          Approx((1.0 - 0.25 * quarter) * whole).margin(1e-9));
    // The mouth grows in proportion to the leg, by the chord of the angle.
    CHECK(waist.intake() ==
          Approx(2.0 * 150.0 * std::sin(0.5 * waist.angle().radians())).margin(1e-9));
  }
}

TEST_CASE("A trued dart square to its seam peaks at leg / cos(half angle) from its point") {
  // Values in mm: tests/reference/dart_vectors_test.cpp (plane geometry).
  struct Case {
    double leg, mouth, peak;
  };
  for (const Case& c :
       each({Case{240, 70, 242.59353}, Case{250, 70, 252.48661}, Case{120, 30, 120.94863},
             Case{90, 15, 90.31414}, Case{150, 40, 151.35138}})) {
    const Pattern trued = true_darts(straight_front(c.leg, c.mouth, 150.0)).pattern;
    const Dart& dart = trued.piece("front").dart("shoulder");
    CHECK(distance(dart.apex, dart.peak) == Approx(c.peak).margin(1e-5));
  }
}
