#include "blockwright/base/number_text.hpp"
#include "blockwright/dart/truing.hpp"
#include "darts/pictures.hpp"

#include <cmath>

namespace blockwright_pictures {

using namespace blockwright;

namespace {

// The worked case: a mouth of 7 cm on a leg of 24 cm, moved to where the leg is 15 cm.
constexpr double kLongLeg = 240.0, kWideMouth = 70.0, kShortLeg = 150.0;

Angle worked_angle() { return Angle::radians(2.0 * std::asin(0.5 * kWideMouth / kLongLeg)); }

// A dart of the worked angle about the origin that opens straight up or down.
struct Wedge {
  std::array<Point, 2> ends;
  explicit Wedge(double leg, Angle towards)
      : ends{Point{} + leg * direction(towards - 0.5 * worked_angle()),
             Point{} + leg * direction(towards + 0.5 * worked_angle())} {}
  [[nodiscard]] double mouth() const { return distance(ends[0], ends[1]); }
};

void draw_wedge(Diagram& d, const Sketch& s, const Wedge& wedge, Look look, double aside) {
  s.line(Path::through({wedge.ends[0], {}, wedge.ends[1]}), look);
  s.line(wedge.ends[0], wedge.ends[1], look);
  if (look != Look::New) return;
  const std::string mouth = trimmed(0.1 * wedge.mouth(), 3) + " cm";
  d.dimension(s(wedge.ends[0]), s(wedge.ends[1]), aside, "");
  const Vec out = unit(midpoint(wedge.ends[0], wedge.ends[1]) - Point{});
  s.label(midpoint(wedge.ends[0], wedge.ends[1]) + 32.0 * out, {0.0, 0.0}, mouth);
}

void draw_leg_length(const Sketch& s, const Wedge& wedge, double leg) {
  s.label(between({}, wedge.ends[1], 0.6), {wedge.ends[1].x > 0.0 ? 8.0 : -8.0, 0.0},
          trimmed(0.1 * leg, 1) + " cm");
}

void name_shoulder_dart(const Sketch& s, const Dart& dart) {
  s.point(dart.apex, {-8.0, -4.0}, "apex =\nbust point");
  s.point(dart.point, {-9.0, 6.0}, "dart point");
  s.label(between(dart.point, dart.legs[1], 0.55), {-6.0, 0.0}, "leg");
  s.label(between(dart.point, dart.legs[0], 0.6), {7.0, -4.0}, "leg");
  s.label(dart.peak, {2.0, 11.0}, "peak of the mouth");
}

void name_waist_dart(const Sketch& s, const Dart& dart) {
  s.label(midpoint(dart.apex, dart.point), {9.0, -6.0}, "hold-back:\nfrom apex to dart point");
  s.label(between(dart.point, dart.legs[0], 0.5), {-6.0, 0.0}, "leg");
  s.label(between(dart.point, dart.legs[1], 0.5), {7.0, 0.0}, "leg");
}

}  // namespace

void draw_names(Diagram& d, const std::string& wardrobe) {
  const Person person = person_of(wardrobe, "ondine-marsh");
  const Piece front = true_darts(person.block).pattern.piece("front");
  const Piece back = true_darts(person.block).pattern.piece("back");
  const Sketch s(d, 0.75, {90.0, 60.0}), t(d, 0.75, {470.0, 60.0});
  s.piece(front, Look::New);
  s.notches(front);
  name_shoulder_dart(s, front.dart("shoulder"));
  const Dart& waist = front.dart("waist");
  name_waist_dart(s, waist);
  d.dimension(s(waist.legs[0]), s(waist.legs[1]), -14.0, {0.0, -10.0},
              "mouth; its width is the intake");
  s.label({0.0, 200.0}, {-6.0, 0.0}, "centre\nfront,\non the\nfold");
  s.label({0.0, 0.0}, {-6.0, -10.0}, "centre waist");
  t.piece(back, Look::New);
  t.notches(back);
  t.point(back.dart("shoulder").apex, {-8.0, 0.0}, "apex =\nblade point");
  t.label(back.dart("waist").apex, {0.0, 16.0}, "apex of its own");
  t.label({0.0, 200.0}, {-6.0, 0.0}, "centre\nback");
  t.label({0.0, 0.0}, {-6.0, -10.0}, "centre waist");
  d.heading({90.0, kHeadingLine}, "Half front");
  d.heading({470.0, kHeadingLine}, "Half back");
}

void draw_mouth_and_leg(Diagram& d, const std::string&) {
  const Wedge upper(kLongLeg, Angle::degrees(90.0)), lower(kShortLeg, Angle::degrees(-90.0));
  const Sketch before(d, 0.75, {150.0, 190.0}), after(d, 0.75, {420.0, 190.0});
  draw_wedge(d, before, upper, Look::New, -10.0);
  draw_leg_length(before, upper, kLongLeg);
  before.point({}, {10.0, -4.0}, "apex");
  draw_wedge(d, after, upper, Look::Compass, 0.0);
  draw_wedge(d, after, lower, Look::New, -10.0);
  draw_leg_length(after, lower, kShortLeg);
  after.point({}, {10.0, 0.0}, "apex");
  d.heading({60.0, kHeadingLine}, "The dart is open above");
  d.heading({330.0, kHeadingLine}, "It is closed, and opens below");
  d.label({540.0, 250.0}, {1.0, 0.0},
          "The angle stays: " + fixed(worked_angle().degrees(), 2) +
              "°.\n\n"
              "The mouth follows the leg:\n7 cm : 24 cm = 4.375 cm : 15 cm.\n\n"
              "Half the leg, half the mouth.");
}

}  // namespace blockwright_pictures
