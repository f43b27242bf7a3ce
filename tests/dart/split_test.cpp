#include "blockwright/base/error.hpp"
#include "blockwright/dart/pivot.hpp"
#include "dart/dart_measures.hpp"
#include "support/blocks.hpp"
#include "support/each_person.hpp"
#include "support/people.hpp"

#include <catch2/catch.hpp>

#include <algorithm>
#include <cmath>
#include <limits>
#include <string>
#include <utility>
#include <vector>

using namespace blockwright;
using namespace blockwright_tests;

namespace {

SplitMove split_of(const std::string& dart, std::vector<double> shares, DartGroup group,
                   double spacing = 20.0) {
  return {dart, std::move(shares), spacing, group};
}

std::string refused_split(const SplitMove& move, const Pattern& pattern = ordinary_block()) {
  try {
    split(pattern, move);
  } catch (const InputError& error) {
    return to_text(error.problem());
  }
  return "";
}

Vec axis_of(const Dart& dart) { return unit(midpoint(dart.legs[0], dart.legs[1]) - dart.apex); }

double lengths_differ(const Piece& a, const Piece& b) {
  double most = 0.0;
  for (const Edge& edge : a.edges) {
    most = std::fmax(most, std::abs(sewn_length(a, edge) - sewn_length(b, b.edge(edge.name))));
  }
  return most;
}

}  // namespace

TEST_CASE("A fanned split shares the angle out and keeps the apex") {
  const Pattern block = ordinary_block();
  const Piece& before = block.piece("front");
  for (const std::vector<double>& shares :
       each({std::vector{0.5, 0.5}, std::vector{2.0 / 3.0, 1.0 / 3.0},
             std::vector{0.25, 0.5, 0.25}})) {
    const Pattern after = split(block, split_of("front.waist", shares, DartGroup::Fanned)).pattern;
    const Piece& piece = after.piece("front");
    for (std::size_t i = 0; i < shares.size(); ++i) {
      const Dart& dart = piece.dart("waist_" + std::to_string(i + 1));
      CHECK(dart.angle().radians() ==
            Approx(shares[i] * before.dart("waist").angle().radians()).epsilon(1e-9));
      CHECK(distance(dart.apex, before.dart("waist").apex) < 1e-9);
    }
    CHECK(total_angle(piece) == Approx(total_angle(before)).margin(1e-9));
    CHECK(lengths_differ(before, piece) < 1e-9);
    CHECK(closed_area(piece) == Approx(closed_area(before)).margin(1e-6));
  }
}

TEST_CASE("The darts of a fan stand at the spacing asked for") {
  const Pattern after =
      split(ordinary_block(), split_of("front.waist", {0.5, 0.5}, DartGroup::Fanned, 30.0)).pattern;
  const Piece& piece = after.piece("front");
  const Edge& waist = piece.edge("waist");
  const auto place = [&](const char* name) {
    return closed_from_cut(piece, waist, nearest(waist.path, piece.dart(name).legs[1]).along);
  };
  CHECK(place("waist_2") - place("waist_1") == Approx(30.0).margin(1e-6));
}

TEST_CASE("Parallel darts stand about as far apart on the closed edge as asked") {
  for (const Session& session : each_person(30, 9)) {
    const Pattern block = checked_block(session).block.pattern;
    if (block.piece("front").darts.size() < 2) continue;
    const Pattern after =
        split(block, split_of("front.waist", {0.5, 0.5}, DartGroup::Parallel, 20.0)).pattern;
    const Piece& piece = after.piece("front");
    const Edge& waist = piece.edge("waist");
    const auto place = [&](const char* name) {
      return closed_from_cut(piece, waist, nearest(waist.path, piece.dart(name).legs[1]).along);
    };
    CHECK(place("waist_2") - place("waist_1") == Approx(20.0).margin(2.0));
  }
}

TEST_CASE("Parallel darts stand parallel, turn together as the one did, and keep the outline") {
  for (const Session& session : each_person(50, 8)) {
    const Pattern block = checked_block(session).block.pattern;
    const Piece& before = block.piece("front");
    if (before.darts.size() < 2) continue;
    for (const std::vector<double>& shares :
         each({std::vector{0.5, 0.5}, std::vector{0.4, 0.2, 0.4}})) {
      const Pattern after =
          split(block, split_of("front.waist", shares, DartGroup::Parallel, 15.0)).pattern;
      const Piece& piece = after.piece("front");
      const Vec axis = axis_of(before.dart("waist"));
      double sum = 0.0;
      for (std::size_t i = 0; i < shares.size(); ++i) {
        const Dart& dart = piece.dart("waist_" + std::to_string(i + 1));
        CHECK(std::abs(cross(axis_of(dart), axis)) < 1e-9);
        CHECK(std::abs(distance(dart.apex, dart.legs[0]) - distance(dart.apex, dart.legs[1])) <
              1e-9);
        CHECK(distance(dart.apex, before.dart("waist").apex) < 60.0);
        sum += dart.angle().radians();
      }
      CHECK(sum == Approx(before.dart("waist").angle().radians()).margin(1e-9));
      CHECK(lengths_differ(before, piece) < 1e-6);
      for (const char* edge : each({"side", "armhole", "shoulder", "neckline", "centre_front"})) {
        CHECK(apart(before.edge(edge).path, piece.edge(edge).path) < 1e-9);
      }
    }
  }
}

TEST_CASE("Darts that were split are one again when merged") {
  for (const DartGroup group : each({DartGroup::Fanned, DartGroup::Parallel})) {
    const Pattern block = ordinary_block();
    const Pattern two = split(block, split_of("front.waist", {0.5, 0.5}, group)).pattern;
    const Pattern one = merge(two, {"front.waist_1", "front.waist_2"}).pattern;
    const Piece &before = block.piece("front"), &after = one.piece("front");
    const Dart& dart = after.dart("waist_2");
    CHECK(dart.angle().radians() == Approx(before.dart("waist").angle().radians()).margin(1e-9));
    CHECK(distance(dart.apex, before.dart("waist").apex) < 1e-8);
    CHECK(after.darts.size() == before.darts.size());
    CHECK(lengths_differ(before, after) < 1e-6);
    CHECK(closed_area(after) == Approx(closed_area(before)).margin(1e-3));
  }
}

TEST_CASE("Parallel darts become one in the place of the one that takes the other, either way") {
  const Pattern block = ordinary_block();
  const Pattern two =
      split(block, split_of("front.waist", {0.3, 0.7}, DartGroup::Parallel, 25.0)).pattern;
  const Piece &apart_ones = two.piece("front"), &before = block.piece("front");
  for (const auto& [gives, takes] : {std::pair{"waist_1", "waist_2"}, {"waist_2", "waist_1"}}) {
    INFO(gives << " into " << takes);
    const std::string piece = "front.";
    const Piece after = merge(two, {piece + gives, piece + takes}).pattern.piece("front");
    CHECK(after.darts.size() == before.darts.size());
    const Dart &one = after.dart(takes), &other = apart_ones.dart(takes);
    CHECK(one.angle().radians() == Approx(before.dart("waist").angle().radians()).margin(1e-9));
    CHECK(std::fmin(distance(one.legs[0], other.legs[0]), distance(one.legs[1], other.legs[1])) <
          1e-9);
    CHECK(lengths_differ(before, after) < 1e-6);
    CHECK_FALSE(find_problem(after));
  }
}

TEST_CASE(
    "Notches keep their place on the sewn edge when a dart between them becomes parallel ones") {
  // Her back waist has two darts: the other one lies to either side of the one that is split.
  for (const char* name : {"back.waist", "back.waist_outer"}) {
    INFO(name);
    Pattern block = ordinary_block();
    Piece& back = *std::ranges::find(block.pieces, "back", &Piece::name);
    const double whole = length(back.edge("waist").path);
    for (int i = 1; i < 24; ++i) {
      back.notches.push_back({"mark" + std::to_string(i), "waist", i * whole / 24.0, 1, "", ""});
    }
    const auto places = [](const Piece& piece) {
      std::vector<double> closed;
      for (const Notch& notch : piece.notches) {
        if (notch.edge != "waist") continue;
        closed.push_back(closed_from_cut(piece, piece.edge("waist"), notch.along));
      }
      return closed;
    };
    const SplitMove move = split_of(name, {0.5, 0.5}, DartGroup::Parallel, 12.0);
    const std::vector<double> was = places(back);
    const std::vector<double> is = places(split(block, move).pattern.piece("back"));
    REQUIRE(is.size() == was.size());
    for (std::size_t i = 0; i < was.size(); ++i) {
      CAPTURE(i);
      CHECK(is[i] == Approx(was[i]).margin(1e-6));
    }
  }
}

TEST_CASE("Two darts of one apex merge wherever they stand; of two apexes only side by side") {
  const Pattern block = ordinary_block();
  const Pattern one = merge(block, {"front.shoulder", "front.waist"}).pattern;
  CHECK(one.piece("front").darts.size() == 1);
  CHECK(one.piece("front").dart("waist").angle().radians() ==
        Approx(total_angle(block.piece("front"))).margin(1e-9));
  CHECK_THROWS_AS(merge(block, {"back.shoulder", "back.waist"}), InputError);
  CHECK_THROWS_AS(merge(block, {"front.shoulder", "front.shoulder"}), InputError);
}

TEST_CASE("A split that cannot be is refused with what can be") {
  CHECK(
      refused_split(split_of("front.waist", {0.5, 0.4}, DartGroup::Fanned)).find("add up to 0.9") !=
      std::string::npos);
  CHECK(refused_split(split_of("front.waist", {1.5, -0.5}, DartGroup::Fanned)).find("dart.part") !=
        std::string::npos);
  CHECK(refused_split(split_of("front.waist", {0.5, 0.5}, DartGroup::Fanned, 2.0))
            .find("10 mm to 80 mm") != std::string::npos);
  const std::string room =
      refused_split(split_of("front.shoulder", {0.2, 0.2, 0.2, 0.2, 0.2}, DartGroup::Fanned, 79.0));
  CHECK(room.find("no room") != std::string::npos);
  CHECK(room.find("set them") != std::string::npos);
}

// The outermost of three darts may reach over a hollow armhole.
TEST_CASE("A split never sets a dart across the armhole") {
  int refused = 0, whole = 0;
  for (const Session& session : each_person(12, 31)) {
    const Pattern block = checked_block(session).block.pattern;
    for (const double spacing : each({15.0, 30.0, 37.0, 38.7, 40.0})) {
      for (const double first : each({0.05, 0.33, 0.9})) {
        const double rest = 1.0 - first;
        const SplitMove move = split_of("back.shoulder", {first, 0.5 * rest, 0.5 * rest},
                                        DartGroup::Parallel, spacing);
        const std::string told = refused_split(move, block);
        refused += told.find("the armhole would cut through the dart shoulder_") < told.size();
        if (!told.empty()) continue;
        CHECK_FALSE(find_cut_dart(split(block, move).pattern.piece("back")));
        ++whole;
      }
    }
  }
  CHECK(refused > 0);
  CHECK(whole > refused);
}

TEST_CASE("Parts never take the name of another dart") {
  Pattern pattern =
      pivot(ordinary_block(), {"front.shoulder", "front.waist:0.2", 0.3, {}, {}}).pattern;
  REQUIRE_NOTHROW(pattern.piece("front").dart("waist_2"));
  pattern = split(pattern, split_of("front.waist", {0.5, 0.5}, DartGroup::Fanned, 12.0)).pattern;
  std::vector<std::string> names;
  for (const Dart& dart : pattern.piece("front").darts) names.push_back(dart.name);
  std::sort(names.begin(), names.end());
  CHECK(std::unique(names.begin(), names.end()) == names.end());
  CHECK(names.size() == 4);
}

TEST_CASE("Shares and spacings beyond all sense are refused in few words") {
  const auto text_of = [](std::vector<double> shares, double spacing) {
    return refused_split(split_of("front.shoulder", std::move(shares), DartGroup::Fanned, spacing));
  };
  for (const double wild : {1e20, 1e300, -1e300, std::numeric_limits<double>::infinity()}) {
    for (const std::string& text : {text_of({wild, wild}, 20.0), text_of({wild, 1.0 - wild}, 20.0),
                                    text_of({0.5, 0.5}, wild)}) {
      INFO(text);
      CHECK(text.find("[dart.p") != std::string::npos);
      CHECK(text.size() < 300);
    }
  }
}

TEST_CASE("No dart is left or made that is next to nothing") {
  const auto split_off = [](double part) {
    return refused_split(split_of("front.waist", {part, 1.0 - part}, DartGroup::Fanned));
  };
  CHECK(split_off(1e-12).find("too narrow to sew") != std::string::npos);
  CHECK(split_off(1e-5).find("too narrow to sew") != std::string::npos);
  const Pattern block = ordinary_block();
  for (const double part : each({1e-5, 1.0 - 1e-5})) {
    CHECK_THROWS_WITH(pivot(block, {"front.waist", "front.side", part, {}, {}}),
                      Catch::Contains("too narrow to sew"));
  }
}

TEST_CASE("Parts of a dart never open over the mouth of a neighbour: refused, or whole") {
  int refused = 0, whole = 0;
  for (const std::string beside : {"0.1", "0.25", "0.4", "0.7", "0.85"}) {
    const Pattern block =
        pivot(ordinary_block(), {"front.waist", "front.shoulder:" + beside, 0.3, {}, {}}).pattern;
    for (const double spacing : {12.0, 20.0, 45.0, 70.0}) {
      for (const double narrow : {0.001, 0.02, 0.3}) {
        for (const DartGroup group : {DartGroup::Fanned, DartGroup::Parallel}) {
          INFO("beside " << beside << ", parts " << spacing << " mm apart, a share of " << narrow);
          const SplitMove move =
              split_of("front.shoulder", {narrow, 0.4, 0.6 - narrow}, group, spacing);
          try {
            const Pattern after = split(block, move).pattern;
            CHECK_FALSE(find_problem(after.piece("front")));
            ++whole;
          } catch (const InputError& error) {
            CHECK(error.problem().code.rfind("dart.", 0) == 0);
            ++refused;
          }
        }
      }
    }
  }
  CHECK(refused > 0);
  CHECK(whole > 0);
}

TEST_CASE("A dart is split into 2 to 6", "[kMostDarts]") {
  const auto told = [](std::size_t count) {
    return refused_split(split_of("front.waist",
                                  std::vector(count, 1.0 / static_cast<double>(count)),
                                  DartGroup::Fanned, 10.0));
  };
  CHECK(told(6).find("must be 2 to 6") == std::string::npos);
  CHECK(told(7).find("must be 2 to 6") != std::string::npos);
  CHECK(told(1).find("must be 2 to 6") != std::string::npos);
}

TEST_CASE("A dart has a hundredth of a degree at least", "[kLeastDart]") {
  const double whole = ordinary_block().piece("front").dart("waist").angle().degrees();
  const auto split_off = [&](double degrees) {
    return refused_split(
        split_of("front.waist", {degrees / whole, 1.0 - degrees / whole}, DartGroup::Fanned));
  };
  CHECK(split_off(0.0099).find("too narrow to sew") != std::string::npos);
  CHECK(split_off(0.0101).find("too narrow to sew") == std::string::npos);
}
