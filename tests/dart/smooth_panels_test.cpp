#include "blockwright/base/error.hpp"
#include "blockwright/check/check.hpp"
#include "blockwright/dart/panels.hpp"
#include "blockwright/dart/pivot.hpp"
#include "dart/dart_measures.hpp"
#include "support/blocks.hpp"
#include "support/each_person.hpp"
#include "support/people.hpp"

#include <catch2/catch.hpp>

#include <algorithm>
#include <cmath>
#include <optional>
#include <string>

using namespace blockwright;
using namespace blockwright_tests;

namespace {

/// A piece cut along a smooth seam, before and after.
struct CutSmooth {
  Piece whole, centre, side;
  PanelWalk walk;
  Pattern pattern;

  [[nodiscard]] const Path& edge_of(const Piece& panel) const { return panel.edge(walk.edge).path; }
};

struct SeamName {
  std::string piece, upper;
};

CutSmooth cut_smooth(const Pattern& block, const SeamName& name,
                     std::optional<double> beside = {}) {
  const std::string from = name.piece + "." + name.upper;
  const bool moved = name.upper != "shoulder";
  const Pattern ready = moved ? pivot(block, {name.piece + ".shoulder", from}).pattern : block;
  const Panels cut = cut_into_panels(ready, {from, name.piece + ".waist", "", "", beside});
  return {ready.piece(name.piece), cut.pattern.piece(cut.walk.centre_panel),
          cut.pattern.piece(cut.walk.side_panel), cut.walk, cut.pattern};
}

Point apex_mark_of(const Piece& whole) {
  return whole.landmark(whole.name == "front" ? "bust_point" : "blade_point");
}

/// The darts of the piece all together, in degrees.
double degrees_of(const Piece& whole) { return total_angle(whole) * 180.0 / std::acos(-1.0); }

Pattern usual_block() { return checked_block(survey_people(1, 7).front()).block.pattern; }

double notch_place(const Piece& panel, const std::string& name) {
  const auto it = std::ranges::find(panel.notches, name, &Notch::name);
  REQUIRE(it != panel.notches.end());
  return it->along;
}

std::string refused(const Pattern& block, const SeamName& name, double beside) {
  try {
    cut_smooth(block, name, beside);
  } catch (const InputError& error) {
    return error.problem().code;
  }
  return "";
}

const SeamName kSmoothSeams[] = {
    {"front", "shoulder"}, {"front", "armhole"}, {"back", "shoulder"}, {"back", "armhole"}};

}  // namespace

TEST_CASE("Smooth panel seams of 300 people: made, without corners, no dart left on the waist") {
  for (const Session& session : each_person(people(300), 81)) {
    const Pattern block = checked_block(session).block.pattern;
    for (const SeamName& name : kSmoothSeams) {
      INFO(name.piece << " " << name.upper);
      const CutSmooth cut = cut_smooth(block, name);
      REQUIRE(errors_of(cut.pattern) == "");
      CHECK(cut.centre.darts.empty());
      CHECK(cut.side.darts.empty());
      CHECK(sharpest_corner(cut.edge_of(cut.centre)) < 1e-6);
      CHECK(sharpest_corner(cut.edge_of(cut.side)) < 1e-6);
    }
  }
}

TEST_CASE("Smooth panel seams of 300 people bend by no less than 20 mm, and change sides twice") {
  int sharp = 0, wavy = 0, lines = 0;
  for (const Session& session : each_person(people(300), 81)) {
    const Pattern block = checked_block(session).block.pattern;
    for (const SeamName& name : kSmoothSeams) {
      INFO(name.piece << " " << name.upper);
      const CutSmooth cut = cut_smooth(block, name);
      for (const Piece* panel : {&cut.centre, &cut.side}) {
        const Path& edge = cut.edge_of(*panel);
        // Sharper only where the darts are so wide, and end so near to each other, that a level
        // would else change by more than half a millimetre.
        CHECK(least_radius(edge) > 13.0);
        if (least_radius(edge) < 20.0) ++sharp;
        const int changes = inflections({edge});
        CHECK(changes <= (name.piece == "front" ? 2 : 4));
        if (changes > 2) ++wavy;
        ++lines;
      }
    }
  }
  // Of few people one more or less is a great share.
  const int few = kSanitized ? 5 : 0;
  CHECK(sharp <= lines / 50 + few);
  CHECK(wavy <= lines / 15 + few);
}

TEST_CASE("Smooth front panels are eased in by 3 to 13 mm, between their outer notches only",
          "[kLeastSeamEase][kMostSeamEase]") {
  for (const Session& session : each_person(people(300), 81)) {
    const Pattern block = checked_block(session).block.pattern;
    for (const SeamName& name : kSmoothSeams) {
      INFO(name.piece << " " << name.upper);
      const CutSmooth cut = cut_smooth(block, name);
      const double on_centre = length(cut.edge_of(cut.centre));
      const double on_side = length(cut.edge_of(cut.side));
      CHECK(on_side - on_centre == Approx(cut.walk.ease).margin(1e-9));
      CHECK(std::abs(cut.walk.ease) <= kMostSeamEase);
      if (name.piece == "front") CHECK(cut.walk.ease >= kLeastSeamEase);
      CHECK(notch_place(cut.centre, "princess_below") ==
            Approx(on_side - notch_place(cut.side, "princess_below")).margin(0.1));
      CHECK(on_centre - notch_place(cut.centre, "princess_above") ==
            Approx(notch_place(cut.side, "princess_above")).margin(0.1));
    }
  }
}

TEST_CASE("The notches of a smooth seam: at the bust point and 50 mm either side") {
  const CutSmooth cut = cut_smooth(usual_block(), {"front", "shoulder"});
  const double apex = notch_place(cut.centre, "princess_apex");
  CHECK(apex - notch_place(cut.centre, "princess_below") == Approx(50.0).margin(0.1));
  CHECK(notch_place(cut.centre, "princess_above") - apex == Approx(50.0).margin(0.1));
  CHECK(std::abs(point_at_length(cut.edge_of(cut.centre), apex).y - apex_mark_of(cut.whole).y) <
        3.0);
}

// Half a millimetre is less than a stitch line is wide. The waist itself is let down at the seam.
TEST_CASE("Smooth panels keep the girth on every level, within 0.5 mm") {
  int levels = 0, off = 0;
  for (const Session& session : each_person(people(300), 81)) {
    const Pattern block = checked_block(session).block.pattern;
    for (const char* piece : {"front", "back"}) {
      const CutSmooth cut = cut_smooth(block, {piece, "shoulder"});
      const double low = cut.whole.landmark("side_waist_point").y + 12.0;
      const double high =
          std::min(cut.whole.landmark("shoulder_point").y, cut.whole.dart("shoulder").legs[0].y) -
          5.0;
      for (double y = low; y < high; y += 5.0) {
        const double got = width_at(cut.centre, y) + width_at(cut.side, y);
        const double change = got - width_at(cut.whole, y);
        INFO(piece << ", level " << y - apex_mark_of(cut.whole).y << ", darts of "
                   << degrees_of(cut.whole));
        CHECK(std::abs(change) < 2.0);
        if (std::abs(change) > 0.5) ++off;
        ++levels;
      }
    }
  }
  CHECK(levels > people(30000));
  CHECK(off < levels / 500);
}

TEST_CASE("Smooth panels from the armhole keep the girth under the bust point, within 0.7 mm") {
  for (const Session& session : each_person(people(100), 81)) {
    const Pattern block = checked_block(session).block.pattern;
    const CutSmooth cut = cut_smooth(block, {"front", "armhole"});
    const double low = cut.whole.landmark("side_waist_point").y + 12.0;
    for (double y = low; y < apex_mark_of(cut.whole).y - 15.0; y += 5.0) {
      const double got = width_at(cut.centre, y) + width_at(cut.side, y);
      CHECK(got == Approx(width_at(cut.whole, y)).margin(0.7));
    }
  }
}

TEST_CASE("The area of smooth panels grows by no more than what is let down at the waist") {
  for (const Session& session : each_person(people(100), 81)) {
    const Pattern block = checked_block(session).block.pattern;
    for (const SeamName& name : kSmoothSeams) {
      INFO(name.piece << " " << name.upper);
      const CutSmooth cut = cut_smooth(block, name);
      const double change =
          closed_area(cut.centre) + closed_area(cut.side) - closed_area(cut.whole);
      // Let down by so much at the seam, by nothing at the side.
      const double let_down = 0.5 * cut.walk.let_down * length(cut.side.edge("waist").path);
      CHECK(change == Approx(let_down).margin(250.0));
    }
  }
}

TEST_CASE("A princess seam passes 5 to 10 mm beside the bust point, on the side of the armhole",
          "[kLeastBesideBust][kMostBesideBust]") {
  const Pattern block = usual_block();
  for (const double beside : {5.0, 7.0, 10.0}) {
    for (const char* upper : {"shoulder", "armhole"}) {
      const CutSmooth cut = cut_smooth(block, {"front", upper}, beside);
      const Point bust = apex_mark_of(cut.whole);
      const NearestOnPath passed = nearest(cut.edge_of(cut.centre), bust);
      CHECK(passed.distance == Approx(beside).margin(0.6));
      CHECK(passed.point.x > bust.x);
      CHECK(contains(sewing_outline(cut.centre), bust, 0.01));
    }
  }
  CHECK(refused(block, {"front", "shoulder"}, 4.9) == "dart.place");
  CHECK(refused(block, {"front", "shoulder"}, 10.1) == "dart.place");
  CHECK(refused(block, {"back", "shoulder"}, 7.0) == "dart.place");
}

TEST_CASE("A back seam from the armhole passes 15 to 25 mm outside the blade point",
          "[kLeastOutsideBlade][kMostOutsideBlade]") {
  const Pattern block = usual_block();
  for (const double beside : {15.0, 20.0, 25.0}) {
    const CutSmooth cut = cut_smooth(block, {"back", "armhole"}, beside);
    const Point blade = apex_mark_of(cut.whole);
    CHECK(nearest(cut.edge_of(cut.centre), blade).distance == Approx(beside).margin(1.5));
    CHECK(contains(sewing_outline(cut.centre), blade, 0.01));
  }
  CHECK(refused(block, {"back", "armhole"}, 14.9) == "dart.place");
  CHECK(refused(block, {"back", "armhole"}, 25.1) == "dart.place");
}

TEST_CASE("The bust line of smooth panels ends on the seam") {
  const CutSmooth cut = cut_smooth(usual_block(), {"front", "shoulder"});
  for (const Piece* panel : {&cut.centre, &cut.side}) {
    const BalanceLine* line = find_named(panel->balance_lines, "bust_line");
    REQUIRE(line != nullptr);
    const Path& edge = cut.edge_of(*panel);
    CHECK(std::min(nearest(edge, line->path.start()).distance,
                   nearest(edge, line->path.end()).distance) < 1e-6);
  }
}

// The more the seam takes up, the longer the side panel's edge; half of its excess may be trimmed.
TEST_CASE("A back panel is trimmed at the waist by 10 mm at most, or the seam is refused",
          "[kMostTrimmed]") {
  int trimmed = 0, refusals = 0;
  for (const Session& person : each_person(40, 81)) {
    Session session = person;
    for (const double waist : {600.0, 640.0, 680.0, 720.0, 760.0}) {
      tape(session, MeasurementName::WaistGirth, waist);
      const CheckedBlock block = checked_block(session);
      try {
        const PanelWalk walk = cut_smooth(block.block.pattern, {"back", "shoulder"}).walk;
        CHECK(walk.let_down >= -kMostTrimmed);
        CHECK(walk.ease <= kMostSeamEase);
        if (walk.let_down < -0.9 * kMostTrimmed) ++trimmed;
      } catch (const InputError& error) {
        CHECK(error.problem().code == "dart.panel");
        CHECK_THAT(error.problem().message.plain(), Catch::Contains("a seam eases in 13 mm"));
        ++refusals;
      }
    }
  }
  CHECK(trimmed > 0);
  CHECK(refusals > 0);
}
