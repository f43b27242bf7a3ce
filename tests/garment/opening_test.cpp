// Zips, their notches, and whether the wearer gets in.
#include "blockwright/garment/opening.hpp"

#include "blockwright/block/kinds.hpp"
#include "blockwright/check/check.hpp"
#include "blockwright/dart/hem.hpp"
#include "blockwright/dart/one_dart.hpp"
#include "blockwright/dart/top_edge.hpp"
#include "dart/refusal.hpp"
#include "support/blocks.hpp"
#include "support/each_person.hpp"

#include <catch2/catch.hpp>

#include <cmath>

using namespace blockwright;
using namespace blockwright_tests;

namespace {

using enum OpeningPlan::At;

constexpr OpeningPlan plan_at(OpeningPlan::At at, Closure with = Closure::Zip) {
  return {.at = at, .with = with};
}

// How far down the sewn edge a notch lies, from its upper end.
double down_to_notch(const Piece& piece, const std::string& edge_name) {
  const Edge& edge = piece.edge(edge_name);
  const Notch* notch = first_where(piece.notches, [&](const Notch& one) {
    return one.edge == edge_name && one.name.ends_with(".zip_end");
  });
  REQUIRE(notch != nullptr);
  const double along = closed_from_cut(piece, edge, notch->along);
  return edge.path.start().y < edge.path.end().y ? sewn_length(piece, edge) - along : along;
}

RefusedStep opening_refusal(const Pattern& pattern, const OpeningPlan& plan) {
  return refused_with([&] { return with_opening(pattern, plan); });
}

}  // namespace

TEST_CASE("A zip in the side ends at notches that meet, the same walk from the underarm") {
  int opened_sides = 0;
  for (const Session& session : each_person(60, 91)) {
    const Pattern block = checked_block(session).block.pattern;
    const Piece& back = block.piece("back");
    const double side = sewn_length(back, back.edge("side"));
    // On a few a deep armhole leaves a side too short for a zip.
    if (side < kLeastOpening + kUnderUnderarm + kOverHem) continue;
    const Pattern opened = with_opening(block, plan_at(LeftSide)).pattern;
    REQUIRE(opened.openings.size() == 1);
    const Opening& opening = opened.openings.front();
    CHECK(opening.from_edge == kUnderUnderarm);
    const double end = opening.from_edge + opening.length;
    CHECK(down_to_notch(opened.piece("front"), "side") == Approx(end).margin(1e-6));
    CHECK(down_to_notch(opened.piece("back"), "side") == Approx(end).margin(1e-6));
    CHECK(check_pattern(opened).empty());
    CHECK(opening.zip >= opening.length);
    CHECK(opening.zip < opening.length + 50.0 + 1e-9);
    CHECK(opened.piece("back").edge("centre_back").role == EdgeRole::Seam);
    ++opened_sides;
  }
  CHECK(opened_sides > 50);
}

TEST_CASE("A zip that parts runs through the lower edge, one that does not ends over it") {
  const Pattern block = ordinary_block();
  const double centre = length(block.piece("back").edge("centre_back").path);
  const Opening parts =
      with_opening(block, plan_at(CentreBack, Closure::OpenZip)).pattern.openings[0];
  CHECK(parts.length == Approx(centre - kUnderEdge));
  const Pattern zipped = with_opening(block, plan_at(CentreBack)).pattern;
  CHECK(zipped.openings[0].length == Approx(centre - kUnderEdge - kOverHem));
  CHECK(down_to_notch(zipped.piece("back"), "centre_back") == Approx(centre - kOverHem));
  CHECK(find_named(zipped.piece("back").notches, "centre_back.zip_end")->mate_piece == "back");
  CHECK(zipped.piece("back").edge("centre_back").role == EdgeRole::Opening);
}

TEST_CASE("An opening that cannot be is refused, with what can",
          "[kMostUnderEdge][kLeastOpening]") {
  const Pattern block = ordinary_block();
  CHECK(opening_refusal(block, plan_at(CentreFront)).message ==
        "front.centre_front lies on the fold of the cloth");
  OpeningPlan low = plan_at(CentreBack);
  low.from_edge = kMostUnderEdge + 0.1;
  CHECK(opening_refusal(block, low).hint == "write 0 to 80 mm");
  low.from_edge = kMostUnderEdge;
  CHECK(opening_refusal(block, low).code == "");
  const Pattern twice = with_opening(block, plan_at(CentreBack)).pattern;
  CHECK(opening_refusal(twice, plan_at(CentreBack)).message == "there is an opening already");
  // A side seam of a cropped top, just long enough and not.
  const double side = sewn_length(block.piece("back"), block.piece("back").edge("side"));
  const auto cropped = [&](double left) {
    return draw_hem(block, {.above_waist = side - left, .below_bust_point = {}}).pattern;
  };
  const double least = kLeastOpening + kUnderUnderarm + kOverHem;
  CHECK(opening_refusal(cropped(least + 1.0), plan_at(LeftSide)).code == "");
  CHECK(opening_refusal(cropped(least - 1.0), plan_at(LeftSide)).code == "garment.opening");
}

TEST_CASE("What is closed must pass over head and shoulders") {
  const Pattern block = ordinary_block();
  CHECK(getting_in(block, {920.0}).empty());  // no style says how it opens
  const Pattern side = with_opening(block, plan_at(LeftSide)).pattern;
  REQUIRE(getting_in(side, {920.0}).size() == 2);
  CHECK(getting_in(side, {920.0})[0].where == "hem");
  CHECK(getting_in(side, {920.0})[1].where == "neckline");
  const Pattern parts = with_opening(block, plan_at(LeftSide, Closure::OpenZip)).pattern;
  CHECK(getting_in(parts, {920.0}).size() == 1);
  CHECK(getting_in(with_opening(block, plan_at(CentreBack, Closure::OpenZip)).pattern, {920.0})
            .empty());
  // The lower edge goes over the shoulders of a body that is small enough, and no further.
  double waist = 0.0;
  for (const Piece& piece : block.pieces) waist += 2.0 * sewn_length(piece, piece.edge("waist"));
  const double bust =
      std::fmin(waist, 905.0 + (waist / kFoldedArms - kShouldersOfBust905) / kShouldersByBust);
  const Pattern closed = with_opening(block, plan_at(CentreBack)).pattern;
  CHECK(getting_in(closed, {bust + 1.0}).size() == 1);
  CHECK(getting_in(closed, {bust - 1.0}).empty());
}

TEST_CASE("A zip that begins further down than a hook reaches leaves the edge above it closed") {
  OpeningPlan plan = plan_at(CentreBack, Closure::OpenZip);
  const auto warned = [&](double from_edge) {
    plan.from_edge = from_edge;
    return getting_in(with_opening(ordinary_block(), plan).pattern, {920.0, 980.0});
  };
  CHECK(warned(kUnderEdge).empty());
  REQUIRE(warned(kUnderEdge + 0.1).size() == 1);
  CHECK(warned(kUnderEdge + 0.1).front().where == "neckline");
}

// Sewn closed above the zip, such a top has a ring that passes over the arms or over the hips.
TEST_CASE("A strapless top goes on over the shoulders or over the hips") {
  TopEdgeDesign design;
  design.shape = TopShape::Straight;
  const Pattern darts = one_dart(ordinary_block(), {"front.waist"}, 150.0).pattern;
  const Pattern top = draw_top_edge(darts, design).pattern;
  OpeningPlan plan = plan_at(LeftSide, Closure::OpenZip);
  const Pattern closed = with_opening(top, plan).pattern;
  double ring = 0.0;
  for (const Piece& piece : closed.pieces) {
    for (const Edge& edge : piece.edges) {
      const bool upper = is_part(piece, edge.name, BlockEdge::Neckline) ||
                         is_part(piece, edge.name, BlockEdge::Armhole);
      if (upper) ring += 2.0 * sewn_length(piece, edge);
    }
  }
  const auto bust_of = [](double arms) {
    return 905.0 + (arms / kFoldedArms - kShouldersOfBust905) / kShouldersByBust;
  };
  const double fits = bust_of(ring - 1.0), too_wide = bust_of(ring + 1.0);
  constexpr double wide_hip = 1500.0;
  CHECK(getting_in(closed, {fits, wide_hip}).empty());
  REQUIRE(getting_in(closed, {too_wide, wide_hip}).size() == 1);
  CHECK(getting_in(closed, {too_wide, wide_hip}).front().where == "top_edge");
  const double other_bust = std::fmin(too_wide, ring - 1.0);
  CHECK(getting_in(closed, {other_bust, ring - 1.0}).empty());
  CHECK(getting_in(closed, {too_wide, std::fmax(ring + 1.0, too_wide)}).size() == 1);
  plan.from_edge = kUnderEdge;
  CHECK(getting_in(with_opening(top, plan).pattern, {too_wide, wide_hip}).empty());
  // A lower edge that stays closed passes over the hips, too.
  plan.with = Closure::Zip;
  const Pattern ending = with_opening(top, plan).pattern;
  REQUIRE(getting_in(ending, {1200.0, 1200.0}).size() == 1);
  CHECK(getting_in(ending, {1200.0, 1200.0}).front().where == "hem");
}

TEST_CASE("A piece may open at two edges, each with a notch of its own") {
  const Pattern twice =
      with_opening(with_opening(ordinary_block(), plan_at(CentreBack)).pattern, plan_at(LeftSide))
          .pattern;
  CHECK(twice.openings.size() == 2);
  CHECK(check_pattern(twice).empty());
  CHECK(twice.piece("back").edge("centre_back").role == EdgeRole::Opening);
  (void)down_to_notch(twice.piece("back"), "centre_back");
  (void)down_to_notch(twice.piece("back"), "side");
}
