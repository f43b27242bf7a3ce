// A bodice that ends above the waist, at it, or in points.
#include "blockwright/dart/hem.hpp"

#include "blockwright/block/kinds.hpp"
#include "blockwright/check/check.hpp"
#include "blockwright/dart/folded.hpp"
#include "blockwright/dart/one_dart.hpp"
#include "blockwright/dart/panels.hpp"
#include "blockwright/dart/truing.hpp"
#include "dart/dart_measures.hpp"
#include "dart/refusal.hpp"
#include "support/blocks.hpp"
#include "support/each_person.hpp"

#include <catch2/catch.hpp>

#include <algorithm>
#include <cmath>

using namespace blockwright;
using namespace blockwright_tests;

namespace {

constexpr HemDesign above(double mm) { return {.above_waist = mm, .below_bust_point = {}}; }
constexpr HemDesign below_bust(double mm) { return {.above_waist = {}, .below_bust_point = mm}; }

constexpr HemDesign rising(double centre, double side) {
  return {.above_waist = centre, .below_bust_point = {}, .side_above_waist = side};
}

constexpr HemDesign in_points(double drop, double from_centre, double side) {
  HemDesign hem = rising(0.0, side);
  hem.point_drop = drop;
  hem.point_from_centre = from_centre;
  return hem;
}

/// Blocks with all front darts in the waist and one waist dart at the back, as a cropped top has
/// them: darts of 5 to 50 degrees.
std::vector<Pattern> one_dart_blocks(int count) {
  std::vector<Pattern> all;
  for (const Session& session : each_person(count, 41)) {
    const Pattern block = checked_block(session).block.pattern;
    all.push_back(one_dart(block, {"front.waist"}).pattern);
  }
  return all;
}

double waist_under_bust(const Pattern& pattern) {
  const Piece& front = pattern.piece("front");
  return front.landmark("bust_point").y - front.landmark("centre_waist").y;
}

double corner_degrees(const Path& before, const Path& after) {
  return std::abs(turn_between(-end_tangent(before), start_tangent(after)).degrees());
}

RefusedStep hem_refusal(const Pattern& pattern, const HemDesign& level) {
  return refused_with([&] { return draw_hem(pattern, level); });
}

/// Where the front's hem has its point: the corner that turns most.
Point corner_of(const Path& hem) {
  Point corner = hem.start();
  double sharpest = 0.0;
  for (std::size_t i = 0; i + 1 < hem.curves().size(); ++i) {
    const Curve &before = hem.curves()[i], &after = hem.curves()[i + 1];
    const double turn =
        std::abs(turn_between(tangent_at(before, 1.0), tangent_at(after, 0.0)).degrees());
    if (turn > sharpest) corner = start_of(after);
    sharpest = std::fmax(sharpest, turn);
  }
  return corner;
}

/// How far the waist darts of the front are led on under the waist, in mm; the farthest.
double led_on(const Pattern& block, const Pattern& with_hem) {
  double most = -1e9;
  for (const Dart& dart : block.piece("front").darts) {
    if (dart.edge != "waist") continue;
    const Dart& now = with_hem.piece("front").dart(dart.name);
    most = std::fmax(most, distance(dart.point, now.legs[0]) - distance(dart.point, dart.legs[0]));
  }
  return most;
}

}  // namespace

TEST_CASE("A hem is square to the centre, runs on across the side seam and is smooth as sewn") {
  int drawn = 0;
  for (const Pattern& block : each(one_dart_blocks(60), "one_dart_blocks(60)")) {
    // Low enough for the darts of everybody.
    const double height = std::fmin(40.0, waist_under_bust(block) - 50.0);
    if (height < kLeastAboveWaist) continue;
    ++drawn;
    const Pattern top = draw_hem(block, above(height)).pattern;
    for (const Problem& problem : check_pattern(top)) FAIL_CHECK(to_text(problem));
    double joined = 0.0;
    for (const char* name : {"front", "back"}) {
      INFO(name);
      const Piece &piece = top.piece(name), &was = block.piece(name);
      const Edge &hem = piece.edge("hem"), &side = piece.edge("side");
      CHECK(is_part(piece, "hem", BlockEdge::Waist));
      CHECK(hem.role == EdgeRole::Hem);
      CHECK(find_part(piece, BlockEdge::Waist) == &hem);
      const Edge& centre = part_of(piece, BlockEdge::Centre);
      CHECK(corner_degrees(centre.path, hem.path) == Approx(90.0).margin(0.5));
      joined += corner_degrees(hem.path, side.path);
      CHECK(length(was.edge("side").path) - length(side.path) == Approx(height).margin(0.01));
      CHECK(hem.path.start().y - was.landmark("centre_waist").y == Approx(height).margin(0.01));
      CHECK(sharpest_corner(Folded(piece, "hem").edge()) < 0.5);
    }
    // As the waist is joined: within 3 degrees of half a turn.
    CHECK(joined == Approx(180.0).margin(3.0));
  }
  CHECK(drawn >= 55);
}

TEST_CASE("A hem keeps its height over the waist, is fair, and darts keep their stitching") {
  int pieces = 0, off = 0;
  for (const Pattern& block : each(one_dart_blocks(60), "one_dart_blocks(60)")) {
    const double height = std::fmin(40.0, waist_under_bust(block) - 50.0);
    if (height < kLeastAboveWaist) continue;
    const Pattern top = draw_hem(block, above(height)).pattern;
    for (const char* name : {"front", "back"}) {
      INFO(name);
      const Path hem = Folded(top.piece(name), "hem").edge();
      const Path waist = Folded(true_darts(block.piece(name)), "waist").edge();
      double far = 0.0;
      for (int i = 1; i < 10; ++i) {
        const Point p = point_at_length(hem, 0.1 * i * length(hem));
        far = std::fmax(far, std::abs(nearest(waist, p).distance - height));
      }
      // A wide dart leaves its mark on the waist, which the hem does not follow.
      CHECK(far < 8.0);
      ++pieces;
      if (far > 4.0) ++off;
      CHECK(inflections({hem}) <= 1);
      CHECK(least_radius(hem) > 80.0);
      for (const Dart& dart : block.piece(name).darts) {
        if (dart.edge != "waist") continue;
        const Dart& now = top.piece(name).dart(dart.name);
        CHECK(now.edge == "hem");
        CHECK(now.point == dart.point);
        for (const std::size_t leg : {0U, 1U}) {
          const Path stitching = Path::through({dart.point, dart.legs[leg]});
          CHECK(nearest(stitching, now.legs[leg]).distance < 1e-6);
        }
        CHECK(distance(now.apex, now.legs[0]) ==
              Approx(distance(now.apex, now.legs[1])).margin(1e-9));
      }
    }
  }
  CHECK(off < pieces / 10);
}

TEST_CASE("A hem below the bust point is as far above the waist as is left") {
  const Pattern block = one_dart_blocks(1).front();
  const double under = waist_under_bust(block);
  const Pattern top = draw_hem(block, below_bust(under - 30.0)).pattern;
  CHECK(top.piece("front").edge("hem").path ==
        draw_hem(block, above(30.0)).pattern.piece("front").edge("hem").path);
}

TEST_CASE("A hem at the waist or below it is the waist, and that is said", "[kLeastAboveWaist]") {
  const Pattern block = one_dart_blocks(1).front();
  CHECK(find_named(draw_hem(block, above(5.01)).pattern.piece("front").edges, "hem") != nullptr);
  for (const double height : {4.99, 0.0, -30.0}) {
    const MovedDarts same = draw_hem(block, above(height));
    CHECK(same.pattern.piece("front").edge("waist").path ==
          block.piece("front").edge("waist").path);
    REQUIRE(same.remarks.size() == 1);
    CHECK(same.remarks.front().code == "garment.hem");
    CHECK(same.remarks.front().severity == Severity::Note);
  }
}

TEST_CASE("A hem near under the bust point is warned of", "[kUsualUnderBust]") {
  const Pattern block = one_dart_blocks(1).front();
  const auto warned = [&](double mm) {
    const Problems remarks = draw_hem(block, below_bust(mm)).remarks;
    return std::ranges::count(remarks, Severity::Warning, &Problem::severity) > 0;
  };
  CHECK_FALSE(warned(80.1));
  CHECK(warned(79.9));
}

TEST_CASE("A hem leaves a side seam, or is refused with the most that can be", "[kLeastUnderHem]") {
  const Pattern block = one_dart_blocks(1).front();
  const Piece& front = block.piece("front");
  const double most = sewn_length(front, front.edge("side")) - 40.0;
  CHECK(hem_refusal(block, above(most + 0.1)).message.find("too little of the side seam") !=
        std::string::npos);
  CHECK(hem_refusal(block, above(most - 0.1)).message.find("too little of the side seam") ==
        std::string::npos);
}

TEST_CASE("What a hem cannot do is refused") {
  const Pattern block = one_dart_blocks(1).front();
  CHECK(hem_refusal(block, HemDesign{}).code == "garment.hem");
  CHECK(hem_refusal(block, {.above_waist = 30.0, .below_bust_point = 90.0}).code == "garment.hem");
  CHECK(hem_refusal(block, rising(30.0, -1.0)).hint.find("0 or more") != std::string::npos);
  HemDesign low = above(30.0);
  low.back_above_waist = -1.0;
  CHECK(hem_refusal(block, low).hint.find("0 or more") != std::string::npos);
  CHECK(hem_refusal(block, in_points(-1.0, 0.0, 0.0)).hint.find("0 or more") != std::string::npos);
  CHECK(hem_refusal(block, in_points(0.0, 30.0, 0.0)).hint.find("point_drop") != std::string::npos);
  // Past the points of the darts.
  CHECK(hem_refusal(block, below_bust(5.0)).code == "dart.blocked");
  CHECK(hem_refusal(block, below_bust(5.0)).hint.find("back less") != std::string::npos);
  // Twice.
  CHECK(hem_refusal(draw_hem(block, above(20.0)).pattern, above(30.0)).code == "garment.hem");
  // After a panel seam.
  const Pattern drafted = checked_block(survey_people(1, 41).front()).block.pattern;
  const Pattern cut = cut_into_panels(drafted, {"front.shoulder", "front.waist", "", ""}).pattern;
  CHECK(hem_refusal(cut, above(30.0)).code == "garment.hem");
}

TEST_CASE("A hem that rises to the side is square to the centre and meets its mate at the side") {
  int drawn = 0;
  for (const Session& session : each_person(people(60), 41)) {
    const Pattern block = checked_block(session).block.pattern;
    HemDesign design = rising(10.0, 35.0);
    design.back_above_waist = 25.0;
    const Pattern top = draw_hem(block, design).pattern;
    for (const Problem& problem : check_pattern(top)) FAIL_CHECK(to_text(problem));
    double joined = 0.0;
    for (const char* name : {"front", "back"}) {
      INFO(name);
      const Piece &piece = top.piece(name), &was = block.piece(name);
      const Edge &hem = piece.edge("hem"), &side = piece.edge("side");
      CHECK(corner_degrees(part_of(piece, BlockEdge::Centre).path, hem.path) ==
            Approx(90.0).margin(0.5));
      CHECK(hem.path.start().y - was.landmark("centre_waist").y ==
            Approx(name == std::string("front") ? 10.0 : 25.0).margin(0.01));
      CHECK(length(was.edge("side").path) - length(side.path) == Approx(35.0).margin(0.01));
      CHECK(sharpest_corner(Folded(piece, "hem").edge()) < 0.5);
      joined += corner_degrees(hem.path, side.path);
    }
    CHECK(joined == Approx(180.0).margin(3.0));
    ++drawn;
  }
  CHECK(drawn > 0);
}

TEST_CASE("A front ends in its points, where they are asked for, and the back at the waist") {
  for (const Session& session : each_person(people(60), 41)) {
    const Pattern block = checked_block(session).block.pattern;
    const Pattern top = draw_hem(block, in_points(35.0, 12.0, 20.0)).pattern;
    for (const Problem& problem : check_pattern(top)) FAIL_CHECK(to_text(problem));
    const Piece& front = top.piece("front");
    const Point waist = block.piece("front").landmark("centre_waist");
    const Point point = corner_of(Folded(front, "hem").edge());
    CHECK(front.edge("hem").path.start() == waist);
    CHECK(point.x - waist.x == Approx(12.0).margin(0.3));
    CHECK(waist.y - point.y == Approx(35.0).margin(0.5));
    CHECK(led_on(block, top) <= kMostUnderWaist);
    CHECK(sewn_length(front, front.edge("side")) ==
          Approx(sewn_length(top.piece("back"), top.piece("back").edge("side"))).margin(1.0));
  }
}

TEST_CASE("One point on the centre line leads it on, and a back at the waist keeps its line") {
  const Pattern block = checked_block(survey_people(1, 41).front()).block.pattern;
  const Pattern top = draw_hem(block, in_points(50.0, 0.0, 0.0)).pattern;
  const Piece& front = top.piece("front");
  const Point waist = block.piece("front").landmark("centre_waist");
  const Point point = front.edge("hem").path.start();
  CHECK(point.x == Approx(waist.x).margin(1e-6));
  CHECK(waist.y - point.y == Approx(50.0).margin(1e-6));
  CHECK(distance(front.edge("centre_front").path.end(), point) < 1e-6);
  CHECK(top.piece("back").edge("hem").path == block.piece("back").edge("waist").path);
}

TEST_CASE("From centre to side a hem rises or falls by a quarter of its length",
          "[kMostHemSlope]") {
  const Pattern block = checked_block(survey_people(1, 41).front()).block.pattern;
  double most = 1e9;
  for (const char* name : {"front", "back"}) {
    const Piece& piece = block.piece(name);
    most = std::fmin(most, 0.25 * sewn_length(piece, piece.edge("waist")));
  }
  CHECK_NOTHROW(draw_hem(block, rising(0.0, most - 0.01)));
  CHECK(hem_refusal(block, rising(0.0, most + 0.01)).message.find("too steep") !=
        std::string::npos);
}

TEST_CASE("A point of less than 5 mm is refused, and one beyond any body", "[kLeastPoint]") {
  const Pattern block = checked_block(survey_people(1, 41).front()).block.pattern;
  CHECK_NOTHROW(draw_hem(block, in_points(5.01, 5.01, 20.0)));
  for (const HemDesign& little : {in_points(4.99, 10.0, 20.0), in_points(10.0, 4.99, 20.0)}) {
    CHECK(hem_refusal(block, little).hint.find("at least 5 mm") != std::string::npos);
  }
  for (const double far : {1e3, 1e9, 1e300}) {
    CHECK(hem_refusal(block, in_points(far, 0.0, 20.0)).code == "garment.hem");
    CHECK(hem_refusal(block, in_points(20.0, far, 20.0)).code == "garment.hem");
    CHECK(hem_refusal(block, rising(10.0, far)).code == "garment.hem");
  }
}

TEST_CASE("A point keeps 10 mm off a folded dart", "[kLeastBesidePoint]") {
  const Pattern block = checked_block(survey_people(1, 41).front()).block.pattern;
  const Piece& front = block.piece("front");
  const double most = length(sewn_stretches(front, front.edge("waist")).front()) -
                      0.5 * front.dart("waist").intake() - 10.0;
  CHECK_NOTHROW(draw_hem(block, in_points(10.0, most - 0.01, 20.0)));
  CHECK(hem_refusal(block, in_points(10.0, most + 0.01, 20.0)).message.find("folded dart") !=
        std::string::npos);
}

TEST_CASE("Rising from its point a hem crosses darts at most 2 cm under the waist",
          "[kMostUnderWaist]") {
  const Pattern block = checked_block(survey_people(1, 41).front()).block.pattern;
  // In one arc to the side where that crosses them higher, sooner level where it would not.
  const double shallow = led_on(block, draw_hem(block, in_points(20.0, 0.0, 0.0)).pattern);
  CHECK(shallow > 5.0);
  CHECK(shallow < 20.0);
  CHECK(led_on(block, draw_hem(block, in_points(60.0, 0.0, 0.0)).pattern) ==
        Approx(20.0).margin(0.01));
}

TEST_CASE("A point that would be too steep is refused with the most that it can drop",
          "[kSteepestPoint]") {
  const Pattern block = checked_block(survey_people(1, 41).front()).block.pattern;
  double taken = 20.0, refused = 119.0;
  REQUIRE(hem_refusal(block, in_points(refused, 0.0, 0.0)).message.find("too steep") !=
          std::string::npos);
  while (refused - taken > 0.01) {
    const double drop = 0.5 * (taken + refused);
    (hem_refusal(block, in_points(drop, 0.0, 0.0)).code.empty() ? taken : refused) = drop;
  }
  const Path hem =
      draw_hem(block, in_points(taken, 0.0, 0.0)).pattern.piece("front").edge("hem").path;
  CHECK(std::abs(turn_between({1.0, 0.0}, start_tangent(hem)).degrees()) ==
        Approx(60.0).margin(0.05));
}
