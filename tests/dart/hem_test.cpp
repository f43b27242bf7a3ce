// A bodice that ends above the waist.
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

constexpr HemLevel above(double mm) { return {.above_waist = mm, .below_bust_point = {}}; }
constexpr HemLevel below_bust(double mm) { return {.above_waist = {}, .below_bust_point = mm}; }

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

RefusedStep hem_refusal(const Pattern& pattern, const HemLevel& level) {
  return refused_with([&] { return draw_hem(pattern, level); });
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
  CHECK(hem_refusal(block, HemLevel{}).code == "garment.hem");
  CHECK(hem_refusal(block, {.above_waist = 30.0, .below_bust_point = 90.0}).code == "garment.hem");
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
