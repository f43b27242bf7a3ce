// A kind of piece that the program does not know is drafted, moved, checked, fitted past, dressed
// and written from its table alone.
#include "block/gauntlet.hpp"
#include "blockwright/base/error.hpp"
#include "blockwright/dart/pivot.hpp"
#include "blockwright/dart/truing.hpp"
#include "blockwright/fit/apply.hpp"
#include "blockwright/layout/print_plan.hpp"
#include "blockwright/write/writers.hpp"
#include "support/blocks.hpp"
#include "support/each.hpp"
#include "support/people.hpp"

#include <catch2/catch.hpp>

#include <algorithm>
#include <sstream>

using namespace blockwright;
using namespace blockwright_tests;

namespace {

/// A drafted block with the gauntlet beside it.
CheckedBlock block_with(Piece cuff) {
  CheckedBlock checked = checked_block(survey_people(1, 11).front());
  std::vector<Piece>& pieces = checked.block.pattern.pieces;
  pieces.push_back(std::move(cuff));
  checked.block.pattern.seams = seams_between(pieces);
  return checked;
}

CheckReport report_on(const CheckedBlock& checked) {
  return check_block(
      {checked.block.pattern, checked.body, checked.block.ease, checked.block.adjustments});
}

bool finds(const std::string& code, const std::string& where, Piece cuff) {
  const Problems problems = report_on(block_with(std::move(cuff))).problems;
  return std::any_of(problems.begin(), problems.end(), [&](const Problem& p) {
    return p.severity == Severity::Error && p.code == code && p.where == where;
  });
}

Path& path_of(Piece& piece, const std::string& edge) {
  return std::find_if(piece.edges.begin(), piece.edges.end(),
                      [&](const Edge& e) { return e.name == edge; })
      ->path;
}

Pattern cuff_alone() { return {{gauntlet()}, seams_between({gauntlet()})}; }

PivotMove to_wrist() { return {"gauntlet.brim", "gauntlet.wrist", 1.0, {}, {}}; }

const Stroke& stroke_named(const Sheet& sheet, LineRole role, const std::string& name) {
  const auto found = std::find_if(sheet.strokes.begin(), sheet.strokes.end(), [&](const Stroke& s) {
    return s.piece == "gauntlet" && s.role == role && s.name == name;
  });
  REQUIRE(found != sheet.strokes.end());
  return *found;
}

/// How far the cut line lies off the middle of an edge.
double allowance_beside(const Sheet& sheet, const std::string& edge) {
  const Path& stitch = stroke_named(sheet, LineRole::StitchLine, edge).path;
  return nearest(stroke_named(sheet, LineRole::CutLine, "cut").path,
                 point_at_length(stitch, 0.25 * length(stitch)))
      .distance;
}

}  // namespace

TEST_CASE("A new kind drafts: its edges, points and seams come from its table") {
  const Piece piece = gauntlet();
  CHECK_FALSE(find_problem(piece));
  CHECK(piece.landmark("crest_point") == Point{90.0, 60.0});
  CHECK(piece.edge("outer_end").role == EdgeRole::Seam);
  const Pattern pattern = cuff_alone();
  REQUIRE(pattern.seams.size() == 1);
  CHECK(pattern.seams[0].a == std::vector<EdgeOf>{{"gauntlet", "outer_end"}});
  CHECK(pattern.seams[0].b == std::vector<EdgeOf>{{"gauntlet", "inner_end"}});
  CHECK(pattern.seams[0].b_runs_back);
}

// 2 atan(10 / 50) at the crest, so 2 60 sin of half of it at the wrist: plane geometry.
TEST_CASE("A new kind takes a dart move, and the dart is trued") {
  const MovedDarts moved = pivot(cuff_alone(), to_wrist());
  const Piece& piece = moved.pattern.piece("gauntlet");
  REQUIRE(piece.darts.size() == 1);
  const Dart& dart = piece.dart("wrist");
  CHECK(dart.edge == "wrist");
  CHECK(dart.angle().radians() == Approx(2.0 * std::atan(0.2)).margin(1e-9));
  CHECK(dart.intake() == Approx(2.0 * 60.0 * std::sin(std::atan(0.2))).margin(1e-9));
  CHECK(distance(dart.apex, dart.point) == Approx(10.0));
  CHECK_FALSE(find_problem(true_darts(moved.pattern).pattern.piece("gauntlet")));
  CHECK(check_pattern(moved.pattern).empty());
}

TEST_CASE("A place that a new kind has not got is refused with the places that it has") {
  try {
    pivot(cuff_alone(), {"gauntlet.brim", "gauntlet.armhole", 1.0, {}, {}});
    FAIL("not refused");
  } catch (const InputError& error) {
    CHECK(error.problem().code == "dart.unknown");
    CHECK(error.problem().hint == "places are: gauntlet.brim, gauntlet.wrist");
  }
}

TEST_CASE("A new kind is checked: sound it passes, and its lengths and dart are reported") {
  const CheckReport report = report_on(block_with(gauntlet()));
  CHECK(errors_of(report) == "");
  CHECK(length_of(report, "gauntlet.wrist") == Approx(180.0));
  CHECK(length_of(report, "gauntlet.brim") == Approx(160.0));
  CHECK(std::any_of(report.darts.begin(), report.darts.end(), [](const DartMeasure& dart) {
    return dart.piece == "gauntlet" && dart.name == "brim";
  }));
}

TEST_CASE("A new kind is checked: each fault planted in it is found, and named") {
  SECTION("an end that is 0.3 mm longer") {
    Piece cuff = gauntlet();
    path_of(cuff, "outer_end") = Path::through({{180.0, -0.3}, {180.0, 110.0}});
    path_of(cuff, "wrist") = Path::through({{0.0, 0.0}, {180.0, -0.3}});
    CHECK(finds("check.seam", "cuff", cuff));
  }
  SECTION("a brim that does not run on across the closed cuff") {
    Piece cuff = gauntlet();
    Path& brim = path_of(cuff, "brim");
    brim = Path::through({{180.0, 110.0}, {140.0, 106.0}, {100.0, 110.0}});
    const Dart& dart = cuff.darts.front();
    brim.add(Path::through({dart.legs[0], dart.peak, dart.legs[1], {0.0, 110.0}}));
    CHECK(finds("check.angle", "brim at the closed cuff", cuff));
  }
  SECTION("a wavy wrist") {
    Piece cuff = gauntlet();
    path_of(cuff, "wrist") =
        Path({CubicCurve{{0.0, 0.0}, {60.0, -1.0}, {120.0, 1.0}, {180.0, 0.0}}});
    CHECK(finds("check.curve", "gauntlet.wrist", cuff));
  }
  SECTION("an end that cuts the dart") {
    Piece cuff = gauntlet();
    path_of(cuff, "outer_end") =
        Path::through({{180.0, 0.0}, {180.0, 90.0}, {85.0, 95.0}, {180.0, 100.0}, {180.0, 110.0}});
    path_of(cuff, "inner_end") = Path::through({{0.0, 110.0}, {0.0, 0.0}});
    CHECK(finds("check.dart", "gauntlet.outer_end", cuff));
  }
  SECTION("an open outline") {
    Piece cuff = gauntlet();
    path_of(cuff, "wrist") = Path::through({{0.0, 0.5}, {180.0, 0.0}});
    CHECK(finds("pattern.broken", "gauntlet.inner_end", cuff));
  }
}

TEST_CASE("A fitting of the bodice leaves a new kind as it is, sewn as it was") {
  for (const BodySide side : each({BodySide::Both, BodySide::Left})) {
    const Pattern block = block_with(gauntlet()).block.pattern;
    const FittedPattern fitted = apply_corrections(
        block, {{"lower", "underarm", Length::mm(10.0), AmountAs::Length, side, ""}});
    const Piece& cuff = fitted.pattern.piece("gauntlet");
    for (const Edge& edge : gauntlet().edges) CHECK(cuff.edge(edge.name).path == edge.path);
    CHECK(std::any_of(fitted.pattern.seams.begin(), fitted.pattern.seams.end(),
                      [](const Seam& seam) { return seam.name == "cuff"; }));
    CHECK(check_pattern(fitted.pattern).empty());
  }
}

TEST_CASE("A new kind is dressed: allowance by role, its marks, holes and words") {
  PrintOptions options;
  TextFonts fonts;
  const Layout layout = lay_out(block_with(gauntlet()).block.pattern, options, {});
  const Sheet toile = sheet_of(layout, fonts);
  CHECK(allowance_beside(toile, "outer_end") == Approx(options.allowance.mm()).margin(0.01));
  CHECK(allowance_beside(toile, "inner_end") == Approx(options.allowance.mm()).margin(0.01));
  CHECK(allowance_beside(toile, "brim") < 1e-6);
  CHECK(allowance_beside(toile, "wrist") < 1e-6);
  CHECK(stroke_named(toile, LineRole::BalanceLine, "hand_line").path.curves().size() == 1);
  stroke_named(toile, LineRole::Hole, "crest_point");
  stroke_named(toile, LineRole::DartLeg, "brim");
  stroke_named(toile, LineRole::Notch, "end");
  options.cut = CutStyle::Card;
  const Layout card = lay_out(block_with(gauntlet()).block.pattern, options, {});
  stroke_named(sheet_of(card, fonts), LineRole::Hole, "crest_point");
  CHECK(alignment_level(gauntlet(), Alignment::Waist) == 0.0);
  CHECK_FALSE(alignment_level(gauntlet(), Alignment::Bust));
}

TEST_CASE("A new kind is written, as SVG and as pattern JSON") {
  const Pattern moved = pivot(cuff_alone(), to_wrist()).pattern;
  std::ostringstream svg, json;
  TextFonts fonts;
  write_svg(svg, sheet_of(lay_out(moved, {}, {}), fonts), "gauntlet", fonts);
  write_pattern_json(json, moved);
  for (const char* edge : {"wrist", "outer_end", "brim", "inner_end"}) {
    INFO(edge);
    CHECK(svg.str().find(edge) != std::string::npos);
    CHECK(json.str().find("{\"name\": \"" + std::string(edge) + "\", \"role\": ") !=
          std::string::npos);
  }
  CHECK(svg.str().find("Gauntlet") != std::string::npos);
  CHECK(json.str().find("\"name\": \"cuff\"") != std::string::npos);
}
