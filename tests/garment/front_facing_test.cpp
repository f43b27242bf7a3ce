// A faced neckline that runs into buttons, on many people's blocks.
#include "blockwright/dart/drawn_neckline.hpp"
#include "blockwright/dart/truing.hpp"
#include "blockwright/garment/allowances.hpp"
#include "blockwright/garment/facing.hpp"
#include "blockwright/garment/making.hpp"
#include "blockwright/garment/opening.hpp"
#include "blockwright/layout/print_plan.hpp"
#include "garment/printed_facings.hpp"
#include "support/blocks.hpp"
#include "support/each_person.hpp"

#include <catch2/catch.hpp>

#include <algorithm>
#include <cmath>

using namespace blockwright;
using namespace blockwright_tests;

namespace {

constexpr OpeningPlan kFrontButtons = {OpeningPlan::At::CentreFront, Closure::Buttons};

Pattern buttoned(const Pattern& block, NeckShape shape) {
  NecklineDesign design;
  design.shape = shape;
  return with_opening(draw_neckline(block, design).pattern, kFrontButtons).pattern;
}

const Facing& facing_with(const Pattern& pattern, const EdgeOf& edge) {
  const Facing* facing = first_where(pattern.facings, [&](const Facing& one) {
    return EdgeOf{one.piece, one.edge} == edge;
  });
  REQUIRE(facing != nullptr);
  return *facing;
}

// Each edge is as long as the garment's, but for what the roll takes at the shoulder and the break
// and what it gains or loses where the edge is round: common practice, no source.
void check_edges(const Pattern& faced) {
  for (const Facing& facing : faced.facings) {
    const double garment = sewn_length(faced, facing.faced);
    const double cut = length(faced.piece(facing.piece).edge(facing.edge).path);
    INFO(facing.piece << " " << facing.edge);
    CHECK(std::abs(garment - cut) < 2.0 * facing.roll + 2.0);
  }
}

// Beside the front edge the facing is as wide as one that is cut on, FIT: 2 stands and 3 cm.
void check_front_width(const Pattern& faced) {
  const Piece& facing = faced.piece("front_facing");
  const Path& front = faced.piece("front").edge("front_edge").path;
  const Path& outer = facing.edge("outer_edge").path;
  const double asked = 2.0 * kUsualButton + kFacingMore;
  const Point low = outer.start();
  CHECK(std::abs(low.x - front.start().x) == Approx(asked).margin(1.0));
  for (double along = 0.0; along < 0.25 * length(front); along += 5.0) {
    CHECK(std::abs(point_at_length(outer, along).x - front.start().x) ==
          Approx(asked).margin(1e-6));
  }
}

}  // namespace

TEST_CASE("A front with buttons is faced from the shoulder to the hem, and the back meets it") {
  const Pattern faced =
      with_facing(buttoned(ordinary_block(), NeckShape::V), {.edges = {"neckline"}}).pattern;
  REQUIRE(faced.pieces.size() == 4);
  const Piece& facing = faced.piece("front_facing");
  CHECK(facing.cut_on == CutOn::Pair);
  CHECK(facing.cut_from == std::vector{Material::Cloth, Material::Interfacing});
  std::vector<std::string> names;
  for (const Edge& edge : facing.edges) names.push_back(edge.name);
  CHECK(names ==
        std::vector<std::string>{"shoulder", "neck_edge", "front_edge", "waist", "outer_edge"});
  CHECK(facing_with(faced, {"front_facing", "neck_edge"}).faced ==
        std::vector<EdgeOf>{{"front", "neckline"}});
  CHECK(facing_with(faced, {"front_facing", "front_edge"}).faced ==
        std::vector<EdgeOf>{{"front", "front_edge"}});
  // At the shoulder both facings are equally long and sewn together.
  const Seam* shoulder = find_named(faced.seams, "front_facing_shoulder");
  if (shoulder == nullptr) shoulder = find_named(faced.seams, "back_neck_facing_shoulder");
  REQUIRE(shoulder != nullptr);
  CHECK(sewn_length(faced, shoulder->a) == Approx(sewn_length(faced, shoulder->b)).margin(1e-6));
  // The centre front is marked on both.
  const Notch* centre = find_named(facing.notches, "neckline.centre_front");
  REQUIRE(centre != nullptr);
  CHECK(centre->mate_piece == "front");
  CHECK(faced.piece("front").edge("front_edge").finish.how == Finish::NotSaid);
}

TEST_CASE("On everybody the facing of a buttoned front follows neckline, edge and hem") {
  int made = 0;
  for (const Session& session : each_person(people(100), 341)) {
    const Pattern block = checked_block(session).block.pattern;
    for (const NeckShape shape : {NeckShape::Round, NeckShape::Scoop, NeckShape::V}) {
      Pattern finished;
      try {
        finished = with_facing(buttoned(block, shape), {.edges = {"neckline"}}).pattern;
      } catch (const InputError&) {
        continue;  // no room for the buttons, or too short a shoulder
      }
      finished = with_allowances(finished, {}).pattern;
      check_edges(finished);
      check_front_width(finished);
      check_printed(finished);
      ++made;
    }
  }
  CHECK(made > 2 * people(100));
}

TEST_CASE("The front edge is cut like the neckline that it goes on from, in either order") {
  const Pattern front = buttoned(ordinary_block(), NeckShape::V);
  const Allowances asked{.hem = 30, .enclosed = 8};
  const FacingPlan neckline{.edges = {"neckline"}};
  const Pattern first = with_allowances(with_facing(front, neckline).pattern, asked).pattern;
  const Pattern last = with_facing(with_allowances(front, asked).pattern, neckline).pattern;
  for (const Pattern* finished : {&first, &last}) {
    CHECK(finished->piece("front").edge("front_edge").finish == EdgeFinish{Finish::Enclosed, 8});
    const Piece& facing = finished->piece("front_facing");
    CHECK(facing.edge("front_edge").finish == EdgeFinish{Finish::Enclosed, 8});
    CHECK(facing.edge("neck_edge").finish == EdgeFinish{Finish::Enclosed, 8});
    CHECK(facing.edge("waist").finish == EdgeFinish{Finish::Turned, 30});
    CHECK(facing.edge("outer_edge").finish == EdgeFinish{Finish::Turned, kFacingTurn});
  }
}

TEST_CASE("Fronts that a fitting has made two have a facing each") {
  Pattern two = ordinary_block();
  Piece& front = *find_named(two.pieces, "front");
  front.edges.back().role = EdgeRole::Seam;
  Piece right = mirrored(front);
  right.name = "front_right";
  right.cut_on = CutOn::One;
  front.name = "front_left";
  front.cut_on = CutOn::One;
  two.pieces.push_back(right);
  two.seams.clear();
  const Pattern faced =
      with_facing(with_opening(two, kFrontButtons).pattern, {.edges = {"front.neckline"}}).pattern;
  const Piece &l = faced.piece("front_facing_left"), &r = faced.piece("front_facing_right");
  CHECK(l.cut_on == CutOn::One);
  CHECK(is_mirrored(r));
  CHECK(signed_area(flat_outline(l)) == Approx(signed_area(flat_outline(r))));
  CHECK(!find_problem(l));
  CHECK(!find_problem(r));
}

TEST_CASE("Facings of fronts are interfaced, cut on or not") {
  const Pattern front = buttoned(ordinary_block(), NeckShape::Round);
  const auto lines = [](const Pattern& pattern) {
    const MakingOf making = making_of(with_allowances(pattern, {}).pattern);
    std::string text;
    for (const Wording& line : making.to_cut) text += line.plain() + "\n";
    for (const Wording& line : making.to_sew) text += line.plain() + "\n";
    return text;
  };
  const double edge = length(front.piece("front").edge("front_edge").path);
  const std::string cut_on = lines(front);
  const std::size_t at =
      cut_on.find("interfacing for the facings that are cut on to the fronts: 2, ");
  REQUIRE(at != std::string::npos);
  // A round neck rises within the facing's width.
  CHECK(std::stod(cut_on.substr(at + 62)) > edge);
  CHECK(std::stod(cut_on.substr(at + 62)) < edge + 60.0);
  CHECK(cut_on.find("fold them to the right side") != std::string::npos);
  // Beside a V it is as much longer as the V rises over the width of the facing.
  const Piece v = buttoned(ordinary_block(), NeckShape::V).piece("front");
  const Vec slant = end_tangent(v.edge("neckline").path);
  const double rise = v.edge("front_edge").finish.allowance * std::abs(slant.y / slant.x);
  const std::string beside_v = lines(buttoned(ordinary_block(), NeckShape::V));
  const std::size_t told = beside_v.find("to the fronts: 2, ");
  REQUIRE(told != std::string::npos);
  CHECK(std::stod(beside_v.substr(told + 18)) ==
        Approx(length(v.edge("front_edge").path) + rise).margin(1.0));
  const std::string apart = lines(with_facing(front, {.edges = {"neckline"}}).pattern);
  CHECK(apart.find("interfacing: front facing 2 as a pair and back neck facing") !=
        std::string::npos);
  CHECK(apart.find("cut on to the fronts") == std::string::npos);
  CHECK(apart.find("fold them to the right side") == std::string::npos);
  CHECK(
      apart.find("(neckline and front edge); at the lower edge sew them on along the hem line;") !=
      std::string::npos);
}
