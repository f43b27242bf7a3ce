// All darts of one point made one.
#include "blockwright/dart/one_dart.hpp"

#include "blockwright/base/error.hpp"
#include "blockwright/block/kinds.hpp"
#include "blockwright/dart/panels.hpp"
#include "blockwright/dart/truing.hpp"
#include "dart/dart_measures.hpp"
#include "support/blocks.hpp"
#include "support/each_person.hpp"

#include <catch2/catch.hpp>

#include <algorithm>

using namespace blockwright;
using namespace blockwright_tests;

namespace {

Pattern drafted(const Session& session) { return checked_block(session).block.pattern; }

const Problem* remark(const MovedDarts& moved, const char* code) {
  return first_where(moved.remarks, [&](const Problem& p) { return p.code == code; });
}

bool has_dart(const Piece& piece, const char* name) {
  return find_named(piece.darts, name) != nullptr;
}

std::string refusal_of(const Pattern& pattern, const char* into) {
  try {
    (void)one_dart(pattern, {into});
  } catch (const InputError& error) {
    return error.problem().code;
  }
  return "";
}

}  // namespace

TEST_CASE("All darts of a front go into one waist dart, of anybody") {
  int second = 0, wide = 0;
  for (const Session& session : each_person(300, 5)) {
    const Pattern block = drafted(session);
    const Piece& before = block.piece("front");
    const MovedDarts one = one_dart(block, {"front.waist"});
    const Piece& front = one.pattern.piece("front");
    REQUIRE(front.darts.size() == 1);
    const Dart& dart = front.dart("waist");
    CHECK(dart.edge == "waist");
    CHECK(std::abs(total_angle(front) - total_angle(before)) < 1e-9);
    CHECK(std::abs(distance(dart.apex, dart.legs[0]) - distance(dart.apex, dart.legs[1])) < 1e-9);
    for (const Edge& edge : before.edges) {
      INFO(edge.name);
      CHECK(std::abs(sewn_length(front, front.edge(edge.name)) - sewn_length(before, edge)) < 1e-9);
    }
    CHECK_FALSE(find_problem_on_paper(front));
    CHECK(flat_outline(one.pattern.piece("back")) == flat_outline(block.piece("back")));
    const auto said = [&](const char* code) {
      return std::ranges::count(one.remarks, code, &Problem::code);
    };
    CHECK(said("dart.wide") == (remark(one, "dart.wide") != nullptr ? 1 : 0));
    second += has_dart(before, "waist_outer") ? 1 : 0;
    wide += dart.angle() > kWidestDart ? 1 : 0;
  }
  CHECK(second > 30);
  CHECK(wide > 30);
}

TEST_CASE("A waist without a dart about the bust point gets the one dart") {
  for (const Session& session : each_person(20, 5)) {
    const Pattern block = drafted(session);
    const Pattern moved = pivot(block, {"front.waist", "front.shoulder"}).pattern;
    REQUIRE_FALSE(has_dart(moved.piece("front"), "waist"));
    const Piece front = one_dart(moved, {"front.waist"}).pattern.piece("front");
    REQUIRE(front.darts.size() == 1);
    CHECK(std::abs(total_angle(front) - total_angle(block.piece("front"))) < 1e-9);
  }
}

// From memory of handbooks: a dart beside another aims within 15 to 25 mm of the bust point.
TEST_CASE("A waist dart that took up a second one is warned of over 25 mm off the bust point",
          "[kMostOffBust]") {
  int near = 0, far = 0;
  for (const Session& session : each_person(200, 5)) {
    const MovedDarts one = one_dart(drafted(session), {"front.waist"});
    const Piece& front = one.pattern.piece("front");
    const double off = distance(front.dart("waist").apex, front.landmark("bust_point"));
    const Problem* said = remark(one, "dart.off_bust");
    CHECK((said != nullptr) == (off > 25.0));
    if (said != nullptr) CHECK(said->severity == Severity::Warning);
    if (off > 15.0) (off > 25.0 ? far : near) += 1;
  }
  CHECK(near > 5);
  CHECK(far > 5);
}

TEST_CASE("All darts about the bust point open as one at a place that had none") {
  for (const Session& session : each_person(20, 5)) {
    const Pattern block = drafted(session);
    const Piece& before = block.piece("front");
    const Piece front = one_dart(block, {"front.neck:0.5"}).pattern.piece("front");
    CHECK(has_dart(front, "neck"));
    CHECK_FALSE(has_dart(front, "shoulder"));
    CHECK_FALSE(has_dart(front, "waist"));
    CHECK(has_dart(front, "waist_outer") == has_dart(before, "waist_outer"));
    CHECK(angles_by_apex(front).size() == angles_by_apex(before).size());
  }
}

TEST_CASE("On a back the waist darts become one, and the shoulder dart stays") {
  int several = 0;
  for (const Session& session : each_person(40, 5)) {
    const Pattern block = drafted(session);
    const Piece& before = block.piece("back");
    if (!has_dart(before, "waist")) continue;
    const MovedDarts one = one_dart(block, {"back.waist"});
    const Piece& back = one.pattern.piece("back");
    REQUIRE(back.darts.size() == 2);
    CHECK(back.dart("shoulder").legs == before.dart("shoulder").legs);
    CHECK(std::abs(total_angle(back) - total_angle(before)) < 1e-9);
    CHECK(remark(one, "dart.off_bust") == nullptr);
    several += before.darts.size() > 2 ? 1 : 0;
    // Nothing is left to do.
    const Piece again = one_dart(one.pattern, {"back.waist"}).pattern.piece("back");
    CHECK(flat_outline(again) == flat_outline(back));
    CHECK(again.darts.size() == 2);
  }
  CHECK(several > 10);
}

TEST_CASE("On a panel darts no longer move") {
  int second = 0;
  for (const Session& session : each_person(20, 5)) {
    const Pattern block = drafted(session);
    if (!has_dart(block.piece("front"), "waist_outer")) continue;
    ++second;
    const PanelSeam princess{"front.shoulder", "front.waist", "", ""};
    const Pattern panels = cut_into_panels(block, princess).pattern;
    CHECK(refusal_of(panels, "side_front.waist_outer") == "dart.unknown");
    CHECK_FALSE(remark(one_dart(block, {"front.waist_outer"}), "dart.off_bust"));
  }
  CHECK(second > 3);
}

TEST_CASE("One dart of all is refused where there is no such place, or no dart to move there") {
  Pattern block = drafted(survey_people(1, 7).front());
  CHECK(refusal_of(block, "front.hem") == "dart.unknown");
  CHECK(refusal_of(block, "front.side:1") == "dart.place");
  CHECK(refusal_of(block, "waist") == "dart.unknown");
  const Pattern yoked = cut_into_panels(pivot(block, {"front.shoulder", "front.armhole"}).pattern,
                                        {"front.armhole", "front.centre_front", "", ""})
                            .pattern;
  CHECK(refusal_of(yoked, "front_yoke.neck") == "dart.unknown");
  for (Piece& piece : block.pieces) piece.darts.clear();
  CHECK(refusal_of(block, "front.side") == "dart.unknown");
}
