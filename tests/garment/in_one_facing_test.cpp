// One facing along neckline and armhole, on many people's blocks.
#include "blockwright/block/kinds.hpp"
#include "blockwright/dart/drawn_armhole.hpp"
#include "blockwright/dart/drawn_neckline.hpp"
#include "blockwright/dart/one_dart.hpp"
#include "blockwright/dart/panels.hpp"
#include "blockwright/garment/allowances.hpp"
#include "blockwright/garment/facing.hpp"
#include "blockwright/garment/making.hpp"
#include "blockwright/garment/opening.hpp"
#include "dart/refusal.hpp"
#include "garment/printed_facings.hpp"
#include "support/blocks.hpp"
#include "support/each_person.hpp"

#include <catch2/catch.hpp>

#include <algorithm>

using namespace blockwright;
using namespace blockwright_tests;

namespace {

const FacingPlan kInOne = {.edges = {"neckline", "armhole"}, .in_one = true};

RefusedStep in_one_refusal(const Pattern& pattern, const FacingPlan& plan) {
  return refused_with([&] { return with_facing(pattern, plan); });
}

// Front darts in the waist, so that the facing lies as the front does.
Pattern plain_front(const Pattern& block) { return one_dart(block, {"front.waist"}).pattern; }

Pattern with_v_neck(const Pattern& block, double depth_share) {
  NecklineDesign v;
  v.shape = NeckShape::V;
  v.depth_share = depth_share;
  return draw_neckline(block, v).pattern;
}

bool facing_edges(const Pattern& pattern, const std::vector<EdgeOf>& side) {
  return std::ranges::all_of(side, [&](const EdgeOf& at) {
    return std::ranges::count(pattern.facings, at.piece, &Facing::piece) > 0;
  });
}

// Nowhere nearer to neckline or armhole than four fifths of its width, nor to the bust point than
// FIT's 2.5 cm.
void check_outer_edge(const Pattern& faced) {
  const Piece &front = faced.piece("front"), &facing = faced.piece("front_facing");
  const double width = faced.facings.front().width;
  const Path& outer = facing.edge("outer_edge").path;
  for (double at = 0.0; at < length(outer); at += 5.0) {
    const Point p = point_at_length(outer, at);
    CHECK(nearest(front.edge("neckline").path, p).distance > 0.8 * width);
    CHECK(nearest(front.edge("armhole").path, p).distance > 0.8 * width);
  }
  const Point bust = front.landmark("bust_point");
  CHECK(nearest(outer, bust).distance > kFacingOffBust - 1e-6);
  CHECK(!contains(flat_outline(facing), bust, 0.05));
}

}  // namespace

TEST_CASE("A facing in one piece is sewn to neckline and armhole and joined at shoulder and side") {
  const Pattern faced = with_facing(plain_front(ordinary_block()), kInOne).pattern;
  REQUIRE(faced.pieces.size() == 4);
  CHECK(faced.piece("front_facing").cut_on == CutOn::Fold);
  CHECK(faced.piece("back_facing").cut_on == CutOn::Pair);
  std::vector<std::string> names;
  for (const Edge& edge : faced.piece("front_facing").edges) names.push_back(edge.name);
  CHECK(names == std::vector<std::string>{"side", "armhole_edge", "shoulder", "neck_edge",
                                          "centre_front", "outer_edge"});
  REQUIRE(faced.facings.size() == 4);
  int joined = 0;
  for (const Seam& seam : faced.seams) {
    const bool of_facings = facing_edges(faced, seam.a) && facing_edges(faced, seam.b);
    if (!of_facings || seam.a == seam.b) continue;
    ++joined;
    CHECK(sewn_length(faced, seam.a) == Approx(sewn_length(faced, seam.b)).margin(1e-6));
  }
  CHECK(joined == 2);
  // The shoulder is shorter by the roll at both ends.
  const Piece& front = faced.piece("front");
  CHECK(length(faced.piece("front_facing").edge("shoulder").path) ==
        Approx(sewn_length(front, front.edge("shoulder")) - 4.0).margin(1e-6));
}

TEST_CASE("On everybody the outer edge of a facing in one piece keeps off edges and bust point",
          "[kFacingOffBust]") {
  int made = 0;
  for (const Session& session : each_person(people(100), 351)) {
    const Pattern block = checked_block(session).block.pattern;
    try {
      const Pattern front = with_v_neck(plain_front(block), 0.35);
      const Pattern faced = with_facing(front, kInOne).pattern;
      check_outer_edge(faced);
      check_printed(with_allowances(faced, {}).pattern);
      ++made;
    } catch (const InputError& error) {
      CHECK(!error.problem().hint.empty());
    }
  }
  CHECK(made > people(100) * 3 / 4);
}

TEST_CASE("A facing in one piece goes over darts and panels, and down a front with buttons") {
  int made = 0, tried = 0;
  const auto check_all = [&](auto&& make) {
    ++tried;
    try {
      const Pattern faced = with_facing(make(), kInOne).pattern;
      check_printed(with_allowances(faced, {}).pattern);
      ++made;
    } catch (const InputError& error) {
      CHECK(!error.problem().hint.empty());
    }
  };
  for (const Session& session : each_person(people(40), 352)) {
    const Pattern block = checked_block(session).block.pattern;
    check_all([&] { return block; });
    check_all([&] { return pivot(block, {"front.shoulder", "front.armhole"}).pattern; });
    check_all([&] {
      return cut_into_panels(block, {"front.shoulder", "front.waist", "", ""}).pattern;
    });
    check_all([&] {
      return with_opening(with_v_neck(plain_front(block), 0.35),
                          {OpeningPlan::At::CentreFront, Closure::Buttons})
          .pattern;
    });
  }
  CHECK(made > tried * 3 / 4);
}

TEST_CASE("A facing in one piece that comes too near the bust is narrower, and at last refused") {
  int narrower = 0, refused = 0;
  double over_bust = 40.0;
  for (const Session& session : each_person(people(40), 353)) {
    over_bust = over_bust < 80.0 ? over_bust + 5.0 : 45.0;
    try {
      const Pattern block = plain_front(checked_block(session).block.pattern);
      NecklineDesign square;
      square.shape = NeckShape::Square;
      square.shoulder_share = 0.45;
      square.over_bust_point = over_bust;
      const Pattern front = draw_neckline(block, square).pattern;
      const MovedDarts faced = with_facing(front, kInOne);
      if (faced.pattern.facings.front().width == kUsualFacing) continue;
      ++narrower;
      REQUIRE(faced.remarks.size() == 1);
      CHECK(faced.remarks[0].message.plain().ends_with("to the bust point"));
      check_outer_edge(faced.pattern);
      FacingPlan wide = kInOne;
      wide.width = kUsualFacing;
      CHECK(in_one_refusal(front, wide).hint.starts_with("write at most 4"));
    } catch (const InputError& error) {
      if (error.problem().message.plain().starts_with("a facing in one piece has no room")) {
        ++refused;
      }
    }
  }
  CHECK(narrower > 0);
  CHECK(refused > 0);
}

TEST_CASE("A facing in one piece is sewn on before the sides are closed") {
  const Pattern faced = with_facing(plain_front(ordinary_block()), kInOne).pattern;
  std::vector<std::string> lines;
  for (const Wording& line : making_of(with_allowances(faced, {}).pattern).to_sew) {
    lines.push_back(line.plain());
  }
  const auto at = [&](const std::string& begins) {
    const auto found =
        std::ranges::find_if(lines, [&](const auto& line) { return line.starts_with(begins); });
    REQUIRE(found != lines.end());
    return found - lines.begin();
  };
  CHECK(at("sew the shoulders") < at("join the facings at the shoulders"));
  CHECK(at("join the facings at the shoulders") < at("sew the facings on, right sides together"));
  CHECK(at("sew the facings on, right sides together") < at("for each armhole"));
  CHECK(at("for each armhole") < at("sew the side seams, cloth and facing in one run,"));
  CHECK(std::ranges::count_if(
            lines, [](const auto& line) { return line.starts_with("join the facings"); }) == 1);
}

TEST_CASE("Only neckline and armhole are faced in one piece") {
  const Pattern block = ordinary_block();
  CHECK(in_one_refusal(block, {.edges = {"neckline"}, .in_one = true}).message ==
        "a facing in one piece is that of neckline and armhole");
  CHECK(in_one_refusal(block, {.edges = {"armhole", "armhole"}, .in_one = true}).code ==
        "garment.facing");
  const Pattern bound = with_facing(block, {.edges = {"back.neckline"}}).pattern;
  CHECK(in_one_refusal(bound, kInOne).message == "it is faced already");
}

TEST_CASE("Facings that lie over each other on the shoulder are warned of") {
  const auto warnings = [](const Pattern& pattern, const FacingPlan& plan) {
    std::vector<std::string> hints;
    for (const Problem& one : with_facing(pattern, plan).remarks) {
      if (one.severity == Severity::Warning) hints.push_back(one.hint.plain());
    }
    return hints;
  };
  NecklineDesign wide;
  wide.from_neck = 45.0;
  const Pattern block = draw_neckline(plain_front(ordinary_block()), wide).pattern;
  const Piece& front = block.piece("front");
  const double half = 0.5 * sewn_length(front, front.edge("shoulder"));
  FacingPlan both{.edges = {"neckline", "armhole"}, .width = half - 0.1};
  CHECK(warnings(block, both).empty());
  both.width = half + 0.1;
  REQUIRE(warnings(block, both).size() == 1);
  CHECK(warnings(block, both)[0].find(R"("in_one": true)") != std::string::npos);
  // In two steps as well, and not of one that was there before.
  const Pattern neck = with_facing(block, {.edges = {"neckline"}, .width = half + 0.1}).pattern;
  CHECK(warnings(neck, {.edges = {"armhole"}, .width = half + 0.1}).size() == 1);
  CHECK(warnings(block, kInOne).empty());
}
