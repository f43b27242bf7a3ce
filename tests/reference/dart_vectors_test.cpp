// Dart angles, mouths and peaks for darts of ordinary sizes. Plane geometry, closed form: a dart of
// leg L and mouth w has the angle 2 asin(w / 2L); about the same apex a leg of M has the mouth
// w M / L; folded with the seam square to the closed dart, its edge peaks at L / cos(half angle)
// from the apex, L sin^2 / cos beyond the chord between the leg ends.

#include "blockwright/pattern/piece.hpp"
#include "support/each.hpp"

#include <catch2/catch.hpp>

#include <utility>

using namespace blockwright;

namespace {

// Millimetres and degrees; the figures were worked out in centimetres to six places.
struct MovedDart {
  double leg, mouth, new_leg, angle_degrees, new_mouth;
};
constexpr MovedDart kMovedDarts[] = {
    {240, 70, 150, 16.771077, 43.75000}, {240, 70, 100, 16.771077, 29.16667},
    {240, 70, 260, 16.771077, 75.83333}, {250, 70, 180, 16.095692, 50.40000},
    {120, 30, 90, 14.361512, 22.50000},  {90, 15, 150, 9.560384, 25.00000},
};

struct TruedDart {
  double leg, mouth, peak_radius, peak_beyond_chord;
};
constexpr TruedDart kTruedDarts[] = {
    {240, 70, 242.59353, 5.15932}, {250, 70, 252.48661, 4.94874}, {120, 30, 120.94863, 1.88982},
    {90, 15, 90.31414, 0.62718},   {150, 40, 151.35138, 2.69069},
};

// The apex at the origin, the dart pointing up the paper.
Dart upright_dart(double leg, double mouth) {
  const double height = std::sqrt(leg * leg - 0.25 * mouth * mouth);
  Dart dart;
  dart.legs = {Point{-0.5 * mouth, height}, Point{0.5 * mouth, height}};
  return dart;
}

}  // namespace

TEST_CASE("a dart's angle and its mouth on another leg are the closed forms") {
  for (const MovedDart& known : each(kMovedDarts)) {
    const Dart dart = upright_dart(known.leg, known.mouth);
    CHECK(dart.leg() == Approx(known.leg).epsilon(1e-14));
    CHECK(dart.angle().degrees() == Approx(known.angle_degrees).margin(1e-6));
    Dart moved = dart;
    for (Point& leg : moved.legs) leg = dart.apex + known.new_leg * unit(leg - dart.apex);
    CHECK(moved.intake() == Approx(known.new_mouth).margin(1e-5));
    CHECK(moved.angle().radians() == Approx(dart.angle().radians()).margin(1e-14));
  }
}

TEST_CASE("a trued dart peaks where plane geometry says, folded either way") {
  for (const TruedDart& known : each(kTruedDarts)) {
    const Dart dart = upright_dart(known.leg, known.mouth);
    const double chord = dart.legs[0].y;
    for (const auto& [inner, outer] :
         each({std::pair{dart.legs[0], dart.legs[1]}, std::pair{dart.legs[1], dart.legs[0]}})) {
      const Vec inwards = outer - inner;
      const Vec square = left_of(inner - dart.apex);
      const Vec seam = dot(square, inwards) > 0.0 ? square : -square;
      const Point peak = dart_peak(dart.apex, inner, outer, seam);
      CHECK(peak.x == Approx(0.0).margin(1e-12));
      CHECK(distance(peak, dart.apex) == Approx(known.peak_radius).margin(1e-5));
      CHECK(peak.y - chord == Approx(known.peak_beyond_chord).margin(1e-5));
    }
  }
}
