// Necklines of garments.
#include "blockwright/dart/drawn_neckline.hpp"

#include "blockwright/block/kinds.hpp"
#include "blockwright/check/check.hpp"
#include "blockwright/dart/one_dart.hpp"
#include "blockwright/dart/panels.hpp"
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

using enum NeckShape;
constexpr NeckShape kShapes[] = {Round, Scoop, Boat, V, Square, Sweetheart};

NecklineDesign shaped(NeckShape shape) {
  NecklineDesign design;
  design.shape = shape;
  return design;
}

/// A round neckline without anything taken in.
NecklineDesign flat_round(double from_neck, double front_depth, double back_depth) {
  NecklineDesign design;
  design.from_neck = from_neck;
  design.front_depth = front_depth;
  design.back_depth = back_depth;
  design.closer = 0.0;
  return design;
}

/// Blocks whose shoulders are free of darts, as a wide neckline wants them.
std::vector<Pattern> free_shoulders(int count) {
  std::vector<Pattern> all;
  for (const Session& session : each_person(count, 52)) {
    Pattern block = checked_block(session).block.pattern;
    block = one_dart(block, {"front.waist"}).pattern;
    if (find_named(block.piece("back").darts, "shoulder") != nullptr) {
      block = pivot(block, {.dart = "back.shoulder", .to = "back.armhole"}).pattern;
    }
    all.push_back(block);
  }
  return all;
}

RefusedStep neck_refusal(const Pattern& pattern, const NecklineDesign& design) {
  return refused_with([&] { return draw_neckline(pattern, design); });
}
bool neck_refused_for(const Pattern& pattern, const NecklineDesign& design,
                      const std::string& words) {
  return neck_refusal(pattern, design).message.find(words) != std::string::npos;
}

double shoulder_of(const Piece& piece) { return sewn_length(piece, piece.edge("shoulder")); }
const Path& neckline_of(const Piece& piece) { return piece.edge("neckline").path; }
Point centre_neck(const Piece& piece) { return neckline_of(piece).end(); }

/// Between two edges that meet, on the cloth.
double cloth_angle(const Path& before, const Path& after) {
  return 180.0 - turn_between(end_tangent(before), start_tangent(after)).degrees();
}

}  // namespace

TEST_CASE("A neckline of every shape can be drawn on every block, and is fair") {
  for (const Pattern& block : each(free_shoulders(60), "free_shoulders(60)")) {
    for (const NeckShape shape : kShapes) {
      INFO(static_cast<int>(shape));
      const Pattern drawn = draw_neckline(block, shaped(shape)).pattern;
      for (const Problem& problem : check_pattern(drawn)) FAIL_CHECK(to_text(problem));
      double over_shoulder = 0.0;
      for (const char* name : {"front", "back"}) {
        INFO(name);
        const Piece &piece = drawn.piece(name), &was = block.piece(name);
        CHECK(shoulder_of(was) - shoulder_of(piece) ==
              Approx(shoulder_of(block.piece("front")) - shoulder_of(drawn.piece("front")))
                  .margin(1e-6));
        const bool meant_corner =
            name == std::string("front") && (shape == V || shape == Sweetheart);
        const double at_centre =
            cloth_angle(neckline_of(piece), part_of(piece, BlockEdge::Centre).path);
        if (!meant_corner) CHECK(at_centre == Approx(90.0).margin(0.5));
        over_shoulder += cloth_angle(piece.edge("shoulder").path, neckline_of(piece));
        CHECK(least_radius(neckline_of(piece)) > 15.0);
        if (shape != Sweetheart) CHECK(inflections({neckline_of(piece)}) == 0);
      }
      // A boat comes to a point over the shoulder.
      if (shape != Boat) CHECK(over_shoulder == Approx(180.0).margin(1.0));
      if (shape == Boat) CHECK(over_shoulder > 180.0);
    }
  }
}

TEST_CASE("A neckline begins and ends where it is asked to") {
  for (const Pattern& block : each(free_shoulders(20), "free_shoulders(20)")) {
    const Pattern drawn = draw_neckline(block, flat_round(20.0, 50.0, 15.0)).pattern;
    for (const char* name : {"front", "back"}) {
      const Piece &piece = drawn.piece(name), &was = block.piece(name);
      CHECK(shoulder_of(was) - shoulder_of(piece) == Approx(20.0).margin(1e-6));
      CHECK(distance(centre_neck(was), centre_neck(piece)) ==
            Approx(name == std::string("front") ? 50.0 : 15.0).margin(1e-6));
      for (const char* kept : {"waist", "side", "armhole"}) {
        CHECK(piece.edge(kept).path == was.edge(kept).path);
      }
    }
  }
}

TEST_CASE("Width and depth in proportion to the person's shoulder and bust level") {
  const Pattern block = free_shoulders(1).front();
  const Piece& front = block.piece("front");
  const double to_bust = centre_neck(front).y - front.landmark("bust_point").y;
  const auto drawn = [&](const NecklineDesign& design) {
    return neckline_of(draw_neckline(block, design).pattern.piece("front"));
  };
  NecklineDesign shares = flat_round(0.0, 0.0, 15.0), lengths = shares, over_bust = shares;
  shares.from_neck.reset();
  shares.front_depth.reset();
  shares.shoulder_share = 0.25;
  shares.depth_share = 0.5;
  lengths.from_neck = 0.25 * shoulder_of(front);
  lengths.front_depth = 0.5 * to_bust;
  over_bust.from_neck = lengths.from_neck;
  over_bust.front_depth.reset();
  over_bust.over_bust_point = 0.5 * to_bust;
  CHECK(apart(drawn(shares), drawn(lengths)) < 1e-6);
  CHECK(apart(drawn(over_bust), drawn(lengths)) < 1e-6);
}

TEST_CASE("What a front neck edge becomes shorter goes into the widest dart of the bust point") {
  for (const Pattern& block : each(free_shoulders(30), "free_shoulders(30)")) {
    for (const NeckShape shape : kShapes) {
      INFO(static_cast<int>(shape));
      NecklineDesign flat = shaped(shape), close = flat;
      flat.closer = 0.0;
      close.closer = 8.0;
      const MovedDarts now = draw_neckline(block, close);
      const Pattern was = draw_neckline(block, flat).pattern;
      const Piece &front = now.pattern.piece("front"), &before = was.piece("front");
      CHECK(length(neckline_of(before)) - length(neckline_of(front)) == Approx(8.0).margin(0.05));
      CHECK(total_angle(front) > total_angle(before) + 0.01);
      for (const char* kept : {"waist", "side", "armhole", "shoulder"}) {
        CHECK(sewn_length(front, front.edge(kept)) ==
              Approx(sewn_length(before, before.edge(kept))).margin(0.001));
      }
      CHECK(centre_neck(front) == centre_neck(before));
      REQUIRE_FALSE(now.remarks.empty());
      CHECK(now.remarks.front().message.plain().find("8 mm shorter; the dart waist") !=
            std::string::npos);
      if (shape == Round) continue;
      CHECK(length(neckline_of(draw_neckline(block, shaped(shape)).pattern.piece("front"))) <=
            length(neckline_of(before)));
    }
  }
}

TEST_CASE(
    "A shallow round neckline is drawn flat, a deep one shorter: nothing to 3 cm, 5 mm from 6") {
  const Pattern block = free_shoulders(1).front();
  const auto shorter = [&](double depth) {
    NecklineDesign usual = flat_round(20.0, depth, 15.0);
    const double flat = length(neckline_of(draw_neckline(block, usual).pattern.piece("front")));
    usual.closer.reset();
    return flat - length(neckline_of(draw_neckline(block, usual).pattern.piece("front")));
  };
  CHECK(shorter(29.0) == Approx(0.0).margin(1e-6));
  CHECK(shorter(45.0) == Approx(2.5).margin(0.05));
  CHECK(shorter(80.0) == Approx(5.0).margin(0.05));
}

TEST_CASE("Both fronts of a body whose sides differ get the neckline, as images of each other") {
  Pattern block = free_shoulders(1).front();
  Piece left = block.piece("front"), right = mirrored(left);
  left.name = "front_left";
  right.name = "front_right";
  for (Piece* piece : {&left, &right}) piece->cut_on = CutOn::One;
  block.pieces = {left, right, block.piece("back")};
  const Pattern drawn = draw_neckline(block, shaped(Scoop)).pattern;
  const Path image = neckline_of(mirrored(drawn.piece("front_right")));
  CHECK(apart(image, neckline_of(drawn.piece("front_left"))) < 1e-6);
  CHECK(find_problem(drawn.piece("front_right")) == std::nullopt);
}

TEST_CASE("A shoulder keeps 2.5 cm", "[kLeastShoulderLeft]") {
  const Pattern block = free_shoulders(1).front();
  const double most =
      std::fmin(shoulder_of(block.piece("front")), shoulder_of(block.piece("back"))) - 25.0;
  CHECK(neck_refused_for(block, flat_round(most + 0.1, 60.0, 60.0), "a shoulder keeps"));
  CHECK(neck_refusal(block, flat_round(most - 0.1, 60.0, 60.0)).code.empty());
  CHECK(neck_refused_for(block, flat_round(-0.1, 60.0, 60.0), "a shoulder keeps"));
}

TEST_CASE("A neckline keeps 4 cm off the bust point and is warned of within 6 cm",
          "[kLeastOffBust][kUsualOffBust]") {
  const Pattern block = free_shoulders(1).front();
  // A square neckline whose corner comes down on the bust point.
  const auto design = [](double over_bust) {
    NecklineDesign square = shaped(Square);
    square.shoulder_share = 0.6;
    square.over_bust_point = over_bust;
    square.closer = 0.0;
    return square;
  };
  const auto off = [&](double over_bust) {
    const Piece front = draw_neckline(block, design(over_bust)).pattern.piece("front");
    return nearest(neckline_of(front), front.landmark("bust_point")).distance;
  };
  const auto warned = [&](double over_bust) {
    const Problems remarks = draw_neckline(block, design(over_bust)).remarks;
    return std::ranges::count(remarks, Severity::Warning, &Problem::severity) > 0;
  };
  // Lower and lower until each limit is passed.
  int usual = 0, near = 0, refused = 0;
  for (double level = 100.0; level > 0.0; level -= 0.5) {
    const RefusedStep refusal = neck_refusal(block, design(level));
    if (!refusal.code.empty()) {
      INFO(refusal.message);
      CHECK(refusal.message.find("off it") != std::string::npos);
      ++refused;
      continue;
    }
    CHECK(off(level) >= 40.0);
    CHECK(warned(level) == (off(level) < 60.0));
    ++(off(level) < 60.0 ? near : usual);
  }
  CAPTURE(usual, near, refused);
  CHECK(usual > 0);
  CHECK(near > 0);
  CHECK(refused > 0);
}

TEST_CASE("The centre keeps 6 cm", "[kLeastCentreLeft]") {
  const Pattern block = free_shoulders(1).front();
  const Piece& back = block.piece("back");
  const double most = length(part_of(back, BlockEdge::Centre).path) - 60.0;
  CHECK(neck_refused_for(block, flat_round(20.0, 20.0, most + 0.1), "the centre keeps"));
  CHECK_FALSE(neck_refused_for(block, flat_round(20.0, 20.0, most - 0.1), "the centre keeps"));
}

TEST_CASE("A wide neckline is deep enough for a neck to pass", "[kLeastNeckHollow]") {
  const Pattern block = free_shoulders(1).front();
  const Piece& back = block.piece("back");
  const double wide = 0.6 * shoulder_of(back);
  const Point shoulder =
      point_at_length(back.edge("shoulder").path, length(back.edge("shoulder").path) - wide);
  const double least = 8.0 - (shoulder.y - centre_neck(back).y);
  REQUIRE(least > 0.0);
  CHECK(neck_refused_for(block, flat_round(wide, 60.0, least - 0.1), "over its centre"));
  CHECK(neck_refusal(block, flat_round(wide, 60.0, least + 0.1)).code.empty());
}

TEST_CASE("An edge is drawn at most 2 cm shorter", "[kMostCloser]") {
  const Pattern block = free_shoulders(1).front();
  NecklineDesign design = shaped(Scoop);
  design.closer = 20.1;
  CHECK(neck_refused_for(block, design, "more draws in the chest"));
  design.closer = 19.9;
  CHECK(neck_refusal(block, design).code.empty());
}

TEST_CASE("What a neckline cannot do is refused") {
  const Pattern block = free_shoulders(1).front();
  NecklineDesign twice = flat_round(20.0, 20.0, 10.0);
  twice.shoulder_share = 0.3;
  CHECK(neck_refused_for(block, twice, "its width is given twice"));
  twice = flat_round(20.0, 20.0, 10.0);
  twice.over_bust_point = 60.0;
  CHECK(neck_refused_for(block, twice, "its depth is given twice"));
  // A dart on the shoulder or on the neckline is in the way.
  const Pattern drafted = checked_block(survey_people(1, 52).front()).block.pattern;
  CHECK(neck_refused_for(drafted, shaped(Boat), "the dart shoulder opens there"));
  const Pattern neck_dart = pivot(drafted, {.dart = "front.shoulder", .to = "front.neck"}).pattern;
  CHECK(neck_refused_for(neck_dart, shaped(Round), "the dart neck opens on its neckline"));
  const Pattern panels =
      cut_into_panels(drafted, {"front.shoulder", "front.waist", "", ""}).pattern;
  CHECK(neck_refused_for(panels, shaped(Round), "cut into panels"));
}
