#include "blockwright/dart/truing.hpp"

#include "blockwright/base/error.hpp"
#include "blockwright/dart/fullness.hpp"
#include "blockwright/dart/pivot.hpp"
#include "support/blocks.hpp"
#include "support/dart_over_slit.hpp"
#include "support/each_person.hpp"
#include "support/people.hpp"

#include <catch2/catch.hpp>

#include <algorithm>
#include <cmath>

using namespace blockwright;
using blockwright_tests::dart_over_slit;

namespace {

/// How much the seam turns where a dart is closed along its stitched legs, in degrees.
double turn_across(const Piece& piece, const Dart& dart) {
  const Edge& edge = piece.edge(dart.edge);
  const auto stretches = sewn_stretches(piece, edge);
  for (std::size_t i = 0; i + 1 < stretches.size(); ++i) {
    if (stretches[i].empty() || distance(stretches[i].end(), dart.legs[0]) > 1e-6) continue;
    if (stretches[i + 1].empty()) return 0.0;
    const Angle closing = turn_between(dart.legs[0] - dart.point, dart.legs[1] - dart.point);
    const Vec after = rotated(start_tangent(stretches[i + 1]), -closing);
    return std::abs(turn_between(end_tangent(stretches[i]), after).degrees());
  }
  return 0.0;
}

std::vector<Pattern> with_darts_everywhere(const Pattern& block) {
  std::vector<Pattern> patterns = {block};
  for (const Piece& piece : block.pieces) {
    for (const DartPosition& position : piece.kind->dart_positions) {
      const PivotMove move{piece.name + ".shoulder", piece.name + "." + std::string(position.name),
                           0.7, std::nullopt, std::nullopt};
      try {
        patterns.push_back(pivot(block, move).pattern);
      } catch (const InputError&) {  // such as the place where it is
      }
    }
  }
  return patterns;
}

}  // namespace

TEST_CASE("Closed along their stitching, trued darts leave seams smooth within a degree") {
  int darts = 0;
  for (const Session& session : each_person(60, 31)) {
    for (const Pattern& pattern : with_darts_everywhere(checked_block(session).block.pattern)) {
      const TruedPattern trued = true_darts(pattern);
      for (const Piece& piece : trued.pattern.pieces) {
        REQUIRE_FALSE(find_problem(piece));
        for (const Dart& dart : piece.darts) {
          INFO(piece.name << " " << dart.name);
          CHECK(turn_across(piece, dart) < 1e-5);
          CHECK(std::abs(distance(dart.point, dart.legs[0]) - distance(dart.point, dart.legs[1])) <
                1e-9);
          ++darts;
        }
      }
    }
  }
  CHECK(darts > 2500);
}

TEST_CASE(
    "Blending moves a line by less than 2 mm; seams keep their length to 0.05, hems to 0.6 a "
    "dart") {
  // Limits of our own. A waist has up to three darts, and each is blended.
  std::vector<double> moved;
  for (const Session& session : each_person(60, 32)) {
    for (const Pattern& pattern : with_darts_everywhere(checked_block(session).block.pattern)) {
      const TruedPattern trued = true_darts(pattern);
      for (const BlendedEdge& blended : trued.blended) {
        const Angle angle = pattern.piece(blended.piece).dart(blended.dart).angle();
        INFO(blended.piece << " " << blended.edge << " " << angle.degrees());
        CHECK(blended.moved < (angle > kWidestDart ? 3.0 : 2.0));
        moved.push_back(blended.moved);
      }
      for (const Piece& piece : pattern.pieces) {
        const Piece& now = trued.pattern.piece(piece.name);
        for (const Edge& edge : piece.edges) {
          INFO(piece.name << " " << edge.name);
          const double by = sewn_length(now, now.edge(edge.name)) - sewn_length(piece, edge);
          const auto darts = std::ranges::count(piece.darts, edge.name, &Dart::edge);
          const double hem = 0.6 * std::fmax(1.0, static_cast<double>(darts));
          CHECK(std::abs(by) < (edge.role == EdgeRole::Seam ? 0.05 : hem));
        }
      }
    }
  }
  REQUIRE(moved.size() > 1000);
  CHECK(median_of(moved) < 0.3);
}

// Stitched from its point a dart of 47 degrees on a leg of 9 cm closes by 70 and more.
TEST_CASE("All of the bust dart in the waist: trued, the waist is smooth and the legs are equal") {
  int wide = 0;
  double most = 0.0;
  for (const Session& session : each_person(300, 31)) {
    const Pattern block = checked_block(session).block.pattern;
    const Pattern one = pivot(block, {"front.shoulder", "front.waist"}, 250.0).pattern;
    const TruedPattern trued = true_darts(one);
    const Piece& front = trued.pattern.piece("front");
    REQUIRE_FALSE(find_problem(front));
    const Dart& dart = front.dart("waist");
    CHECK(turn_across(front, dart) < 1e-6);
    CHECK(std::abs(distance(dart.point, dart.legs[0]) - distance(dart.point, dart.legs[1])) < 1e-9);
    for (const BlendedEdge& blended : trued.blended) most = std::fmax(most, blended.moved);
    wide += dart.angle().degrees() > 35.0 ? 1 : 0;
  }
  CHECK(wide > 30);
  CHECK(most < 3.0);
}

// Common practice, no source: fold the dart, cut the seam through, unfold.
TEST_CASE("Both sides of a trued mouth are mirror images in the dart's centre line") {
  const Pattern block = checked_block(survey_people(1, 33).front()).block.pattern;
  const Pattern moved =
      pivot(block, {"front.shoulder", "front.neck", 1.0, std::nullopt, std::nullopt}).pattern;
  const Pattern trued = true_darts(moved).pattern;
  const Piece& piece = trued.piece("front");
  const Dart& dart = piece.dart("neck");
  const Path& edge = piece.edge("neckline").path;
  const double in = nearest(edge, dart.legs[0]).along, out = nearest(edge, dart.legs[1]).along;
  const Placement mirror =
      Placement::mirror_in(dart.point, unit(midpoint(dart.legs[0], dart.legs[1]) - dart.point));
  for (int i = 0; i <= 20; ++i) {
    CAPTURE(i);
    const double share = i / 20.0;
    const Point here = point_at_length(edge, in + share * (out - in));
    const Point there = point_at_length(edge, out - share * (out - in));
    CHECK(distance(mirror(here), there) < 1e-6);
  }
  // The fold stands on the centre line, and the mouth leaves the inner leg as the seam arrives.
  CHECK(distance(mirror(dart.peak), dart.peak) < 1e-9);
  const Vec leg = unit(dart.inner_leg() - dart.point);
  const double at_inner = dart.pressed_to == Leg::First ? in : out;
  const double step = dart.pressed_to == Leg::First ? 1e-4 : -1e-4;
  const Vec seam = unit(point_at_length(edge, at_inner - step) - dart.inner_leg());
  const Vec mouth = unit(point_at_length(edge, at_inner + step) - dart.inner_leg());
  CHECK(dot(seam, leg) == Approx(dot(mouth, leg)).margin(1e-3));
}

TEST_CASE("A dart stitched to its apex on a drafted edge needs hardly any blending") {
  Pattern block = checked_block(survey_people(1, 34).front()).block.pattern;
  for (Piece& piece : block.pieces) {
    for (Dart& dart : piece.darts) dart.point = dart.apex;
  }
  for (const BlendedEdge& blended : each(true_darts(block).blended)) {
    CHECK(std::abs(blended.kink.degrees()) < 0.3);
    CHECK(blended.moved < 0.03);
  }
}

TEST_CASE("Gathers that reach the end of a seam stay on it when the dart beside them is trued") {
  int trued = 0;
  for (const Session& session : each_person(30, 31)) {
    const Pattern block = checked_block(session).block.pattern;
    try {
      const PivotMove move{"front.waist", "front.shoulder:0.07", 1.0, {}, {}};
      const Pattern moved = pivot(block, move).pattern;
      const Pattern pattern = gather(moved, {moved.piece("front").darts[1].edge == "shoulder"
                                                 ? "front." + moved.piece("front").darts[1].name
                                                 : "front.shoulder",
                                             Fullness::Kind::Gathers, 400.0})
                                  .pattern;
      for (const Piece& piece : true_darts(pattern).pattern.pieces)
        CHECK_FALSE(find_problem(piece));
      ++trued;
    } catch (const InputError&) {  // more than one dart can carry
    }
  }
  CHECK(trued > 5);
}

// Opened without a hinge on a short stretch, the edge bows out; one cubic over the blending's whole
// reach was 8 mm shorter, and the gathers with it.
TEST_CASE("Truing a dart beside bowed gathers keeps the length of the edge") {
  int trued = 0;
  for (const Session& session : each_person(12, 31)) {
    const CheckedBlock checked = checked_block(session);
    if (!errors_of(checked.report).empty()) continue;
    try {
      const SplitMove move{"back.waist", {0.384, 0.41, 0.061, 0.145}, 11.2, DartGroup::Parallel};
      Pattern pattern = split(checked.block.pattern, move).pattern;
      pattern = gather(pattern, {"back.waist_3", Fullness::Kind::Gathers, 43.7}).pattern;
      pattern = gather(pattern, {"back.waist_2", Fullness::Kind::Gathers, 109.9}).pattern;
      const Piece before = pattern.piece("back"), after = true_darts(before);
      CHECK_FALSE(find_problem(after));
      CHECK(length(after.edge("waist").path) ==
            Approx(length(before.edge("waist").path)).margin(0.3));
      ++trued;
    } catch (const InputError&) {  // a waist dart too small to be split so
    }
  }
  CHECK(trued > 5);  // the shortened gathers of most would not hold together
}

TEST_CASE("A piece is judged as it stands and as it is printed") {
  CHECK_FALSE(find_problem_on_paper(dart_over_slit(5.0)));
  CHECK_FALSE(find_problem(dart_over_slit(3.0)));
  const auto problem = find_problem_on_paper(dart_over_slit(3.0));
  REQUIRE(problem);
  CHECK_THAT(problem->message.plain(), Catch::Contains("crosses itself"));
  CHECK(find_problem_on_paper(dart_over_slit(-1.0)));  // crosses before it is trued
}

TEST_CASE("A notch on an edge with darts stays at its place when they are trued") {
  Pattern block = checked_block(survey_people(1, 7).front()).block.pattern;
  const auto place_of = [](const Piece& piece, const Notch& notch) {
    return point_at_length(piece.edge(notch.edge).path, notch.along);
  };
  for (Piece& piece : block.pieces) {
    for (const char* edge : {"waist", "shoulder"}) {
      const double whole = length(piece.edge(edge).path);
      piece.notches.push_back({std::string(edge) + "_first", edge, 12.0, 1, "", ""});
      piece.notches.push_back({std::string(edge) + "_last", edge, whole - 12.0, 1, "", ""});
    }
  }
  const Pattern trued = true_darts(block).pattern;
  for (const Piece& piece : block.pieces) {
    for (const Notch& notch : piece.notches) {
      INFO(piece.name << " " << notch.name);
      const Piece& is = trued.piece(piece.name);
      const auto now = std::ranges::find(is.notches, notch.name, &Notch::name);
      REQUIRE(now != is.notches.end());
      // Blending moves a line by up to 1.5 mm; the mouth drawn as folded is longer by more.
      CHECK(distance(place_of(is, *now), place_of(piece, notch)) < 1.6);
    }
  }
}
