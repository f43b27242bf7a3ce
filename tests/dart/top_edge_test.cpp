// The upper edge of a top without shoulders, and its straps.
#include "blockwright/dart/top_edge.hpp"

#include "blockwright/block/kinds.hpp"
#include "blockwright/check/check.hpp"
#include "blockwright/dart/drawn_neckline.hpp"
#include "blockwright/dart/fullness.hpp"
#include "blockwright/dart/hem.hpp"
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
#include <map>

using namespace blockwright;
using namespace blockwright_tests;

namespace {

constexpr TopShape kTopShapes[] = {TopShape::Straight, TopShape::Curved, TopShape::Sweetheart};

TopEdgeDesign strapless(TopShape shape) {
  TopEdgeDesign design;
  design.shape = shape;
  return design;
}

TopEdgeDesign strapped(TopShape shape, double width = 20.0) {
  TopEdgeDesign design = strapless(shape);
  design.straps = StrapDesign{width, 35.0};
  return design;
}

std::vector<TopEdgeDesign> all_tops() {
  std::vector<TopEdgeDesign> all;
  for (const TopShape shape : kTopShapes) {
    for (const TopEdgeDesign& design : {strapless(shape), strapped(shape), strapped(shape, 8.0)}) {
      all.push_back(design);
    }
  }
  return all;
}

Pattern block_as_drafted(const Session& session) { return checked_block(session).block.pattern; }

/// All front darts in the waist, as a cropped top has them.
Pattern in_one_dart(const Session& session) {
  return one_dart(block_as_drafted(session), {"front.waist"}).pattern;
}

Pattern first_top_block() { return in_one_dart(survey_people(1, 61).front()); }

RefusedStep top_refusal(const Pattern& pattern, const TopEdgeDesign& design) {
  return refused_with([&] { return draw_top_edge(pattern, design); });
}
bool top_refused_for(const Pattern& pattern, const TopEdgeDesign& design,
                     const std::string& words) {
  const RefusedStep refusal = top_refusal(pattern, design);
  return refusal.code == "garment.top_edge" && refusal.message.find(words) != std::string::npos;
}

/// Between two edges that meet, on the cloth.
double cloth_corner(const Path& before, const Path& after) {
  return 180.0 - turn_between(end_tangent(before), start_tangent(after)).degrees();
}

/// The edge after the side.
const Edge& outer_edge(const Piece& piece) {
  const Edge* armhole = find_named(piece.edges, "armhole");
  return armhole == nullptr ? piece.edge("neckline") : *armhole;
}

/// The stretches of an edge as they are sewn, darts closed along their stitching.
std::vector<Path> stretches_of(const Piece& piece, const char* edge) {
  return sewn_stretches(piece, piece.edge(edge));
}

void check_one_top(const Pattern& block, const Pattern& top, const TopEdgeDesign& design) {
  double over_side = 0.0;
  for (const char* name : {"front", "back"}) {
    INFO(name);
    const Piece& piece = top.piece(name);
    CHECK(find_named(piece.edges, "shoulder") == nullptr);
    CHECK(find_problem_on_paper(piece) == std::nullopt);
    over_side += cloth_corner(piece.edge("side").path, outer_edge(piece).path);
    const bool meant = name == std::string("front") && design.shape == TopShape::Sweetheart;
    const Path& centre = part_of(piece, BlockEdge::Centre).path;
    if (!meant)
      CHECK(cloth_corner(piece.edge("neckline").path, centre) == Approx(90.0).margin(0.5));
    for (const Edge& edge : piece.edges) {
      if (edge.role != EdgeRole::FreeEdge) continue;
      INFO(edge.name);
      for (const Path& stretch : sewn_stretches(piece, edge)) CHECK(least_radius(stretch) > 20.0);
    }
    CHECK(sewn_length(block.piece(name), block.piece(name).edge("side")) -
              sewn_length(piece, piece.edge("side")) ==
          Approx(design.under_underarm).margin(0.01));
  }
  CHECK(over_side == Approx(180.0).margin(3.0));
  CHECK(std::ranges::none_of(top.seams, [](const Seam& seam) { return seam.name == "shoulder"; }));
}

}  // namespace

TEST_CASE("A top edge is made of nearly everybody's block, smooth over the side and fair") {
  std::map<std::string, int> refused;
  int made = 0, tried = 0;
  const auto designs = all_tops();
  std::size_t next = 0;
  for (const Session& session : each_person(people(300), 61)) {
    for (const bool one : {true, false}) {
      const Pattern block = one ? in_one_dart(session) : block_as_drafted(session);
      const TopEdgeDesign& design = designs[next++ % designs.size()];
      INFO(static_cast<int>(design.shape));
      CAPTURE(one, design.straps.has_value());
      ++tried;
      try {
        const Pattern top = draw_top_edge(block, design).pattern;
        ++made;
        for (const Problem& problem : check_pattern(top)) FAIL_CHECK(to_text(problem));
        for (const Problem& problem : check_pattern(true_darts(top).pattern)) {
          FAIL_CHECK(to_text(problem));
        }
        check_one_top(block, top, design);
      } catch (const InputError& error) {
        CHECK(error.problem().code == "garment.top_edge");
        ++refused[error.problem().message.plain()];
      }
    }
  }
  for (const auto& [why, times] : refused) UNSCOPED_INFO(times << " times: " << why);
  CAPTURE(made, tried);
  CHECK(made >= 0.97 * tried);
}

TEST_CASE("A top edge lies where it is asked to") {
  for (const Session& session : each_person(20, 62)) {
    const Pattern block = in_one_dart(session);
    TopEdgeDesign design = strapped(TopShape::Sweetheart, 8.0);
    design.over_bust_level = 50.0;
    design.over_bust_point = 95.0;
    design.under_underarm = 10.0;
    design.back_depth = 15.0;
    design.closer = 0.0;
    const Pattern top = draw_top_edge(block, design).pattern;
    const Piece &front = top.piece("front"), &back = top.piece("back");
    const Point bust = front.landmark("bust_point");
    const Path& neckline = front.edge("neckline").path;
    CHECK(neckline.end().y - bust.y == Approx(50.0).margin(1e-6));
    CHECK(distance(neckline.start(), bust) == Approx(95.0).margin(1e-6));
    const Point underarm = block.piece("back").landmark("underarm_point");
    CHECK(back.edge("neckline").path.end().y == Approx(underarm.y - 15.0).margin(0.2));
    // The straps are 2 cm nearer to the centre at the back.
    CHECK(front.edge("neckline").path.start().x - back.edge("neckline").path.start().x ==
          Approx(20.0).margin(1e-6));
    check_one_top(block, top, design);
  }
}

TEST_CASE("A top edge in shares of the person's own heights") {
  const Pattern block = first_top_block();
  const Piece& front = block.piece("front");
  const Point bust = front.landmark("bust_point");
  const Path& shoulder = front.edge("shoulder").path;
  TopEdgeDesign shares = strapped(TopShape::Curved);
  shares.closer = 0.0;
  TopEdgeDesign lengths = shares;
  shares.centre_share = 0.35;
  shares.top_share = 0.45;
  lengths.over_bust_level = 0.35 * (front.edge("neckline").path.end().y - bust.y);
  lengths.over_bust_point =
      0.45 * distance(bust, point_at_length(shoulder, 0.5 * length(shoulder)));
  const auto drawn = [&](const TopEdgeDesign& design) {
    return draw_top_edge(block, design).pattern.piece("front").edge("neckline").path;
  };
  CHECK(apart(drawn(shares), drawn(lengths)) < 0.01);
}

TEST_CASE("What a top's front edge becomes shorter goes into its widest dart") {
  for (const Session& session : each_person(20, 63)) {
    const Pattern block = in_one_dart(session);
    for (const TopEdgeDesign& usual : all_tops()) {
      TopEdgeDesign flat = usual, close = usual;
      flat.closer = 0.0;
      close.closer = 9.0;
      const MovedDarts now = draw_top_edge(block, close);
      const Pattern was = draw_top_edge(block, flat).pattern;
      const auto edge = [](const Pattern& top) {
        double sum = 0.0;
        for (const Edge& e : top.piece("front").edges) {
          if (e.role == EdgeRole::FreeEdge) sum += sewn_length(top.piece("front"), e);
        }
        return sum;
      };
      CHECK(edge(was) - edge(now.pattern) == Approx(9.0).margin(0.05));
      const Piece &front = now.pattern.piece("front"), &before = was.piece("front");
      CHECK(total_angle(front) > total_angle(before) + 0.01);
      for (const char* kept : {"waist", "side"}) {
        CHECK(sewn_length(front, front.edge(kept)) ==
              Approx(sewn_length(before, before.edge(kept))).margin(0.001));
      }
      CHECK(now.remarks.front().message.plain().find("9 mm shorter; the dart waist") !=
            std::string::npos);
    }
  }
}

TEST_CASE("Darts that a top edge crosses end on it and keep their stitching") {
  int crossed = 0;
  for (const Session& session : each_person(30, 64)) {
    const Pattern block = block_as_drafted(session);
    for (TopEdgeDesign design : all_tops()) {
      design.closer = 0.0;
      const Pattern top = draw_top_edge(block, design).pattern;
      const Piece& front = top.piece("front");
      const Dart &now = front.dart("shoulder"), &was = block.piece("front").dart("shoulder");
      ++crossed;
      CHECK((now.edge == "neckline" || now.edge == "armhole"));
      CHECK(now.point == was.point);
      for (const std::size_t leg : {0U, 1U}) {
        CHECK(nearest(Path::through({was.point, was.legs.at(leg)}), now.legs.at(leg)).distance <
              1e-6);
      }
      // The blade's dart lies over the edge.
      CHECK(find_named(top.piece("back").darts, "shoulder") == nullptr);
      // Sewn, the edge has no corner there.
      const Dart& dart = now;
      const auto stretches = stretches_of(front, dart.edge.c_str());
      REQUIRE(stretches.size() == 2);
      const Angle closed = turn_between(dart.legs[0] - dart.point, dart.legs[1] - dart.point);
      CHECK(std::abs(turn_between(end_tangent(stretches[0]),
                                  rotated(start_tangent(stretches[1]), -closed))
                         .degrees()) < 0.01);
    }
  }
  CHECK(crossed > 0);
}

TEST_CASE("Points and lines of what a top edge cuts away are none of the pieces any more") {
  const Pattern top = draw_top_edge(first_top_block(), strapped(TopShape::Sweetheart)).pattern;
  for (const char* name : {"front", "back"}) {
    const Piece& piece = top.piece(name);
    for (const char* gone : {"shoulder_point", "side_neck_point", "front_neck_point", "nape",
                             "across_front_point", "across_back_point", "blade_point"}) {
      CHECK(find_named(piece.landmarks, gone) == nullptr);
    }
    for (const char* kept : {"underarm_point", "centre_waist", "side_waist_point"}) {
      CHECK(find_named(piece.landmarks, kept) != nullptr);
    }
    CHECK(find_named(piece.notches, "armhole") == nullptr);
    CHECK(find_named(piece.notches, "side") != nullptr);
    REQUIRE(find_named(piece.notches, "strap") != nullptr);
    CHECK(find_part(piece, BlockEdge::Shoulder)->name == "strap_end");
    const Path outline = flat_outline(piece);
    for (const BalanceLine& line : piece.balance_lines) {
      for (const double share : {0.01, 0.5, 0.99}) {
        CHECK(contains(outline, point_at_length(line.path, share * length(line.path)), 0.01));
      }
    }
  }
}

TEST_CASE("Straps reach over the shoulder, less 2 in a hundred, with ends and room to try on") {
  const Pattern block = first_top_block();
  for (const double width : {8.0, 20.0, 40.0}) {
    const Pattern top = draw_top_edge(block, strapped(TopShape::Curved, width)).pattern;
    const Piece& strap = top.piece("strap");
    CHECK(strap.cut_on == CutOn::Pair);
    CHECK(find_problem(strap) == std::nullopt);
    CHECK(length(strap.edge("front_end").path) == Approx(2.0 * width));
    // Over the middle of the shoulder, with a ruler: the shortest way is hardly shorter.
    const auto middle = [&](const char* name) {
      const Path& shoulder = block.piece(name).edge("shoulder").path;
      return point_at_length(shoulder, 0.5 * length(shoulder));
    };
    TopEdgeDesign flat = strapped(TopShape::Curved, width);
    flat.closer = 0.0;
    const Pattern level = draw_top_edge(block, flat).pattern;
    double way = 0.0;
    for (const char* name : {"front", "back"}) {
      const Piece& piece = level.piece(name);
      const Edge* end = find_named(piece.edges, "strap_end");
      const Point top_of_it = end == nullptr ? piece.edge("neckline").path.start()
                                             : midpoint(end->path.start(), end->path.end());
      way += distance(top_of_it, middle(name));
    }
    const double tall = length(level.piece("strap").edge("long_edge").path);
    CHECK(tall == Approx(0.98 * way + 30.0 + 35.0).margin(6.0));
    CHECK(tall < 0.98 * way + 65.0);
  }
  const Pattern none = draw_top_edge(block, strapless(TopShape::Curved)).pattern;
  CHECK(find_named(none.pieces, "strap") == nullptr);
}

TEST_CASE("Both sides of a body whose sides differ get the top edge as images, a strap each") {
  Pattern block = first_top_block();
  Piece left = block.piece("front"), right = mirrored(left);
  left.name = "front_left";
  right.name = "front_right";
  for (Piece* piece : {&left, &right}) piece->cut_on = CutOn::One;
  block.pieces = {left, right, block.piece("back")};
  block.seams.clear();
  const Pattern top = draw_top_edge(block, strapped(TopShape::Sweetheart)).pattern;
  for (const char* edge : {"armhole", "strap_end", "neckline", "side"}) {
    CHECK(apart(mirrored(top.piece("front_right")).edge(edge).path,
                top.piece("front_left").edge(edge).path) < 1e-6);
  }
  for (const char* name : {"strap_left", "strap_right"}) {
    CHECK(top.piece(name).cut_on == CutOn::One);
    CHECK_FALSE(is_mirrored(top.piece(name)));
  }
}

TEST_CASE("After a top edge a hem is drawn, a dart is moved and a panel seam is cut") {
  for (const Session& session : each_person(20, 65)) {
    const Pattern top = draw_top_edge(in_one_dart(session), strapped(TopShape::Sweetheart)).pattern;
    const Pattern short_top = draw_hem(top, {.above_waist = 20.0, .below_bust_point = {}}).pattern;
    CHECK(check_pattern(short_top).empty());
    CHECK(find_named(short_top.piece("front").edges, "hem") != nullptr);
    const Pattern moved =
        pivot(top, {.dart = "front.waist", .to = "front.side:0.5", .part = 0.3}).pattern;
    CHECK(check_pattern(moved).empty());
    // From the dart in the neckline down.
    const Pattern darts =
        draw_top_edge(block_as_drafted(session), strapless(TopShape::Sweetheart)).pattern;
    const Pattern panels = cut_into_panels(darts, {"front.neck", "front.waist", "", ""}).pattern;
    CHECK(check_pattern(panels).empty());
    CHECK(find_named(panels.pieces, "side_front") != nullptr);
  }
}

TEST_CASE("Drawn again after a fitting, a top edge differs by what the fitting changed") {
  const Pattern block = first_top_block();
  Pattern longer = block;
  // A body 1 cm longer over the waist: all but the waist lies 1 cm higher.
  for (Piece& piece : longer.pieces) {
    for (Landmark& point : piece.landmarks) point.at = point.at + Vec{0.0, 10.0};
    for (Edge& edge : piece.edges) edge.path = placed(edge.path, Placement::shift({0.0, 10.0}));
    for (Dart& dart : piece.darts) dart = placed(dart, Placement::shift({0.0, 10.0}));
    for (BalanceLine& line : piece.balance_lines) {
      line.path = placed(line.path, Placement::shift({0.0, 10.0}));
    }
  }
  const TopEdgeDesign design = strapped(TopShape::Curved);
  const Pattern was = draw_top_edge(block, design).pattern;
  const Pattern is = draw_top_edge(longer, design).pattern;
  for (const char* name : {"front", "back"}) {
    for (const char* edge : {"armhole", "neckline"}) {
      CHECK(apart(placed(was.piece(name).edge(edge).path, Placement::shift({0.0, 10.0})),
                  is.piece(name).edge(edge).path) < 1e-6);
    }
  }
}

TEST_CASE("A top edge is raised by 1 cm at most and leaves 4 cm of the side", "[kMostRaised]") {
  const Pattern block = first_top_block();
  const Piece& front = block.piece("front");
  TopEdgeDesign design = strapped(TopShape::Curved);
  design.under_underarm = -9.9;
  const Pattern raised = draw_top_edge(block, design).pattern;
  check_one_top(block, raised, design);
  CHECK(check_pattern(raised).empty());
  design.under_underarm = -10.1;
  CHECK(top_refused_for(block, design, "cuts into the arm"));
  const double most = sewn_length(front, front.edge("side")) - 40.0;
  design.under_underarm = most + 0.1;
  CHECK(top_refused_for(block, design, "the side keeps"));
  design.under_underarm = most - 0.1;
  CHECK_FALSE(top_refused_for(block, design, "the side keeps"));
}

TEST_CASE("A top edge keeps 4 cm off the bust point and 3 cm off the shoulder",
          "[kLeastUnderShoulder]") {
  const Pattern block = first_top_block();
  const Piece& front = block.piece("front");
  const Path& shoulder = front.edge("shoulder").path;
  const double way =
      distance(front.landmark("bust_point"), point_at_length(shoulder, 0.5 * length(shoulder)));
  TopEdgeDesign design = strapped(TopShape::Sweetheart, 8.0);
  design.closer = 0.0;
  const auto at = [&](double over) {
    design.over_bust_point = over;
    return top_refused_for(block, design, "off the shoulder");
  };
  CHECK(at(way - 29.9));
  CHECK_FALSE(at(way - 30.1));
  CHECK(at(39.9));
  CHECK_FALSE(at(40.1));
  design.over_bust_point = 55.0;
  design.over_bust_level = 35.0;
  const Problems remarks = draw_top_edge(block, design).remarks;
  CHECK(std::ranges::count(remarks, Severity::Warning, &Problem::severity) > 0);
}

TEST_CASE("A top edge that stands 1 cm over the armhole of the block is warned of") {
  const Pattern block = first_top_block();
  const Piece& front = block.piece("front");
  TopEdgeDesign design = strapless(TopShape::Sweetheart);
  design.closer = 0.0;
  int warned = 0, clear = 0;
  for (double share = 0.3; share < 0.85; share += 0.05) {
    design.top_share = share;
    const MovedDarts top = draw_top_edge(block, design);
    const Path outline = flat_outline(front);
    const Path edge = top.pattern.piece("front").edge("neckline").path;
    double over = 0.0;
    for (int i = 0; i <= 1000; ++i) {
      const Point point = point_at_length(edge, 0.001 * i * length(edge));
      if (!contains(outline, point, 0.01)) {
        over = std::fmax(over, nearest(outline, point).distance);
      }
    }
    if (std::abs(over - 10.0) < 0.1) continue;  // as near as it is looked for
    const bool told = std::ranges::any_of(top.remarks, [](const Problem& remark) {
      return remark.message.plain().find("cuts into the arm") != std::string::npos;
    });
    INFO(share << ": " << over);
    CHECK(told == (over > 10.0));
    ++(told ? warned : clear);
  }
  CAPTURE(warned, clear);
  CHECK(warned > 0);
  CHECK(clear > 0);
}

TEST_CASE("A top edge that is not straight falls to its centre", "[kLeastFall]") {
  const Pattern block = first_top_block();
  TopEdgeDesign design = strapless(TopShape::Sweetheart);
  design.closer = 0.0;
  design.over_bust_point = 90.0;
  const Piece& front = block.piece("front");
  const Point bust = front.landmark("bust_point");
  const Path& shoulder = front.edge("shoulder").path;
  const Vec way = unit(point_at_length(shoulder, 0.5 * length(shoulder)) - bust);
  const double level = 90.0 * way.y;
  design.over_bust_level = level - 14.9;
  CHECK(top_refused_for(block, design, "over its centre"));
  design.over_bust_level = level - 15.1;
  CHECK(top_refusal(block, design).code.empty());
}

TEST_CASE("Straps keep 3 cm off the centre", "[kLeastStrapOffCentre]") {
  const Pattern block = first_top_block();
  TopEdgeDesign design = strapped(TopShape::Curved, 8.0);
  const Piece front = draw_top_edge(block, design).pattern.piece("front");
  const double off = front.edge("neckline").path.start().x;
  design.back_nearer = off - 29.9;
  CHECK(top_refused_for(block, design, "off the centre"));
  design.back_nearer = off - 30.1;
  CHECK(top_refusal(block, design).code.empty());
}

TEST_CASE("Straps are 6 mm to 6 cm wide, and set on an end from 12 mm on",
          "[kLeastStrapWidth][kMostStrapWidth][kMostAdjust]") {
  const Pattern block = first_top_block();
  const auto refused = [&](double width) {
    return top_refused_for(block, strapped(TopShape::Curved, width), "a strap's width");
  };
  CHECK(refused(5.9));
  CHECK_FALSE(refused(6.1));
  CHECK_FALSE(refused(59.9));
  CHECK(refused(60.1));
  TopEdgeDesign design = strapped(TopShape::Curved);
  design.straps->adjust = 99.9;
  CHECK(top_refusal(block, design).code.empty());
  design.straps->adjust = 100.1;
  CHECK(top_refused_for(block, design, "to be tried on"));
  const auto has_end = [&](double width) {
    const Pattern top = draw_top_edge(block, strapped(TopShape::Curved, width)).pattern;
    return find_named(top.piece("back").edges, "strap_end") != nullptr;
  };
  CHECK_FALSE(has_end(11.9));
  CHECK(has_end(12.1));
}

TEST_CASE("What a top edge cannot do is refused") {
  const Pattern block = first_top_block();
  TopEdgeDesign twice = strapless(TopShape::Curved);
  twice.over_bust_level = 40.0;
  twice.centre_share = 0.3;
  CHECK(top_refused_for(block, twice, "at the centre is given twice"));
  twice = strapless(TopShape::Curved);
  twice.over_bust_point = 90.0;
  twice.top_share = 0.3;
  CHECK(top_refused_for(block, twice, "over the bust is given twice"));
  twice.shape = TopShape::Straight;
  twice.top_share.reset();
  CHECK(top_refused_for(block, twice, "one height in front"));
  TopEdgeDesign close = strapless(TopShape::Curved);
  close.closer = 20.1;
  CHECK(top_refused_for(block, close, "more draws in the chest"));
  const Pattern top = draw_top_edge(block, strapped(TopShape::Curved)).pattern;
  CHECK(top_refused_for(top, strapped(TopShape::Curved), "cut away already"));
  CHECK(refused_with([&] {
          return draw_neckline(top, {});
        }).message.find("cut away by a top edge") != std::string::npos);
  const Pattern whole = block_as_drafted(survey_people(1, 61).front());
  const Pattern panels = cut_into_panels(whole, {"front.shoulder", "front.waist", "", ""}).pattern;
  CHECK(top_refused_for(panels, strapless(TopShape::Curved), "cut into panels"));
  // A dart that is held back so far that its stitching ends over the edge.
  const Dart& shoulder = whole.piece("front").dart("shoulder");
  const Pattern held =
      set_dart_point(whole, {"front.shoulder", 0.5 * shoulder.leg() - 1.0}).pattern;
  CHECK(top_refused_for(held, strapless(TopShape::Curved), "cut off at its point"));
}

TEST_CASE("Darts and gathers in the way of a top edge are named") {
  const Pattern whole = block_as_drafted(survey_people(1, 61).front());
  const TopEdgeDesign usual = strapless(TopShape::Curved);
  // Where the back goes so deep that its waist dart points over it.
  TopEdgeDesign deep = usual;
  deep.back_depth = 90.0;
  CHECK(top_refused_for(whole, deep, "would reach over the top edge"));
  CHECK(top_refusal(whole, deep).hint.find("higher") != std::string::npos);
  const Pattern at_side = pivot(whole, {.dart = "front.shoulder", .to = "front.side:30mm"}).pattern;
  TopEdgeDesign low = usual;
  low.under_underarm = 30.0;
  CHECK(top_refused_for(at_side, low, "the dart side opens there"));
  const Pattern at_centre =
      pivot(whole, {.dart = "front.shoulder", .to = "front.centre_front"}).pattern;
  TopEdgeDesign level = usual;
  level.over_bust_level = 1.0;
  CHECK(top_refused_for(at_centre, level, "the dart centre_front opens there"));
  const Pattern at_neck = pivot(whole, {.dart = "front.shoulder", .to = "front.neck"}).pattern;
  const Pattern gathered = gather(at_neck, {.dart = "front.neck"}).pattern;
  CHECK(top_refused_for(gathered, usual, "gathers lie"));
}
