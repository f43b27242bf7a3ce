// Armholes of garments.
#include "blockwright/dart/drawn_armhole.hpp"

#include "blockwright/block/armhole.hpp"
#include "blockwright/block/kinds.hpp"
#include "blockwright/check/check.hpp"
#include "blockwright/dart/drawn_neckline.hpp"
#include "blockwright/dart/folded.hpp"
#include "blockwright/dart/fullness.hpp"
#include "blockwright/dart/one_dart.hpp"
#include "blockwright/dart/panels.hpp"
#include "blockwright/dart/top_edge.hpp"
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

const char* const kBothPieces[] = {"front", "back"};

/// The blocks of people of the survey's proportions.
const std::vector<Pattern>& people_of_armholes() {
  static const std::vector<Pattern> all = [] {
    std::vector<Pattern> made;
    for (const Session& session : each_person(std::max(40, people(300)), 1988)) {
      made.push_back(checked_block(session).block.pattern);
    }
    return made;
  }();
  return all;
}

const Pattern& one_block() { return people_of_armholes()[9]; }

ArmholeDesign cut_in(double shoulder_in, double raise = 0.0) {
  ArmholeDesign design;
  design.shoulder_in = shoulder_in;
  design.raise = raise;
  return design;
}

RefusedStep armhole_refusal(const Pattern& pattern, const ArmholeDesign& design) {
  return refused_with([&] { return draw_armhole(pattern, design); });
}
bool armhole_refused_for(const Pattern& pattern, const ArmholeDesign& design,
                         const std::string& words) {
  return armhole_refusal(pattern, design).message.find(words) != std::string::npos;
}

const Path& armhole_of(const Piece& piece) { return piece.edge("armhole").path; }
double sewn(const Piece& piece, const char* edge) { return sewn_length(piece, piece.edge(edge)); }

/// The armhole of a piece, its darts folded as they are stitched.
Path sewn_armhole(const Piece& piece) { return Folded(piece, "armhole").edge(); }

/// Between two edges that meet, on the cloth.
double angle_on_cloth(const Path& before, const Path& after) {
  return 180.0 - turn_between(end_tangent(before), start_tangent(after)).degrees();
}

/// What the armholes of front and back make where the side seam, or the shoulder, joins them.
double over_side(const Pattern& pattern) {
  double sum = 0.0;
  for (const char* name : kBothPieces) {
    const Piece& piece = pattern.piece(name);
    sum += angle_on_cloth(piece.edge("side").path, armhole_of(piece));
  }
  return sum;
}
double over_shoulder(const Pattern& pattern) {
  double sum = 0.0;
  for (const char* name : kBothPieces) {
    const Piece& piece = pattern.piece(name);
    sum += angle_on_cloth(armhole_of(piece), piece.edge("shoulder").path);
  }
  return sum;
}

}  // namespace

TEST_CASE("An armhole drawn with nothing cut is the block's") {
  for (const Pattern& block : each(people_of_armholes(), "people_of_armholes()")) {
    const Pattern drawn = draw_armhole(block, {}).pattern;
    for (const char* name : kBothPieces) {
      CHECK(apart(armhole_of(drawn.piece(name)), armhole_of(block.piece(name))) < 1e-6);
    }
  }
}

TEST_CASE("An armhole cut in on 300 people is round, and front and back still meet") {
  int refused = 0, tried = 0;
  for (const Pattern& block : each(people_of_armholes(), "people_of_armholes()")) {
    for (const ArmholeDesign& design : {cut_in(15.0), cut_in(30.0, 10.0), cut_in(45.0, 20.0)}) {
      CAPTURE(design.shoulder_in, design.raise);
      ++tried;
      if (!armhole_refusal(block, design).code.empty()) {
        ++refused;
        continue;
      }
      const Pattern drawn = draw_armhole(block, design).pattern;
      for (const Problem& problem : check_pattern(drawn)) {
        if (problem.severity == Severity::Error) FAIL_CHECK(to_text(problem));
      }
      for (const char* name : kBothPieces) {
        const Piece &piece = drawn.piece(name), &was = block.piece(name);
        CAPTURE(name);
        CHECK(sewn(was, "shoulder") - sewn(piece, "shoulder") ==
              Approx(design.shoulder_in).margin(1e-6));
        CHECK(sewn(piece, "side") - sewn(was, "side") == Approx(design.raise).margin(1e-6));
        CHECK(least_radius(armhole_of(piece)) >=
              std::fmin(15.0, least_radius(armhole_of(was))) - 1e-6);
        CHECK(inflections({armhole_of(piece)}) <= 1);
        for (const char* kept : {"waist", "neckline"}) {
          CHECK(apart(piece.edge(kept).path, was.edge(kept).path) < 1e-9);
        }
        CHECK(distance(piece.landmark("shoulder_point"), armhole_of(piece).end()) < 1e-9);
        CHECK(distance(piece.landmark("underarm_point"), armhole_of(piece).start()) < 1e-9);
        CHECK(nearest(armhole_of(piece), across_point(piece)).distance < 1e-6);
      }
      CHECK(over_side(drawn) == Approx(over_side(block)).margin(0.01));
      CHECK(over_shoulder(drawn) == Approx(over_shoulder(block)).margin(0.01));
    }
  }
  CAPTURE(refused, tried);
  CHECK(refused <= tried / 50);
}

TEST_CASE("The across points come in by what is asked, or with the shoulder point") {
  for (const Pattern& block : each(people_of_armholes(), "people_of_armholes()")) {
    ArmholeDesign design = cut_in(20.0);
    design.front_in = 18.0;
    design.back_in = 12.0;
    if (!armhole_refusal(block, design).code.empty()) continue;
    const Pattern drawn = draw_armhole(block, design).pattern;
    const auto in = [&](const Pattern& now, const char* name) {
      return distance(across_point(block.piece(name)), across_point(now.piece(name)));
    };
    CHECK(in(drawn, "front") == Approx(18.0).margin(1e-6));
    CHECK(in(drawn, "back") == Approx(12.0).margin(1e-6));
    // Behind, the shoulder point stays as far outside as corrections leave it; the front comes in
    // by no less.
    const Pattern usual = draw_armhole(block, cut_in(20.0)).pattern;
    const Piece& back = usual.piece("back");
    const double outside = armhole_of(back).end().x - across_point(back).x;
    const double was =
        armhole_of(block.piece("back")).end().x - across_point(block.piece("back")).x;
    CHECK(outside >= std::fmin(was, kLeastAcrossInside) - 1e-6);
    CHECK(in(usual, "front") >= in(usual, "back") - 1e-6);
  }
}

TEST_CASE("An armhole with a dart on it is drawn across the dart as it is sewn") {
  for (const Pattern& block : each(people_of_armholes(), "people_of_armholes()")) {
    const MovedDarts moved = pivot(block, {.dart = "front.shoulder", .to = "front.armhole"});
    if (!armhole_refusal(moved.pattern, cut_in(15.0, 10.0)).code.empty()) continue;
    const Pattern drawn = draw_armhole(moved.pattern, cut_in(15.0, 10.0)).pattern;
    const Piece &piece = drawn.piece("front"), &was = moved.pattern.piece("front");
    const Dart &dart = piece.dart("armhole"), &dart_was = was.dart("armhole");
    CHECK(dart.apex == dart_was.apex);
    CHECK(distance(dart.point, dart_was.point) < 1e-9);
    CHECK(distance(dart.legs[0], dart.point) == Approx(distance(dart.legs[1], dart.point)));
    CHECK(sewn(piece, "side") - sewn(was, "side") == Approx(10.0).margin(1e-6));
    CHECK(least_radius(sewn_armhole(piece)) >= 14.99);
    for (const Problem& problem : check_pattern(drawn)) {
      if (problem.severity == Severity::Error) FAIL_CHECK(to_text(problem));
    }
  }
}

TEST_CASE("With nothing cut, an armhole with a dart on it stays where it was") {
  for (const Pattern& block : each(people_of_armholes(), "people_of_armholes()")) {
    const Pattern moved = pivot(block, {.dart = "front.shoulder", .to = "front.armhole"}).pattern;
    const Pattern drawn = draw_armhole(moved, {}).pattern;
    // Stitched to its point a dart is a little wider than to its apex.
    CHECK(apart(sewn_armhole(drawn.piece("front")), sewn_armhole(moved.piece("front"))) < 2.0);
  }
}

// A wedge of 8 mm at the front armhole is about 5 degrees at the bust point.
TEST_CASE("What a front armhole edge becomes shorter goes into the widest dart of the bust") {
  for (const Pattern& block : each(people_of_armholes(), "people_of_armholes()")) {
    const ArmholeDesign flat = cut_in(10.0);
    ArmholeDesign close = flat;
    close.close = 8.0;
    if (!armhole_refusal(block, close).code.empty()) continue;
    const Pattern was = draw_armhole(block, flat).pattern, now = draw_armhole(block, close).pattern;
    const Piece &piece = now.piece("front"), &before = was.piece("front");
    CHECK(length(armhole_of(before)) - length(armhole_of(piece)) == Approx(8.0).margin(0.01));
    CHECK(total_angle(piece) > total_angle(before));
    CHECK(total_angle(piece) < total_angle(before) + 0.2);
    for (const char* kept : {"waist", "side", "neckline", "shoulder"}) {
      CHECK(sewn(piece, kept) == Approx(sewn(before, kept)).margin(0.001));
    }
    CHECK(flat_outline(now.piece("back")) == flat_outline(was.piece("back")));
  }
}

TEST_CASE("Armhole notches keep their place on the cloth") {
  const Pattern drawn = draw_armhole(one_block(), cut_in(10.0)).pattern;
  for (const char* name : kBothPieces) {
    const Piece &piece = drawn.piece(name), &was = one_block().piece(name);
    const auto at = [](const Piece& of) {
      return point_at_length(armhole_of(of), find_named(of.notches, "armhole")->along);
    };
    CHECK(distance(at(piece), at(was)) < 8.0);
    CHECK(distance(at(piece), at(was)) == Approx(nearest(armhole_of(piece), at(was)).distance));
  }
}

TEST_CASE("Both halves of a body whose sides differ get the armhole, as images of each other") {
  Pattern block = one_block();
  Piece left = block.piece("front"), right = mirrored(left);
  left.name = "front_left";
  right.name = "front_right";
  for (Piece* piece : {&left, &right}) piece->cut_on = CutOn::One;
  block.pieces = {left, right, block.piece("back")};
  const MovedDarts drawn = draw_armhole(block, cut_in(15.0, 10.0));
  const Path image = armhole_of(mirrored(drawn.pattern.piece("front_right")));
  CHECK(apart(image, armhole_of(drawn.pattern.piece("front_left"))) < 1e-6);
  CHECK(find_problem(drawn.pattern.piece("front_right")) == std::nullopt);
  CHECK(std::ranges::count_if(drawn.remarks, [](const Problem& problem) {
          return problem.message.plain().find("together") != std::string::npos;
        }) == 2);
}

TEST_CASE("It is said how long both armholes are now") {
  const MovedDarts drawn = draw_armhole(one_block(), cut_in(15.0));
  const double front = sewn(drawn.pattern.piece("front"), "armhole");
  const double back = sewn(drawn.pattern.piece("back"), "armhole");
  const Wording words = "its armhole is now " + Length::mm(front) + " long, the back's " +
                        Length::mm(back) + ", together " + Length::mm(front + back);
  REQUIRE(drawn.remarks.size() == 1);
  CHECK(drawn.remarks.front().message == words);
}

TEST_CASE("A shoulder that an armhole cuts keeps 2.5 cm", "[kLeastShoulderLeft]") {
  Pattern block = pivot(one_block(), {.dart = "front.shoulder", .to = "front.side"}).pattern;
  if (find_named(block.piece("back").darts, "shoulder") != nullptr) {
    block = pivot(block, {.dart = "back.shoulder", .to = "back.armhole"}).pattern;
  }
  const double most =
      std::fmin(sewn(block.piece("front"), "shoulder"), sewn(block.piece("back"), "shoulder")) -
      25.0;
  CHECK(armhole_refused_for(block, cut_in(most + 0.1), "a shoulder keeps"));
  CHECK_FALSE(armhole_refused_for(block, cut_in(most - 0.1), "a shoulder keeps"));
  CHECK(armhole_refused_for(block, cut_in(-0.1), "a shoulder keeps"));
}

TEST_CASE("An underarm is raised by at most 2 cm", "[kMostUnderarmRaise]") {
  CHECK(armhole_refused_for(one_block(), cut_in(0.0, 20.1), "more cuts in under the arm"));
  CHECK(armhole_refusal(one_block(), cut_in(0.0, 19.9)).code.empty());
  CHECK(armhole_refused_for(one_block(), cut_in(0.0, -0.1), "more cuts in under the arm"));
}

TEST_CASE("An across point comes in by at most 8 cm", "[kMostAcrossIn]") {
  for (const auto key : {&ArmholeDesign::front_in, &ArmholeDesign::back_in}) {
    ArmholeDesign design = cut_in(40.0);
    design.*key = 80.1;
    CHECK(armhole_refused_for(one_block(), design, "more is a halter"));
    design.*key = 79.9;
    CHECK_FALSE(armhole_refused_for(one_block(), design, "more is a halter"));
  }
}

TEST_CASE("An armhole edge is drawn at most 1.5 cm shorter", "[kMostArmholeClose]") {
  ArmholeDesign design;
  design.close = 15.1;
  CHECK(armhole_refused_for(one_block(), design, "more draws in the chest"));
  design.close = 14.9;
  CHECK_FALSE(armhole_refused_for(one_block(), design, "more draws in the chest"));
}

TEST_CASE("An armhole keeps 4 cm off the bust point", "[kLeastOffBust]") {
  const Path line = armhole_of(draw_armhole(one_block(), cut_in(10.0)).pattern.piece("front"));
  const double middle = 0.4 * length(line);
  const auto with_bust_point = [&](double off) {
    Pattern block = one_block();
    Piece& front = *find_named(block.pieces, "front");
    find_named(front.landmarks, "bust_point")->at =
        point_at_length(line, middle) + off * left_of(tangent_at_length(line, middle));
    return block;
  };
  CHECK(armhole_refused_for(with_bust_point(39.9), cut_in(10.0), "past the bust point"));
  CHECK(armhole_refusal(with_bust_point(40.1), cut_in(10.0)).code.empty());
}

TEST_CASE("An armhole that would turn within 15 mm is refused with what can be, and that can be",
          "[kLeastArmholeRadius]") {
  int sharp = 0, told = 0;
  for (const Pattern& block : each(people_of_armholes(), "people_of_armholes()")) {
    for (const double shoulder_in : {0.0, 50.0}) {
      for (const double in : {0.0, 20.0, 75.0}) {
        ArmholeDesign design = cut_in(shoulder_in);
        design.back_in = design.front_in = in;
        const RefusedStep refusal = armhole_refusal(block, design);
        if (refusal.code.empty()) {
          const Pattern drawn = draw_armhole(block, design).pattern;
          for (const char* name : kBothPieces) {
            CHECK(least_radius(armhole_of(drawn.piece(name))) >= 15.0);
          }
          continue;
        }
        if (refusal.message.find("would turn within") == std::string::npos) continue;
        ++sharp;
        for (const std::string before : {"can come in by up to ", "can come in by "}) {
          const std::size_t at = refusal.hint.find(before);
          if (at == std::string::npos) continue;
          ++told;
          CAPTURE(refusal.message, refusal.hint);
          const double can_be = std::stod(refusal.hint.substr(at + before.size()));
          const bool front = refusal.hint.find("across front") != std::string::npos;
          (front ? design.front_in : design.back_in) = can_be;
          const RefusedStep again = armhole_refusal(block, design);
          CAPTURE(again.message, again.hint);
          const std::string of = front ? "across front" : "across back";
          CHECK((again.code.empty() || again.hint.find(of) == std::string::npos));
          break;
        }
      }
    }
  }
  CAPTURE(sharp, told);
  CHECK(sharp > 0);
  CHECK(told > 0);
}

TEST_CASE("A top without straps has no armhole to draw, which is said") {
  TopEdgeDesign design;
  design.shape = TopShape::Straight;
  const Pattern darts = one_dart(ordinary_block(), {"front.waist"}, 150.0).pattern;
  const Pattern top = draw_top_edge(darts, design).pattern;
  CHECK(armhole_refused_for(top, cut_in(10.0), "it has no armhole"));
}

TEST_CASE("What an armhole cannot do is refused") {
  const Pattern& block = one_block();
  const Pattern panels = cut_into_panels(block, {"front.shoulder", "front.waist", "", ""}).pattern;
  CHECK(armhole_refused_for(panels, cut_in(10.0), "cut into panels"));
  const Pattern dart = pivot(block, {.dart = "front.shoulder", .to = "front.armhole"}).pattern;
  ArmholeDesign close;
  close.close = 5.0;
  CHECK(armhole_refused_for(dart, close, "the dart armhole opens on its armhole"));
  CHECK(armhole_refused_for(block, cut_in(70.0), "opens there: move it first"));
  const Pattern gathered = gather(dart, {"front.armhole", Fullness::Kind::Gathers, 60.0}).pattern;
  CHECK(armhole_refused_for(gathered, cut_in(10.0), "is gathered"));
}
