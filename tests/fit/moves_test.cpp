#include "blockwright/fit/moves.hpp"

#include "fit/fit_people.hpp"
#include "support/each.hpp"

#include <catch2/catch.hpp>

#include <vector>

using namespace blockwright;
using namespace blockwright_tests;

namespace {

Opened front_of(const Pattern& block) { return opened(block.piece("front")); }

const Path& edge_of(const Opened& open, BlockEdge edge) {
  return open.edges[static_cast<std::size_t>(edge)].stretches.front();
}

// Parallel, between the ends of the true parallel.
CubicCurve beside(const CubicCurve& curve, double by) {
  return offset_stroke(curve, by,
                       {curve.p0 + by * left_of(tangent_at(curve, 0.0)),
                        curve.p3 + by * left_of(tangent_at(curve, 1.0))});
}

DartSpot dart(const Opened& open, const char* name) { return *find_dart(open, name); }

}  // namespace

TEST_CASE("M: a moved corner keeps everything beyond the next joints, in place and direction") {
  for (const Pattern& block : each_block(10)) {
    const Opened before = front_of(block);
    const Opened after = with_corner_moved(before, Corner::Underarm, {2.0, -6.0});
    for (const BlockEdge edge :
         each({BlockEdge::Shoulder, BlockEdge::Neckline, BlockEdge::Centre})) {
      CHECK(edge_of(before, edge) == edge_of(after, edge));
    }
    const Path &was = edge_of(before, BlockEdge::Armhole), &is = edge_of(after, BlockEdge::Armhole);
    CHECK(end_of(was.curves()[0]) == end_of(is.curves()[0]));
    CHECK(is.end() == was.end());
    const Opened neck = with_corner_moved(before, Corner::CentreNeck, {0.0, -6.0});
    const Path &line = edge_of(neck, BlockEdge::Neckline),
               &old = edge_of(before, BlockEdge::Neckline);
    CHECK(line.start() == old.start());
    CHECK(std::abs(turn_between(start_tangent(line), start_tangent(old)).degrees()) < 1.0);
    CHECK(std::abs(turn_between(end_tangent(line), end_tangent(old)).degrees()) < 1e-9);
  }
}

TEST_CASE("O: an offset neckline is parallel, as long as the parallel, and comes back") {
  for (const Pattern& block : each_block(5)) {
    const Opened front = front_of(block);
    const auto& neck = std::get<CubicCurve>(edge_of(front, BlockEdge::Neckline).curves().front());
    const double turn = -turn_between(tangent_at(neck, 0.0), tangent_at(neck, 1.0)).radians();
    for (const double by : each({-2.0, 1.0, 3.0})) {
      const CubicCurve parallel = beside(neck, by);
      for (int k = 0; k <= 40; ++k) {
        const double off = nearest(Path({neck}), point_at(parallel, k / 40.0)).distance;
        CHECK(std::abs(off - std::abs(by)) < 0.13 * std::abs(by));
      }
      CHECK(length(Curve(parallel)) == Approx(length(Curve(neck)) + by * turn).margin(1e-6));
      const CubicCurve back = beside(parallel, -by);
      CHECK(distance(point_at(back, 0.4), point_at(neck, 0.4)) < 1e-6);
    }
  }
}

TEST_CASE("T and R: a shifted or turned part keeps its lengths; a wedge is 2 asin(w / 2r) wide") {
  const Opened before = front_of(usual_block());
  const DartSpot shoulder = dart(before, "shoulder");
  Redrawing work(before);
  turn_part(work, work.corner(Corner::SideWaist), work.leg(shoulder, 0), before.at(shoulder).apex,
            wedge_angle(8.0, 90.0));
  const Opened turned = work.finished();
  for (const BlockEdge edge : each({BlockEdge::Side, BlockEdge::Armhole})) {
    CHECK(length(edge_of(turned, edge)) == Approx(length(edge_of(before, edge))).margin(1e-9));
  }
  CHECK(edge_of(turned, BlockEdge::Neckline) == edge_of(before, BlockEdge::Neckline));
  const Point far{90.0, 0.0};
  CHECK(distance(far, rotated_about(far, {}, wedge_angle(8.0, 90.0))) == Approx(8.0).margin(1e-12));

  Redrawing shift(before);
  shift_part(shift, shift.corner(Corner::SideWaist), shift.corner(Corner::Underarm), {5.0, 0.0});
  const Opened shifted = shift.finished();
  CHECK(edge_of(shifted, BlockEdge::Side).start() ==
        edge_of(before, BlockEdge::Side).start() + Vec{5, 0});
  CHECK(length(edge_of(shifted, BlockEdge::Side)) ==
        Approx(length(edge_of(before, BlockEdge::Side))).margin(1e-9));
}

TEST_CASE("D: legs stay equal and the mouth is 2 L sin(angle / 2)") {
  for (const Pattern& block : each_block(10)) {
    const Opened before = front_of(block);
    for (const char* name : each({"shoulder", "waist"})) {
      if (!find_dart(before, name)) continue;
      const DartSpot spot = dart(before, name);
      const double mouth = before.at(spot).intake() + 6.0;
      Redrawing work(before);
      set_mouth(work, spot, mouth);
      const Opened after = work.finished();
      const Dart& is = after.at(spot);
      CHECK(is.intake() == Approx(mouth).margin(1e-9));
      CHECK(distance(is.apex, is.legs[1]) == Approx(is.leg()).margin(1e-9));
      CHECK(2.0 * is.leg() * std::sin(0.5 * is.angle().radians()) == Approx(mouth).margin(1e-9));
      CHECK(is.leg() == Approx(before.at(spot).leg()).margin(1e-9));
    }
  }
}

// From the side waist to the shoulder dart, as a sleeve side is turned about the bust point.
TEST_CASE("R: a part that is turned as one keeps the shape of its curves") {
  for (const Pattern& block : each_block(10)) {
    for (const char* piece : {"front", "back"}) {
      const Opened before = opened(block.piece(piece));
      const DartSpot shoulder = dart(before, "shoulder");
      const Point apex = before.at(shoulder).apex;
      for (const double degrees : {-6.0, 3.0}) {
        INFO(piece << " by " << degrees << " degrees");
        const Placement turned = Placement::turn(Angle::degrees(degrees), apex);
        Redrawing work(before);
        turn_part(work, work.corner(Corner::SideWaist), work.leg(shoulder, 0), apex,
                  Angle::degrees(degrees));
        const Path is = edge_of(work.finished(), BlockEdge::Armhole);
        const Path as_one = placed(edge_of(before, BlockEdge::Armhole), turned);
        CHECK(apart(is, as_one) < 1e-6);
      }
    }
  }
}

namespace {

// The angles at which the curves of an edge meet the legs of its darts, first leg, second leg ...
std::vector<double> angles_at_legs(const OpenEdge& edge) {
  std::vector<double> degrees;
  for (std::size_t d = 0; d < edge.darts.size(); ++d) {
    const Dart& dart = edge.darts[d];
    const Path &before = edge.stretches[d], &after = edge.stretches[d + 1];
    if (std::holds_alternative<CubicCurve>(before.curves().back())) {
      degrees.push_back(turn_between(dart.legs[0] - dart.apex, end_tangent(before)).degrees());
    }
    if (std::holds_alternative<CubicCurve>(after.curves().front())) {
      degrees.push_back(turn_between(dart.legs[1] - dart.apex, start_tangent(after)).degrees());
    }
  }
  return degrees;
}

}  // namespace

// Rule 2 of a Redrawing: the sewn waist goes straight over a dart that was made wider.
TEST_CASE("D: a curve keeps its angle to the leg of the dart that it meets") {
  std::size_t angles = 0;
  for (const Pattern& block : each_block(10)) {
    for (const char* piece : {"front", "back"}) {
      const Opened before = opened(block.piece(piece));
      const OpenEdge& waist = before.edges.front();
      Redrawing work(before);
      for (std::size_t d = 0; d < waist.darts.size(); ++d) {
        set_mouth(work, {0, d}, waist.darts[d].intake() + 8.0);
      }
      const Opened after = work.finished();
      const std::vector<double> was = angles_at_legs(waist), is = angles_at_legs(after.edges[0]);
      REQUIRE(is.size() == was.size());
      for (std::size_t i = 0; i < was.size(); ++i) {
        INFO(piece << ", leg " << i);
        CHECK(is[i] == Approx(was[i]).margin(1e-9));
      }
      angles += is.size();
    }
  }
  CHECK(angles > 30);
}

TEST_CASE("F: what lies above the strip moves by exactly its width, what lies below stays") {
  const Opened before = front_of(usual_block());
  const Point underarm = edge_of(before, BlockEdge::Side).end();
  const Opened after = with_strip(before, 12.0);
  CHECK(edge_of(after, BlockEdge::Side).end() == underarm + Vec{0.0, 12.0});
  CHECK(edge_of(after, BlockEdge::Side).start() == edge_of(before, BlockEdge::Side).start());
  CHECK(length(edge_of(after, BlockEdge::Armhole)) ==
        Approx(length(edge_of(before, BlockEdge::Armhole))).margin(1e-9));
  const DartSpot waist = dart(before, "waist");
  CHECK(after.at(waist).apex == before.at(waist).apex + Vec{0.0, 12.0});
  CHECK(after.at(waist).intake() == Approx(before.at(waist).intake()).margin(1e-9));
}

TEST_CASE("An armhole is made longer by a level move of its across point, and by nothing else") {
  for (const Pattern& block : each_block(10)) {
    for (const char* piece : {"front", "back"}) {
      const Opened before = opened(block.piece(piece));
      for (const double by : {-2.0, 3.0}) {
        INFO(piece << " by " << by);
        Redrawing work(before);
        work.lengthen_armhole(by);
        const Opened after = work.finished();
        const Path &was = edge_of(before, BlockEdge::Armhole),
                   &is = edge_of(after, BlockEdge::Armhole);
        CHECK(length(is) - length(was) == Approx(by).margin(1e-6));
        CHECK(end_of(is.curves()[0]).y == Approx(end_of(was.curves()[0]).y).margin(1e-9));
        CHECK(is.start() == was.start());
        CHECK(is.end() == was.end());
      }
    }
  }
}

TEST_CASE("V: a re-pointed dart keeps its mouth, and the sewn edge its length") {
  for (const Pattern& block : each_block(10)) {
    const Opened before = front_of(block);
    const DartSpot spot = dart(before, "shoulder");
    Redrawing work(before);
    point_dart(work, spot, before.at(spot).apex + Vec{4.0, -10.0});
    const Opened after = work.finished();
    CHECK(after.at(spot).intake() == Approx(before.at(spot).intake()).margin(1e-9));
    CHECK(closed_length(after.edges[3]) == Approx(closed_length(before.edges[3])).margin(1e-9));
    CHECK(after.at(spot).legs[1] == before.at(spot).legs[1]);
    // The outer part turns by a degree or two only.
    CHECK(distance(edge_of(after, BlockEdge::Armhole).end(),
                   edge_of(before, BlockEdge::Armhole).end()) < 6.0);
  }
}

TEST_CASE("A reshaped neckline comes back, and keeps its bend") {
  const CubicCurve old{{0, 0}, {45, 0}, {50, 15}, {50, 60}};
  const CubicCurve there = reshaped_neckline(old, {0, 18}, {1, 0.1}, {40, 60}, {0.05, 1});
  const CubicCurve back = reshaped_neckline(there, old.p0, {1, 0}, old.p3, {0, 1});
  for (const double t : each({0.1, 0.5, 0.9})) {
    CHECK(distance(point_at(back, t), point_at(old, t)) < 1e-9);
    CHECK(curvature_at(there, t) > 0.0);
  }
}

// Hinge 75 mm beside and over the bust point. Plane geometry, worked by the trade in half
// millimetres: width, turn in degrees, drop, and the mouth of the same angle on a side dart of 120
// mm and a shoulder dart of 245 mm.
TEST_CASE("Full-bust move: the worked numbers, within their digits") {
  struct Worked {
    double width, turn, drop, side, shoulder;
  };
  for (const Worked& w : {Worked{6, 4.4, 6, 9, 19}, Worked{12.5, 8.9, 11, 19, 38},
                          Worked{25, 16.9, 19, 35, 72}, Worked{38, 24.6, 24, 51, 104}}) {
    INFO(w.width);
    const FullBust move = full_bust(w.width, {75.0, 75.0});
    const double half = std::sin(0.5 * move.turn.radians());
    CHECK(move.turn.degrees() == Approx(w.turn).margin(0.06));
    CHECK(move.drop == Approx(w.drop).margin(0.6));
    CHECK(240.0 * half == Approx(w.side).margin(0.6));
    CHECK(490.0 * half == Approx(w.shoulder).margin(0.8));
    // (width, -drop) = (Rot(turn) - 1)(bust point - hinge)
    const Vec arm{-75.0, -75.0};
    const Vec by = rotated(arm, move.turn) - arm;
    CHECK(by.x == Approx(w.width).margin(1e-9));
    CHECK(by.y == Approx(-move.drop).margin(1e-9));
  }
}

TEST_CASE("Full-bust move on a block: the bust dart gains exactly the turn") {
  for (const Pattern& block : each_block(5)) {
    const Piece& was = block.piece("front");
    const Point bust = was.landmark("bust_point"), hinge = was.landmark("across_front_point");
    const RowAmount row{CorrectionRow::FullerBust, 1, 12.5, AmountAs::PerHalf, BodySide::Both, ""};
    const Outcome got = outcome(block, {row});
    if (!got.fitted) continue;
    const Piece& is = got.fitted->pattern.piece("front");
    const FullBust move = full_bust(12.5, hinge - bust);
    CHECK(is.dart("shoulder").angle().degrees() - was.dart("shoulder").angle().degrees() ==
          Approx(move.turn.degrees()).margin(0.01));
    CHECK(sewn(got.fitted->pattern, "front", "centre_front") -
              sewn(block, "front", "centre_front") ==
          Approx(move.drop).margin(1e-6));
    CHECK(distance(is.landmark("bust_point"), bust) < 1e-9);
  }
}
