#include "blockwright/dart/fullness.hpp"

#include "blockwright/base/error.hpp"
#include "blockwright/check/check.hpp"
#include "blockwright/dart/pivot.hpp"
#include "dart/dart_measures.hpp"
#include "support/blocks.hpp"
#include "support/each_person.hpp"
#include "support/people.hpp"

#include <catch2/catch.hpp>

#include <cmath>
#include <limits>

using namespace blockwright;
using namespace blockwright_tests;

namespace {

template <class Move>
std::string refusal(Move&& move) {
  try {
    move();
  } catch (const InputError& error) {
    return to_text(error.problem());
  }
  return "";
}

}  // namespace

TEST_CASE("A gathered dart leaves the edge as long when drawn up, and longer as cut") {
  for (const Session& session : each_person(50, 61)) {
    const Pattern block = checked_block(session).block.pattern;
    for (const char* dart : each({"front.shoulder", "back.shoulder", "back.waist"})) {
      const std::string piece_name = std::string(dart).substr(0, std::string(dart).find('.'));
      const std::string dart_name = std::string(dart).substr(piece_name.size() + 1);
      const Piece& before = block.piece(piece_name);
      if (std::none_of(before.darts.begin(), before.darts.end(),
                       [&](const Dart& d) { return d.name == dart_name; })) {
        continue;
      }
      const Pattern after = gather(block, {dart, Fullness::Kind::Gathers, 60.0}).pattern;
      REQUIRE(errors_of(after) == "");
      const Piece& piece = after.piece(piece_name);
      const Edge& edge = piece.edge(before.dart(dart_name).edge);
      CHECK(piece.darts.size() == before.darts.size() - 1);
      REQUIRE(piece.fullness.size() == 1);
      CHECK(sewn_length(piece, edge) ==
            Approx(sewn_length(before, before.edge(edge.name))).margin(1e-9));
      CHECK(piece.fullness[0].taken_up() > 0.95 * before.dart(dart_name).intake());
      CHECK(piece.fullness[0].sewn <= 60.0 + 1e-9);
    }
  }
}

TEST_CASE("The gathered edge runs smoothly over the whole span") {
  const Pattern block = ordinary_block();
  const Pattern after = gather(block, {"front.shoulder", Fullness::Kind::Gathers, 60.0}).pattern;
  const Path& path = after.piece("front").edge("shoulder").path;
  for (std::size_t i = 0; i + 1 < path.curves().size(); ++i) {
    CAPTURE(i);
    const Angle turn =
        turn_between(tangent_at(path.curves()[i], 1.0), tangent_at(path.curves()[i + 1], 0.0));
    CHECK(std::abs(turn.degrees()) < 1e-6);
  }
}

TEST_CASE("The seam's other edge gets the same two notches") {
  const Pattern after =
      gather(ordinary_block(), {"front.shoulder", Fullness::Kind::Gathers, 60.0}).pattern;
  int mates = 0;
  for (const Notch& notch : after.piece("back").notches) mates += notch.edge == "shoulder" ? 1 : 0;
  CHECK(mates == 2);
  CHECK(errors_of(after) == "");
}

TEST_CASE("A notch within the gathers still meets its mate when they are drawn up evenly") {
  int within = 0;
  for (const Session& session : each_person(50, 67)) {
    const Pattern block = checked_block(session).block.pattern;
    const Pattern turned =
        pivot(block, {"front.shoulder", "front.side", 1.0, std::nullopt, std::nullopt}).pattern;
    const Pattern after = gather(turned, {"front.side", Fullness::Kind::Gathers, 100.0}).pattern;
    CHECK(errors_of(after) == "");
    const Piece& front = after.piece("front");
    for (const Notch& notch : front.notches) {
      if (notch.edge != "side" || notch.mate_piece != "back") continue;
      const Fullness& gathers = front.fullness.at(0);
      within += notch.along > gathers.from + 1.0 && notch.along < gathers.to - 1.0 ? 1 : 0;
    }
  }
  CHECK(within >= 25);
}

TEST_CASE("A notch between two slashes still meets its mate when the spread is gathered") {
  const Pattern block = ordinary_block();
  const double middle = 0.5 * length(block.piece("front").edge("side").path);
  for (const bool hinged : each({true, false})) {
    SpreadMove move{"front.side:" + std::to_string(middle / 10.0 - 1.0) + "cm", "front.waist:0.75"};
    move.by = 60.0;
    move.lines = 2;
    move.apart = 20.0;
    move.hinged = hinged;
    move.over = 60.0;
    CHECK(errors_of(slash_and_spread(block, move).pattern) == "");
  }
}

// 8 mm on a seam, 13 mm along an armhole: common practice, no source.
TEST_CASE("Only as much as cloth can hide becomes ease") {
  const Pattern block = ordinary_block();
  const std::string told = refusal([&] {
    gather(block, {"front.shoulder", Fullness::Kind::Ease, 80.0});
  });
  CHECK(told.find("[dart.ease]") != std::string::npos);
  CHECK(told.find("gather it") != std::string::npos);
  const double part = 6.0 / block.piece("front").dart("shoulder").intake();
  const Pattern less =
      pivot(block, {"front.shoulder", "front.side", 1.0 - part, std::nullopt, std::nullopt})
          .pattern;
  CHECK(refusal([&] { gather(less, {"front.shoulder", Fullness::Kind::Ease, 80.0}); }) == "");
}

TEST_CASE("A dart of next to nothing is neither gathered nor eased") {
  const Pattern parts =
      split(ordinary_block(), {"back.waist", {0.998, 0.002}, 20.0, DartGroup::Fanned}).pattern;
  CHECK(parts.piece("back").dart("waist_2").intake() < 0.1);
  for (const auto kind : each({Fullness::Kind::Gathers, Fullness::Kind::Ease})) {
    const std::string told = refusal([&] { gather(parts, {"back.waist_2", kind, 80.0}); });
    CHECK(told.find("[dart.part] back.waist_2") != std::string::npos);
    CHECK(told.find("too narrow to draw up") != std::string::npos);
  }
}

TEST_CASE("A hinged spread opens one edge by what is asked and leaves the hinge's alone") {
  const Pattern block = ordinary_block();
  for (const int lines : each({1, 3})) {
    SpreadMove move{"back.waist:0.15", "back.neck:0.5", 40.0, lines, 8.0, true, true, 60.0};
    const MovedDarts moved = slash_and_spread(block, move);
    REQUIRE(errors_of(moved.pattern) == "");
    const Piece &before = block.piece("back"), &after = moved.pattern.piece("back");
    REQUIRE(after.fullness.size() == 1);
    // Bridges are arcs, a little longer than the chords asked for.
    CHECK(after.fullness[0].taken_up() == Approx(40.0).margin(0.6));
    for (const Edge& edge : before.edges) {
      // The neckline, which hinges, is blended and may get a little longer.
      CHECK(sewn_length(after, after.edge(edge.name)) ==
            Approx(sewn_length(before, edge)).margin(edge.name == "neckline" ? 0.4 : 1e-6));
    }
    CHECK(apart(before.edge("centre_back").path, after.edge("centre_back").path) < 1e-9);
    CHECK(after.darts.size() == before.darts.size());
  }
}

TEST_CASE("A spread at both ends moves the outer part straight out") {
  const Pattern block = ordinary_block();
  SpreadMove move{"back.waist:0.15", "back.neck:0.5", 30.0, 1, 20.0, false, false, 80.0};
  const Pattern moved = slash_and_spread(block, move).pattern;
  const Piece &before = block.piece("back"), &after = moved.piece("back");
  const Vec by = after.landmark("side_waist_point") - before.landmark("side_waist_point");
  CHECK(norm(by) == Approx(30.0).margin(1e-9));
  CHECK(norm((after.landmark("shoulder_point") - before.landmark("shoulder_point")) - by) < 1e-9);
  CHECK(length(after.edge("waist").path) - length(before.edge("waist").path) > 29.0);
  CHECK(length(after.edge("neckline").path) - length(before.edge("neckline").path) > 27.0);
}

TEST_CASE("A slash never cuts a dart, and amounts have limits") {
  const Pattern block = ordinary_block();
  const auto told = [&](SpreadMove move) {
    return refusal([&] { slash_and_spread(block, move); });
  };
  SpreadMove across{"front.neck:0.4", "front.armhole:0.6"};
  CHECK(told(across).find("would cut the dart front.shoulder") != std::string::npos);
  SpreadMove much{"back.waist:0.15", "back.neck:0.5"};
  much.by = 900.0;
  CHECK(told(much).find("900 mm") != std::string::npos);
  CHECK(told(much).find("to 300 mm") != std::string::npos);
  much.by = 20.0;
  much.lines = 12;
  much.apart = 90.0;
  CHECK(told(much).find("no room") != std::string::npos);
}

TEST_CASE("A flare opens no edge that is sewn to another") {
  const Pattern block = ordinary_block();
  SpreadMove move{"front.side:0.5", "front.waist:0.75"};
  move.gathered = false;
  CHECK(refusal([&] {
          slash_and_spread(block, move);
        }).find("[dart.place] front.side:0.5: the side would be longer than the edge") !=
        std::string::npos);
  std::swap(move.from, move.to);
  CHECK(errors_of(slash_and_spread(block, move).pattern) == "");
  move.hinged = false;
  CHECK(refusal([&] { slash_and_spread(block, move); }).find("[dart.place] front.side:0.5") !=
        std::string::npos);
}

TEST_CASE("A seam that a slash is hinged on stays as long as the edge that it is sewn to") {
  SpreadMove move{"front.waist:0.8", "front.side:0.3"};
  move.by = 90.0;
  move.apart = 10.0;
  for (const int lines : each({1, 3})) {
    move.lines = lines;
    CHECK(errors_of(slash_and_spread(ordinary_block(), move).pattern) == "");
  }
}

TEST_CASE("A slash is not spread wider than it is long") {
  SpreadMove move{"front.side:0.8", "front.waist:0.9"};
  move.by = 120.0;
  const std::string told = refusal([&] { slash_and_spread(ordinary_block(), move); });
  CHECK(told.find("cannot be spread by 120 mm") != std::string::npos);
}

TEST_CASE("Gathers are made twice on one edge under names of their own; no dart opens in them") {
  SpreadMove first{"back.waist:0.08", "back.neck:0.3"};
  first.by = 10.0;
  first.over = 10.0;
  SpreadMove second = first;
  second.from = "back.waist:0.9";
  second.to = "back.armhole:0.4";
  const Pattern one = slash_and_spread(ordinary_block(), first).pattern;
  const Pattern two = slash_and_spread(one, second).pattern;
  CHECK(two.piece("back").fullness.size() == 2);
  CHECK(errors_of(two) == "");
  const Pattern gathered =
      gather(ordinary_block(), {"front.shoulder", Fullness::Kind::Gathers, 60.0}).pattern;
  const std::string told = refusal([&] {
    pivot(gathered, {"front.waist", "front.shoulder", 0.5, std::nullopt, std::nullopt});
  });
  CHECK(told.find("would open in the gathers") != std::string::npos);
}

TEST_CASE("Gathers keep their dart's name though the seam's other edge is gathered, too") {
  const Pattern front =
      gather(ordinary_block(), {"front.shoulder", Fullness::Kind::Gathers, 60.0}).pattern;
  const MovedDarts both = gather(front, {"back.shoulder", Fullness::Kind::Gathers, 60.0});
  REQUIRE(both.pattern.piece("back").fullness.size() == 1);
  CHECK(both.pattern.piece("back").fullness.front().name == "shoulder");
  CHECK(both.remarks.back().where == "back.shoulder");
  CHECK(errors_of(both.pattern) == "");
}

TEST_CASE("Ease beside ease shares the edge, and the edge keeps its sewn length") {
  Pattern pattern = ordinary_block();
  const double sewn = sewn_length(pattern.piece("front"), pattern.piece("front").edge("shoulder"));
  pattern =
      split(pattern, {"front.shoulder", {0.25, 0.25, 0.25, 0.25}, 18.0, DartGroup::Fanned}).pattern;
  for (const char* dart : {"front.shoulder_2", "front.shoulder_3", "front.shoulder_1"}) {
    pattern = gather(pattern, {dart, Fullness::Kind::Gathers, 300.0}).pattern;
  }
  const Piece& front = pattern.piece("front");
  REQUIRE(front.fullness.size() == 3);
  for (const Fullness& one : each(front.fullness)) {
    for (const Fullness& other : front.fullness) {
      if (one.name != other.name) CHECK((one.to < other.from + 1e-6 || other.to < one.from + 1e-6));
    }
  }
  CHECK(sewn_length(front, front.edge("shoulder")) == Approx(sewn).margin(1e-6));
  CHECK(errors_of(pattern) == "");
}

TEST_CASE("Lengths beyond all sense are refused in few words") {
  const Pattern block = ordinary_block();
  for (const double wild : {1e20, 1e300, -1e300, std::numeric_limits<double>::infinity()}) {
    SpreadMove wide{"front.waist:0.3", "front.side:0.5"};
    wide.by = wild;
    for (const std::string& text : {refusal([&] { slash_and_spread(block, wide); }), refusal([&] {
                                      gather(block, {"front.waist", Fullness::Kind::Gathers, wild});
                                    })}) {
      INFO(text);
      CHECK(text.find("[dart.place]") != std::string::npos);
      CHECK(text.size() < 300);
    }
  }
}

namespace {

/// The refusal of turning a bust dart, left so wide at its mouth, into ease or gathers.
std::string drawn_up(const std::string& place, double mouth, Fullness::Kind kind) {
  Pattern block = ordinary_block();
  if (place != "shoulder") {
    block = pivot(block, {"front.shoulder", "front." + place, 1.0, {}, {}}).pattern;
  }
  const Dart dart = block.piece("front").dart(place);
  PivotMove rest{"front." + place, place == "side" ? "front.shoulder" : "front.side"};
  rest.angle = dart.angle() - 2.0 * Angle::radians(std::asin(0.5 * mouth / dart.leg()));
  const Pattern left = pivot(block, rest).pattern;
  CHECK(left.piece("front").dart(place).intake() == Approx(mouth).margin(0.005));
  return refusal([&] { gather(left, {"front." + place, kind, 80.0}); });
}

}  // namespace

TEST_CASE("Ease takes 8 mm on a seam and 13 along an armhole, gathers 1 mm at least",
          "[kMostEase][kMostArmholeEase][kLeastGathered]") {
  // Common practice, no source; the 1 mm is ours.
  using enum Fullness::Kind;
  CHECK(drawn_up("shoulder", 7.98, Ease) == "");
  CHECK(drawn_up("shoulder", 8.02, Ease).find("8 mm is the most") != std::string::npos);
  CHECK(drawn_up("armhole", 12.98, Ease) == "");
  CHECK(drawn_up("armhole", 13.02, Ease).find("13 mm is the most") != std::string::npos);
  CHECK(drawn_up("shoulder", 1.02, Gathers) == "");
  CHECK(drawn_up("shoulder", 0.98, Gathers).find("too narrow to draw up") != std::string::npos);
}

TEST_CASE("A piece is slashed along 1 to 12 lines", "[kMostLines]") {
  const auto told = [](int lines) {
    SpreadMove move;
    move.from = "front.waist";
    move.to = "front.shoulder";
    move.lines = lines;
    return refusal([&] { slash_and_spread(ordinary_block(), move); });
  };
  CHECK(told(12).find("slashes are out of range") == std::string::npos);
  CHECK(told(13).find("slashes are out of range") != std::string::npos);
  CHECK(told(1).find("slashes are out of range") == std::string::npos);
  CHECK(told(0).find("slashes are out of range") != std::string::npos);
}
