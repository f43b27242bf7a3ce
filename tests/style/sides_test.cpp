// Steps on a block whose two sides differ: each side's piece by its name, or both at once.
#include "blockwright/base/error.hpp"
#include "blockwright/check/check.hpp"
#include "blockwright/fit/apply.hpp"
#include "blockwright/pattern/pattern.hpp"
#include "blockwright/style/style.hpp"
#include "support/blocks.hpp"
#include "support/each_person.hpp"

#include <catch2/catch.hpp>

#include <algorithm>
#include <cstddef>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <set>

using namespace blockwright;

namespace {

namespace fs = std::filesystem;

std::vector<Pattern> plain_blocks(int count) {
  std::vector<Pattern> blocks;
  for (const Session& session : each_person(count, 5)) {
    blocks.push_back(checked_block(session).block.pattern);
  }
  return blocks;
}

// A fuller left breast, and a left shoulder that is lower: both pieces come as two.
Pattern unfolded(const Pattern& block) {
  return apply_rows(block, {{CorrectionRow{47}, 1, 4.0, AmountAs::PerHalf, BodySide::Left, ""},
                            {CorrectionRow{46}, 1, 5.0, AmountAs::Length, BodySide::Left, ""}})
      .pattern;
}

Pattern after(const Pattern& pattern, const StyleStep& step) {
  return apply_style(pattern, {"test", {step}}, kUsualCup).pattern;
}

std::string faults_of(const Pattern& pattern) {
  std::string faults;
  for (const Problem& problem : check_pattern(pattern)) {
    if (problem.severity == Severity::Error) faults += to_text(problem) + "\n";
  }
  return faults;
}

double apart(const Path& a, const Path& b) {
  double most = 0.0;
  for (int i = 0; i <= 40; ++i) {
    most = std::fmax(most, nearest(b, point_at_length(a, i / 40.0 * length(a))).distance);
  }
  return most;
}

std::set<std::string> names_of(const Pattern& pattern) {
  std::set<std::string> names;
  for (const Piece& piece : pattern.pieces) names.insert(piece.name);
  return names;
}

const PivotMove kToSide{"front.shoulder", "front.side", 0.5, {}, {}};

StyleStep to_side_of(const std::string& piece) {
  return PivotMove{piece + ".shoulder", piece + ".side", 0.5, {}, {}};
}

}  // namespace

TEST_CASE("A step that names one side's piece changes that piece alone") {
  for (const Pattern& block : each(plain_blocks(10), "plain_blocks(10)")) {
    const Pattern sides = unfolded(block);
    for (const std::string here : each({"front_left", "front_right"})) {
      const Pattern moved = after(sides, to_side_of(here));
      CHECK(faults_of(moved) == "");
      CHECK(moved.piece(here).dart("side").intake() > 1.0);
      for (const Piece& piece : sides.pieces) {
        if (piece.name == here) continue;
        for (const Edge& edge : piece.edges) {
          CHECK(moved.piece(piece.name).edge(edge.name).path == edge.path);
        }
      }
    }
  }
}

TEST_CASE("On a mirror image a step does what it does on the piece as drafted, mirrored") {
  for (const Pattern& block : each(plain_blocks(10), "plain_blocks(10)")) {
    // The right side is as it was drafted; its front is the mirror image.
    const Pattern sides = unfolded(block);
    REQUIRE(is_mirrored(sides.piece("front_right")));
    const Piece whole = after(block, kToSide).piece("front");
    const Piece image = mirrored(after(sides, to_side_of("front_right")).piece("front_right"));
    for (const Edge& edge : whole.edges) {
      INFO(edge.name);
      CHECK(apart(edge.path, image.edge(edge.name).path) < 1e-6);
    }
    for (const Dart& dart : whole.darts) {
      CHECK(distance(dart.apex, image.dart(dart.name).apex) < 1e-6);
      CHECK(distance(dart.point, image.dart(dart.name).point) < 1e-6);
      CHECK(dart.pressed_to == image.dart(dart.name).pressed_to);
    }
    for (const Notch& notch : whole.notches) {
      const auto same = [&](const Notch& n) {
        return n.name == notch.name && std::abs(n.along - notch.along) < 1e-6;
      };
      CHECK(std::any_of(image.notches.begin(), image.notches.end(), same));
    }
  }
}

TEST_CASE("A step that names the piece without a side is done on both") {
  for (const Pattern& block : each(plain_blocks(10), "plain_blocks(10)")) {
    const Pattern sides = unfolded(block);
    const Pattern both = after(sides, kToSide);
    CHECK(faults_of(both) == "");
    const Pattern one = after(after(sides, to_side_of("front_right")), to_side_of("front_left"));
    for (const Piece& piece : one.pieces) {
      for (const Edge& edge : piece.edges) {
        CHECK(both.piece(piece.name).edge(edge.name).path == edge.path);
      }
    }
  }
}

TEST_CASE(
    "Gathers of one side meet their mates, also where the paths of a seam run against each other") {
  int against = 0;
  for (const Pattern& block : each(plain_blocks(10), "plain_blocks(10)")) {
    const Pattern sides = unfolded(block);
    for (const Seam& seam : sides.seams) against += seam.b_runs_back ? 1 : 0;
    for (const char* dart : {"front_right.shoulder", "front_left.shoulder", "back_right.shoulder",
                             "back_left.shoulder"}) {
      INFO(dart);
      const Pattern gathered = after(sides, GatherMove{dart, Fullness::Kind::Gathers, 40.0});
      CHECK(faults_of(gathered) == "");
    }
  }
  CHECK(against > 0);
}

namespace {

// A fuller left breast: two fronts, and a back on the fold.
Pattern unfolded_front(const Pattern& block) {
  return apply_rows(block, {{CorrectionRow{47}, 1, 4.0, AmountAs::PerHalf, BodySide::Left, ""}})
      .pattern;
}

bool tells_of(const StepDone& step, const std::string& where) {
  return std::any_of(step.remarks.begin(), step.remarks.end(),
                     [&](const Problem& remark) { return remark.where == where; });
}

std::ptrdiff_t notches_on(const Piece& piece, const char* edge) {
  return std::count_if(piece.notches.begin(), piece.notches.end(),
                       [&](const Notch& notch) { return notch.edge == edge; });
}

}  // namespace

TEST_CASE("A piece on the fold is notched once for both sides' gathers, twice where they differ") {
  for (const Pattern& block : each(plain_blocks(10), "plain_blocks(10)")) {
    const Pattern sides = unfolded_front(block);
    const auto gathered = [&](double left, double right) {
      return apply_style(sides,
                         {"test",
                          {GatherMove{"front_left.shoulder", Fullness::Kind::Gathers, left},
                           GatherMove{"front_right.shoulder", Fullness::Kind::Gathers, right}}},
                         kUsualCup);
    };
    const StyledPattern alike = gathered(40.0, 40.0);
    CHECK(faults_of(alike.pattern) == "");
    CHECK(notches_on(alike.pattern.piece("back"), "shoulder") == 2);
    CHECK_FALSE(tells_of(alike.steps[1], "back.shoulder"));
    const StyledPattern unlike = gathered(40.0, 60.0);
    CHECK(faults_of(unlike.pattern) == "");
    CHECK(notches_on(unlike.pattern.piece("back"), "shoulder") == 4);
    CHECK(tells_of(unlike.steps[1], "back.shoulder"));
  }
}

TEST_CASE("Gathers that meet gathers of the whole shoulder are notched on its edge, not off it") {
  for (const Pattern& block : each(plain_blocks(10), "plain_blocks(10)")) {
    Pattern pattern = unfolded_front(block);
    for (const char* dart :
         each({"front_right.shoulder", "front_left.shoulder", "back.shoulder"})) {
      pattern = after(pattern, GatherMove{dart, Fullness::Kind::Gathers, 400.0});
      CHECK(faults_of(pattern) == "");
    }
  }
}

TEST_CASE("A princess seam makes four fronts, whose seams walk") {
  for (const Pattern& block : each(plain_blocks(10), "plain_blocks(10)")) {
    const PanelSeam seam{"front.shoulder", "front.waist", "", ""};
    const PanelSeam named{"front.shoulder", "front.waist", "middle", "outer"};
    const Pattern panels = after(unfolded(block), seam);
    CHECK(faults_of(panels) == "");
    CHECK(names_of(panels) == std::set<std::string>{"centre_front_left", "centre_front_right",
                                                    "side_front_left", "side_front_right",
                                                    "back_left", "back_right"});
    CHECK(names_of(after(unfolded(block), named)).contains("outer_left"));
    for (const Piece& piece : panels.pieces) {
      CHECK(piece.cut_on == CutOn::One);
      CHECK(is_mirrored(piece) ==
            (piece.name.find("front_right") != std::string::npos || piece.name == "back_left"));
    }
  }
}

TEST_CASE("Seams of panels still meet after a step on a panel of either side") {
  int made = 0;
  for (const Pattern& block : each(plain_blocks(10), "plain_blocks(10)")) {
    for (const Pattern& sides : {unfolded(block), unfolded_front(block)}) {
      Pattern panels;
      try {
        panels = after(sides, PanelSeam{"front.side", "front.waist", "", ""});
      } catch (const InputError& error) {
        INFO(to_text(error.problem()));
        CHECK(error.problem().code.rfind("dart.", 0) == 0);
        continue;
      }
      for (const std::string piece : {"centre_front_right", "centre_front_left"}) {
        INFO(piece);
        const Pattern moved = after(panels, PointMove{piece + ".shoulder", 30.0});
        CHECK(faults_of(moved) == "");
        ++made;
      }
    }
  }
  CHECK(made >= 10);
}

TEST_CASE("The example styles make sound pieces of blocks whose sides differ") {
  const auto blocks = plain_blocks(kSanitized ? 4 : 10);
  for (const auto& entry :
       fs::directory_iterator(fs::path(BLOCKWRIGHT_SOURCE_DIR) / "examples/styles")) {
    std::ifstream in(entry.path());
    const std::string text{std::istreambuf_iterator<char>(in), {}};
    const Style style = read_style(text, entry.path().filename().string());
    int made = 0;
    for (const Pattern& block : blocks) {
      try {
        const Pattern pieces = apply_style(unfolded(block), style, kUsualCup).pattern;
        INFO(entry.path().filename().string());
        CHECK(faults_of(pieces) == "");
        ++made;
      } catch (const InputError& error) {
        INFO(to_text(error.problem()));
        CHECK(error.problem().code.rfind("dart.", 0) == 0);
      }
    }
    INFO(entry.path().filename().string());
    CHECK(made >= (kSanitized ? 1 : 3));
  }
}

TEST_CASE("A piece that there is not is refused, and the pieces of both sides are named") {
  const Pattern sides = unfolded(plain_blocks(1).front());
  try {
    after(sides, to_side_of("front_middle"));
    FAIL("a step was done on no piece");
  } catch (const InputError& error) {
    CHECK(error.problem().code == "dart.unknown");
    CHECK(error.problem().hint.plain().find("front_right, front_left") != std::string::npos);
  }
}

TEST_CASE("A top of a body whose sides differ has its edge and a strap for each side") {
  TopEdgeDesign design;
  design.shape = TopShape::Sweetheart;
  design.straps = StrapDesign{};
  for (const Pattern& block : each(plain_blocks(10), "plain_blocks(10)")) {
    const Pattern sides = after(unfolded(block), OneDart{"front.waist"});
    const Pattern top = after(sides, design);
    CHECK(faults_of(top) == "");
    CHECK(names_of(top).contains("strap_left"));
    CHECK(names_of(top).contains("strap_right"));
    CHECK_FALSE(names_of(top).contains("strap"));
    for (const char* name : {"front_left", "front_right", "back_left", "back_right"}) {
      CHECK(is_mirrored(top.piece(name)) == is_mirrored(sides.piece(name)));
      CHECK(find_named(top.piece(name).edges, "shoulder") == nullptr);
    }
  }
}

TEST_CASE(
    "Both halves of a neckline or a top meet at the centre where the bust points lie unequally "
    "high") {
  TopEdgeDesign design;
  design.shape = TopShape::Curved;
  design.closer = 0.0;
  int uneven = 0;
  for (const Pattern& block : each(plain_blocks(10), "plain_blocks(10)")) {
    const Pattern sides =
        apply_rows(block, {{CorrectionRow{26}, 1, 8.0, AmountAs::Length, BodySide::Left, ""}})
            .pattern;
    const double left = sides.piece("front_left").landmark("bust_point").y;
    if (std::abs(left - sides.piece("front_right").landmark("bust_point").y) > 1.0) ++uneven;
    CHECK(faults_of(after(sides, design)) == "");
    NecklineDesign neckline;
    neckline.shape = NeckShape::V;
    const Pattern free = after(after(sides, OneDart{"front.waist"}),
                               PivotMove{"back.shoulder", "back.armhole", 1.0, {}, {}});
    CHECK(faults_of(after(free, neckline)) == "");
  }
  CHECK(uneven > 0);
}
