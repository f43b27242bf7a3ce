#include "blockwright/pattern/piece.hpp"

#include "blockwright/geometry/path.hpp"
#include "blockwright/pattern/pattern.hpp"
#include "pattern/sample_piece.hpp"
#include "support/each.hpp"
#include "support/random_shapes.hpp"

#include <catch2/catch.hpp>

#include <algorithm>
#include <numbers>
#include <set>
#include <utility>
#include <vector>

using namespace blockwright;

namespace {

Point mirrored_in_line(Point p, Point on, Vec along) {
  const Vec u = unit(along);
  const Vec v = p - on;
  return on + (2.0 * dot(v, u) * u - v);
}

// Area of the dart's wedge with its peak, apex to leg to peak to leg.
double dart_area(const Dart& dart) {
  return std::abs(
      signed_area(Path::through({dart.apex, dart.legs[0], dart.peak, dart.legs[1], dart.apex})));
}

// A piece with one straight edge of 100 mm along x, with such darts on it, closed by three others.
Piece strip_with(const std::vector<Dart>& darts) {
  std::vector<Point> waist = {{0.0, 0.0}};
  for (const Dart& dart : darts) {
    for (const Point p : {dart.legs[0], dart.peak, dart.legs[1]}) {
      if (p != waist.back()) waist.push_back(p);
    }
  }
  const Point waist_end = {100.0, 0.0};
  if (waist.back() != waist_end) waist.push_back(waist_end);
  Piece piece;
  piece.name = "strip";
  piece.edges = {{"waist", EdgeRole::Hem, Path::through(waist)},
                 {"rest", EdgeRole::Seam,
                  Path::through({waist_end, {100.0, 200.0}, {0.0, 200.0}, {0.0, 0.0}})}};
  piece.darts = darts;
  return piece;
}

Dart waist_dart(const std::string& name, double at, double half_intake) {
  return dart_on_line(name, "waist", {at, 120.0}, {0.0, 0.0}, {100.0, 0.0}, half_intake);
}

}  // namespace

TEST_CASE("edge roles are named in small letters") {
  CHECK(edge_role_name(EdgeRole::Seam) == "seam");
  CHECK(edge_role_name(EdgeRole::Fold) == "fold");
  CHECK(edge_role_name(EdgeRole::Hem) == "hem");
  CHECK(edge_role_name(EdgeRole::FreeEdge) == "free_edge");
  CHECK(edge_role_name(EdgeRole::Opening) == "opening");
}

TEST_CASE("edges, darts and landmarks are found by name; asking for others is a bug") {
  const Piece piece = sample_piece();
  CHECK(piece.edge("armhole").name == "armhole");
  CHECK(piece.dart("waist_outer").apex == Point{128.0, 140.0});
  CHECK(piece.landmark("shoulder_point") == Point{160.0, 420.0});
  CHECK_THROWS_AS(piece.edge("hem"), std::logic_error);
  CHECK_THROWS_AS(piece.dart("armhole"), std::logic_error);
  CHECK_THROWS_AS(piece.landmark("waist"), std::logic_error);
}

TEST_CASE("a dart knows its angle, intake and leg, whichever way its legs lie") {
  Dart dart;
  dart.apex = {10.0, 100.0};
  dart.legs = {Point{0.0, 0.0}, Point{20.0, 0.0}};
  CHECK(dart.intake() == 20.0);
  CHECK(dart.leg() == Approx(std::sqrt(100.0 * 100.0 + 10.0 * 10.0)));
  CHECK(dart.angle().radians() == Approx(2.0 * std::atan(0.1)).epsilon(1e-14));
  std::swap(dart.legs[0], dart.legs[1]);
  CHECK(dart.angle().radians() == Approx(2.0 * std::atan(0.1)).epsilon(1e-14));
}

TEST_CASE("an edge without darts is sewn as it is cut") {
  const Piece piece = sample_piece();
  for (const char* name : each({"side", "armhole", "neckline", "centre_back"})) {
    const Edge& edge = piece.edge(name);
    CHECK(sewn_stretches(piece, edge) == std::vector<Path>{edge.path});
    CHECK(sewn_length(piece, edge) == length(edge.path));
  }
}

TEST_CASE("an edge is sewn without its dart mouths") {
  const Piece piece = sample_piece();
  CHECK(sewn_length(piece, piece.edge("waist")) == Approx(200.0 - 20.0 - 16.0).epsilon(1e-12));
  const Edge& shoulder = piece.edge("shoulder");
  const double across = distance(shoulder.path.start(), shoulder.path.end());
  CHECK(sewn_length(piece, shoulder) == Approx(across - 13.0).epsilon(1e-12));
}

TEST_CASE("the stretches lie before, between and after the mouths, however the darts are listed") {
  Piece piece = sample_piece();
  const std::vector<Path> expected = {Path::through({{0.0, 0.0}, {60.0, 0.0}}),
                                      Path::through({{80.0, 0.0}, {120.0, 0.0}}),
                                      Path::through({{136.0, 0.0}, {200.0, 0.0}})};
  CHECK(sewn_stretches(piece, piece.edge("waist")) == expected);
  std::reverse(piece.darts.begin(), piece.darts.end());
  CHECK(sewn_stretches(piece, piece.edge("waist")) == expected);
}

TEST_CASE("a mouth at the end of its edge or next to another leaves an empty stretch") {
  const Piece at_start = strip_with({waist_dart("a", 10.0, 10.0)});
  const auto after = sewn_stretches(at_start, at_start.edge("waist"));
  REQUIRE(after.size() == 2);
  CHECK(after[0].empty());
  CHECK(length(after[1]) == Approx(80.0));

  const Piece at_end = strip_with({waist_dart("a", 90.0, 10.0)});
  const auto before = sewn_stretches(at_end, at_end.edge("waist"));
  REQUIRE(before.size() == 2);
  CHECK(length(before[0]) == Approx(80.0));
  CHECK(before[1].empty());

  const Piece touching = strip_with({waist_dart("a", 30.0, 10.0), waist_dart("b", 45.0, 5.0)});
  const auto around = sewn_stretches(touching, touching.edge("waist"));
  REQUIRE(around.size() == 3);
  CHECK(around[1].empty());
  CHECK(sewn_length(touching, touching.edge("waist")) == Approx(70.0));
}

TEST_CASE("a closed length that ends at a mouth ends behind it, whatever the rounding") {
  const Piece strip = strip_with({waist_dart("a", 30.0, 10.0)});
  const Edge& waist = strip.edge("waist");
  const double mouth = 20.0, behind = nearest(waist.path, strip.darts[0].legs[1]).along;
  for (const double off : each({-1e-10, -1e-14, 0.0, 1e-10})) {
    CHECK(cut_from_closed(strip, waist, mouth + off) == Approx(behind).margin(1e-9));
  }
  CHECK(cut_from_closed(strip, waist, mouth - 1e-6) == Approx(mouth - 1e-6).margin(1e-12));
}

TEST_CASE("the flat outline is all edges in order, closed") {
  const Piece piece = sample_piece();
  const Path outline = flat_outline(piece);
  CHECK(outline.start() == outline.end());
  double sum = 0.0;
  for (const Edge& edge : piece.edges) sum += length(edge.path);
  CHECK(length(outline) == Approx(sum).epsilon(1e-12));
}

TEST_CASE("the sewing outline has each dart cut out to its apex") {
  const Piece piece = sample_piece();
  const Path flat = flat_outline(piece), sewing = sewing_outline(piece);
  CHECK(sewing.start() == sewing.end());
  double cut_out = 0.0, added = 0.0;
  for (const Dart& dart : each(piece.darts)) {
    CHECK(nearest(sewing, dart.apex).distance < 1e-9);
    CHECK(nearest(sewing, dart.peak).distance > 1.0);
    CHECK(contains(flat, midpoint(dart.apex, dart.peak), 0.01));
    CHECK_FALSE(contains(sewing, midpoint(dart.apex, dart.peak), 0.01));
    cut_out += dart_area(dart);
    added += 2.0 * (dart.leg() - distance(dart.legs[0], dart.peak));
  }
  CHECK(signed_area(sewing) == Approx(signed_area(flat) - cut_out).epsilon(1e-12));
  CHECK(length(sewing) == Approx(length(flat) + added).epsilon(1e-12));
  CHECK_FALSE(find_crossing(sewing, 0.01));
}

TEST_CASE("the sewing outline closes where mouths lie at the ends of an edge or touch") {
  for (const auto& darts :
       each({std::vector{waist_dart("a", 10.0, 10.0)}, std::vector{waist_dart("a", 90.0, 10.0)},
             std::vector{waist_dart("a", 30.0, 10.0), waist_dart("b", 45.0, 5.0)}})) {
    const Piece piece = strip_with(darts);
    const Path sewing = sewing_outline(piece);
    CHECK(distance(sewing.start(), sewing.end()) < 1e-9);
    double cut_out = 0.0;
    for (const Dart& dart : darts) cut_out += dart_area(dart);
    CHECK(signed_area(sewing) == Approx(signed_area(flat_outline(piece)) - cut_out));
  }
}

TEST_CASE("leg ends within the tolerance off their edge are brought onto it") {
  Piece piece = strip_with({waist_dart("a", 40.0, 5.0), waist_dart("b", 90.0, 10.0)});
  for (Dart& dart : piece.darts) {
    for (Point& leg : dart.legs) leg = leg + Vec{6e-7, -6e-7};
  }
  const Path sewing = sewing_outline(piece);
  CHECK(distance(sewing.start(), sewing.end()) < 1e-9);
  CHECK(sewn_length(piece, piece.edge("waist")) == Approx(70.0).margin(1e-5));
}

TEST_CASE("a folded dart's edge lies on the seam that it is pressed against") {
  for (Random& random : each_random(2000, 1)) {
    const Point apex = random_point(random, 300.0);
    const double leg = random.between(50.0, 300.0);
    const Vec to_inner = random_heading(random);
    const double side = random.whole(0, 1) == 0 ? 1.0 : -1.0;
    const Angle whole = Angle::degrees(side * random.between(1.0, 35.0));
    const Point inner = apex + leg * to_inner;
    const Point outer = apex + leg * rotated(to_inner, whole);
    // The seam crosses the leg square or up to 40 degrees askew.
    const Vec square = side > 0.0 ? left_of(to_inner) : right_of(to_inner);
    const Vec seam = rotated(square, Angle::degrees(random.between(-40.0, 40.0)));
    const Point peak = dart_peak(apex, inner, outer, random.between(0.1, 10.0) * seam);
    // On the centre line, so that both halves of the fold are alike.
    REQUIRE(distance(peak, inner) == Approx(distance(peak, outer)).epsilon(1e-9));
    // Folded over the inner leg it comes to lie on the seam, behind the leg's end.
    const Point pressed = mirrored_in_line(peak, apex, to_inner);
    REQUIRE(std::abs(cross(pressed - inner, seam)) < 1e-9 * leg);
    REQUIRE(dot(pressed - inner, seam) < 0.0);
  }
}

TEST_CASE("a seam that slopes towards the apex raises the peak, one that slopes away lowers it") {
  const Point apex = {0.0, 0.0}, inner = {-10.0, 100.0}, outer = {10.0, 100.0};
  const Vec square = right_of(unit(inner - apex));
  const double level = norm(dart_peak(apex, inner, outer, square) - apex);
  const Vec towards = rotated(square, Angle::degrees(-20.0));
  const Vec away = rotated(square, Angle::degrees(20.0));
  CHECK(norm(dart_peak(apex, inner, outer, towards) - apex) > level);
  CHECK(norm(dart_peak(apex, inner, outer, away) - apex) < level);
}

TEST_CASE("a seam along the leg has no fold to follow: the peak is the middle of the mouth") {
  const Point apex = {0.0, 0.0}, inner = {-10.0, 100.0}, outer = {10.0, 100.0};
  for (const Vec seam : each(
           {inner - apex, apex - inner, Vec{}, rotated(inner - apex, Angle::degrees(-175.0)),
            rotated(inner - apex, Angle::degrees(-165.0))})) {  // a spike of 61 mm on a mouth of 20
    CHECK(dart_peak(apex, inner, outer, seam) == midpoint(inner, outer));
  }
}

TEST_CASE("Along gathers a place is found drawn up and as cut, in proportion") {
  Piece piece = sample_piece();
  piece.fullness = {{"gathers", "side", Fullness::Kind::Gathers, 20.0, 60.0, 30.0}};
  const Edge& side = piece.edge("side");
  CHECK(sewn_length(piece, side) == Approx(length(side.path) - 10.0));
  struct Place {
    double cut, closed;
  };
  for (const auto& [cut, closed] :
       each({Place{10.0, 10.0}, Place{40.0, 35.0}, Place{60.0, 50.0}, Place{80.0, 70.0}})) {
    CHECK(closed_from_cut(piece, side, cut) == Approx(closed));
    CHECK(cut_from_closed(piece, side, closed) == Approx(cut));
  }
}

TEST_CASE("Mirrored, a notch at one end of an edge is at its other end, and gathers change ends") {
  Piece piece = sample_piece();
  const double whole = length(piece.edge("side").path);
  piece.notches = {{"end", "side", whole, 1, "", ""}, {"start", "side", 0.0, 1, "", ""}};
  piece.fullness = {{"gathers", "side", Fullness::Kind::Gathers, 0.0, 40.0, 30.0}};
  const Piece other = mirrored(piece);
  CHECK(other.notches[0].along == 0.0);
  CHECK(other.notches[1].along == Approx(whole));
  CHECK(other.fullness[0].from == Approx(whole - 40.0));
  CHECK(other.fullness[0].to == Approx(whole));
  CHECK(mirrored(other).fullness[0].from == Approx(0.0).margin(1e-9));
}

TEST_CASE("A name with a side is parted before the side, another is left whole") {
  CHECK(sided_name("front_left").whole == "front");
  CHECK(sided_name("front_left").side == "_left");
  CHECK(sided_name("side_back_right").whole == "side_back");
  CHECK(sided_name("side_back_right").side == "_right");
  for (const char* name : each({"front", "left", "left_front"})) {
    CHECK(sided_name(name).whole == name);
    CHECK(sided_name(name).side.empty());
  }
}

TEST_CASE("A seam runs the other way where one of its pieces is mirrored, not where both are") {
  Pattern pattern;
  pattern.pieces = {sample_piece(), sample_piece()};
  pattern.pieces[1].name = "front";
  pattern.seams = {{"side", {{"front", "side"}}, {{"back", "side"}}, 0.0, false},
                   {"panel", {{"back", "armhole"}}, {{"front", "armhole"}}, 0.0, true}};
  const auto runs_back = [&](const std::set<std::string>& names) {
    const Pattern sides = with_mirrored(pattern, names);
    for (const Piece& piece : sides.pieces) {
      CHECK(is_mirrored(piece) == names.contains(piece.name));
    }
    return std::pair(sides.seams[0].b_runs_back, sides.seams[1].b_runs_back);
  };
  CHECK(runs_back({}) == std::pair(false, true));
  CHECK(runs_back({"back"}) == std::pair(true, false));
  CHECK(runs_back({"front"}) == std::pair(true, false));
  CHECK(runs_back({"front", "back"}) == std::pair(false, true));
}
