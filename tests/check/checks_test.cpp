// Each check finds the fault it is for, planted in a sound block.
#include "checks.hpp"

#include "blockwright/block/kinds.hpp"
#include "blockwright/geometry/box.hpp"
#include "support/blocks.hpp"
#include "support/each.hpp"
#include "support/people.hpp"

#include <catch2/catch.hpp>

#include <algorithm>
#include <cmath>
#include <optional>

using namespace blockwright;
using enum MeasurementName;

namespace {

CheckedBlock sound() { return checked_block(survey_people(1, 11).front()); }

Edge& edge_of(Piece& piece, const std::string& name) {
  return *std::find_if(piece.edges.begin(), piece.edges.end(),
                       [&](const Edge& edge) { return edge.name == name; });
}

/// True if the block, changed, is reported with the code and with the most that is allowed.
bool finds(const std::string& code, const CheckedBlock& checked, std::optional<Measure> most = {}) {
  const CheckReport report = check_block(
      {checked.block.pattern, checked.body, checked.block.ease, checked.block.adjustments});
  return std::any_of(report.problems.begin(), report.problems.end(), [&](const Problem& p) {
    return p.code == code && (!most || p.limit.most == most);
  });
}

/// The block's first problem with the code; empty if there is no such problem.
Problem first_found(const std::string& code, const CheckedBlock& checked) {
  for (const Problem& problem : checked.report.problems) {
    if (problem.code == code) return problem;
  }
  return {};
}

Piece& front(CheckedBlock& checked) { return checked.block.pattern.pieces[0]; }
Piece& back(CheckedBlock& checked) { return checked.block.pattern.pieces[1]; }

}  // namespace

TEST_CASE("A sound block passes every check") { CHECK(errors_of(sound().report) == ""); }

TEST_CASE("An open outline is found") {
  CheckedBlock checked = sound();
  Edge& waist = edge_of(front(checked), "waist");
  waist.path = placed(waist.path, Placement::shift({0.0, 0.01}));
  CHECK(finds("pattern.broken", checked));
}

TEST_CASE("A side seam that is a quarter millimetre longer on one piece is found") {
  CheckedBlock checked = sound();
  Edge& side = edge_of(back(checked), "side");
  const Vec along = unit(side.path.end() - side.path.start());
  side.path = Path({Segment{side.path.start() - 0.25 * along, side.path.end()}});
  CHECK(finds("check.seam", checked, Length::mm(0.1)));
}

TEST_CASE("A notch that misses its mate is found") {
  CheckedBlock checked = sound();
  front(checked).notches.front().along += 0.2;
  CHECK(finds("check.seam", checked, Length::mm(0.1)));
}

TEST_CASE("A bust point 0.3 mm off is found by the measurements") {
  CheckedBlock checked = sound();
  for (Landmark& landmark : front(checked).landmarks) {
    if (landmark.name == "bust_point") landmark.at.x += 0.15;
  }
  CHECK(finds("check.measure_back", checked));
}

TEST_CASE("A neckline that is not square to the centre front is found") {
  CheckedBlock checked = sound();
  Edge& neckline = edge_of(front(checked), "neckline");
  auto curve = std::get<CubicCurve>(neckline.path.curves().front());
  curve.p2.y += 3.0;
  neckline.path = Path({curve});
  CHECK(finds("check.angle", checked, Measure::degrees(1.0)));
}

TEST_CASE("A wavy armhole is found") {
  CheckedBlock checked = sound();
  Edge& armhole = edge_of(back(checked), "armhole");
  auto curves = armhole.path.curves();
  auto lower = std::get<CubicCurve>(curves[0]);
  lower.p2 = lower.p2 + Vec{30.0, 0.0};
  auto upper = std::get<CubicCurve>(curves[1]);
  upper.p2 = upper.p2 + Vec{-30.0, 0.0};
  armhole.path = Path({lower, upper});
  CHECK(finds("check.curve", checked));
}

TEST_CASE("An armhole that runs across the bust dart is found") {
  CheckedBlock checked = sound();
  Edge& armhole = edge_of(front(checked), "armhole");
  auto curves = armhole.path.curves();
  auto lower = std::get<CubicCurve>(curves[0]);
  lower.p1.x -= 200.0;
  lower.p2.x -= 200.0;
  armhole.path = Path({lower, curves[1]});
  CHECK(finds("check.dart", checked));
}

// A waist of 973 mm over a bust of 848 mm, with eases that nobody gives.
TEST_CASE("A draft whose armhole would cut the bust dart is refused, not trued") {
  Session session = bust_only(847.6);
  tape(session, UnderbustGirth, 931.8);
  tape(session, WaistGirth, 972.7);
  tape(session, HipGirth, 600.0);
  Ease ease = Ease::of_toile();
  ease.set(AcrossBack, Length::mm(49.3));
  ease.set(SideLength, Length::mm(145.1));
  ease.set(ScyeDepth, Length::mm(144.0));
  CHECK(first_found("check.dart", checked_block(session, ease)).where == "front.armhole");
}

// No draft comes so low: the underarm stays over the bust line, and the bust line over the waist.
TEST_CASE("An armhole that reaches down to 20 mm above the waist is found, a higher one is not",
          "[kLeastOverWaist]") {
  const auto found_at = [](Piece& (*piece_of_block)(CheckedBlock&), double over_waist) {
    CheckedBlock checked = sound();
    Piece& piece = piece_of_block(checked);
    const double top = box_of(edge_of(piece, "waist").path).top;
    const auto lowered = [&](Point p) { return Point{p.x, top + over_waist}; };
    Edge& armhole = edge_of(piece, "armhole");
    auto curves = armhole.path.curves();
    auto& lower = std::get<CubicCurve>(curves[0]);
    lower.p0 = lowered(lower.p0);
    lower.p1 = lowered(lower.p1);
    armhole.path = Path(curves);
    checked.report = check_block(
        {checked.block.pattern, checked.body, checked.block.ease, checked.block.adjustments});
    const Problem problem = first_found("check.armhole", checked);
    return problem.where == piece.name + ".armhole" && problem.limit.least == Length::mm(20.0);
  };
  for (const auto piece : {front, back}) {
    CHECK(found_at(piece, 19.9));
    CHECK_FALSE(found_at(piece, 20.1));
  }
}

// A back 20 cm shorter than it was taped, by an ease that nobody gives.
TEST_CASE("A draft whose back underarm would lie above its across point is refused") {
  Session session = bust_only(741.2);
  tape(session, HipGirth, 1687.1);
  tape(session, NeckBaseGirth, 250.0);
  tape(session, FrontWaistLength, 242.2);
  tape(session, SideLength, 148.2);
  tape(session, Stature, 2105.9);
  Ease ease = Ease::of_toile();
  ease.set(BackWaistLength, Length::mm(-200.0));
  CHECK(first_found("check.armhole", checked_block(session, ease)).where == "back.armhole");
}

TEST_CASE("An armhole that reaches below the waist is said to be 0 mm above it") {
  CheckedBlock checked = sound();
  const double waist = box_of(edge_of(front(checked), "waist").path).top;
  Edge& armhole = edge_of(front(checked), "armhole");
  auto curves = armhole.path.curves();
  auto& lower = std::get<CubicCurve>(curves[0]);
  lower.p0.y = lower.p1.y = waist - 30.0;
  armhole.path = Path(curves);
  const Problems found = check_armhole(
      {checked.block.pattern, checked.body, checked.block.ease, checked.block.adjustments});
  REQUIRE(found.size() == 1);
  CHECK_THAT(found.front().message.plain(), Catch::Contains("reach down to 0 mm above the waist"));
}

TEST_CASE("A bust line that tilts is found") {
  CheckedBlock checked = sound();
  for (BalanceLine& line : front(checked).balance_lines) {
    if (line.name == "bust_line") {
      line.path = Path::through({line.path.start(), line.path.end() + Vec{0.0, 0.5}});
    }
  }
  CHECK(finds("check.level", checked, Length::mm(0.1)));
}

TEST_CASE("A bust line that tilts at the centre alone is found") {
  CheckedBlock checked = sound();
  for (BalanceLine& line : front(checked).balance_lines) {
    if (line.name == "bust_line") {
      line.path = Path::through({line.path.start() + Vec{0.0, 0.2}, line.path.end()});
    }
  }
  CHECK(finds("check.level", checked, Length::mm(0.1)));
}

// Each line level by itself.
TEST_CASE("A bust line of the back 0.2 mm over that of the front at the side is found") {
  const auto found_at = [](double up) {
    CheckedBlock checked = sound();
    for (BalanceLine& line : back(checked).balance_lines) {
      if (line.name == "bust_line") line.path = placed(line.path, Placement::shift({0.0, up}));
    }
    return finds("check.level", checked, Length::mm(0.1));
  };
  CHECK(found_at(0.2));
  CHECK(found_at(-0.2));
  CHECK_FALSE(found_at(0.05));
}

namespace {

/// A strip 20 mm wide with its long side in stretches of these lengths, "e0", "e1" ...
Piece strip(const std::string& name, const std::vector<double>& stretches) {
  Piece piece;
  piece.name = name;
  Point at;
  for (const double mm : stretches) {
    const Point next = at + Vec{mm, 0.0};
    piece.edges.push_back(
        {"e" + std::to_string(piece.edges.size()), EdgeRole::Seam, Path::through({at, next})});
    at = next;
  }
  piece.edges.push_back(
      {"rest", EdgeRole::Hem, Path::through({at, at + Vec{0.0, 20.0}, {0.0, 20.0}, {}})});
  return piece;
}

}  // namespace

TEST_CASE(
    "A notch on a seam's second edge is compared from the start of the seam, either way round") {
  const auto found_at = [](double along, bool runs_back) {
    Pattern pattern{{strip("p", {100.0, 50.0}), strip("q", {150.0})}, {}};
    pattern.seams = {{"pq", {{"p", "e0"}, {"p", "e1"}}, {{"q", "e0"}}, 0.0, runs_back}};
    pattern.pieces[0].notches = {{"n", "e1", 20.0, 1, "q", "e0"}};
    pattern.pieces[1].notches = {{"n", "e0", along, 1, "p", "e1"}};
    return !unequal_seams(pattern).empty();
  };
  CHECK_FALSE(found_at(120.0, false));
  CHECK_FALSE(found_at(120.09, false));
  CHECK(found_at(120.11, false));
  CHECK(found_at(119.89, false));
  CHECK_FALSE(found_at(30.0, true));
  CHECK(found_at(120.0, true));
}

// What is eased in lies between the notches too.
TEST_CASE("On a seam with 5 mm of ease a notch may miss its mate by 5.1 mm and no more") {
  const auto found_at = [](double along, double ease_in) {
    Pattern pattern{{strip("p", {155.0}), strip("q", {155.0 - ease_in})}, {}};
    pattern.seams = {{"pq", {{"p", "e0"}}, {{"q", "e0"}}, ease_in, false}};
    pattern.pieces[0].notches = {{"n", "e0", 60.0, 1, "q", "e0"}};
    pattern.pieces[1].notches = {{"n", "e0", along, 1, "p", "e0"}};
    return !unequal_seams(pattern).empty();
  };
  CHECK_FALSE(found_at(60.0 - 5.05, 5.0));
  CHECK(found_at(60.0 - 5.15, 5.0));
  CHECK_FALSE(found_at(60.0 + 5.05, -5.0));
  CHECK(found_at(60.0 + 5.15, -5.0));
}

// Balance marks, ends of gathers, notches of a seam that is sewn later.
TEST_CASE("Only notches whose mates are on the same seam are compared on it") {
  Pattern pattern{{strip("p", {100.0}), strip("q", {100.0})}, {}};
  pattern.seams = {{"pq", {{"p", "e0"}}, {{"q", "e0"}}, 0.0, false}};
  const auto finds_with = [&](const Notch& notch) {
    pattern.pieces[0].notches = {notch};
    pattern.pieces[1].notches = {{"n", "e0", 40.0, 1, "p", "e0"}, {"n", "rest", 5.0, 1, "p", "e0"}};
    return !unequal_seams(pattern).empty();
  };
  CHECK(finds_with({"n", "e0", 20.0, 1, "q", "e0"}));
  CHECK_FALSE(finds_with({"n", "e0", 20.0, 1, "", ""}));
  CHECK_FALSE(finds_with({"n", "e0", 20.0, 1, "q", "rest"}));
  CHECK_FALSE(finds_with({"n", "rest", 20.0, 1, "q", "e0"}));
}

TEST_CASE("An edge that is of no kind has no bounds on its curve") {
  const CheckedBlock checked = sound();
  Piece free = strip("free", {100.0});
  free.edges.front().path = Path({CubicCurve{{0, 0}, {1, 8}, {2, -8}, {3, 0}}});
  const Pattern pattern{{free}, {}};
  CHECK(check_curves({pattern, checked.body, checked.block.ease, {}}).empty());
}

// Both are measured on the same pieces, the one for the tape, the other for the report's table.
TEST_CASE("Whole lengths of the report are those that the tape would give") {
  const CheckReport report = sound().report;
  const auto measured = [&](MeasurementName name) {
    const MeasureBack* row = row_of(report, name);
    REQUIRE(row != nullptr);
    return row->pattern.number();
  };
  CHECK(length_of(report, "neckline") == Approx(measured(NeckBaseGirth)));
  CHECK(length_of(report, "armhole") == Approx(measured(ArmscyeGirth)));
  CHECK(2.0 * (length_of(report, "front.bust_line") + length_of(report, "back.bust_line")) ==
        Approx(measured(BustGirth)));
  CHECK(2.0 * (length_of(report, "front.waist") + length_of(report, "back.waist")) ==
        Approx(measured(WaistGirth)));
}

// With both slants taped the slope is what they leave, and is not asked of the pieces.
TEST_CASE("The shoulder slope is measured back where no slant was taped, and only there") {
  Session session = survey_people(1, 11).front();
  const CheckedBlock by_slope = checked_block(session);
  REQUIRE(row_of(by_slope.report, ShoulderSlope) != nullptr);
  for (const MeasurementName slant : {FrontShoulderSlant, BackShoulderSlant}) {
    CHECK(row_of(by_slope.report, slant) == nullptr);
    Session taped = session;
    const CheckedBlock on_paper = by_slope;
    for (const BackMeasure& row : back_measures()) {
      if (row.name != slant) continue;
      tape(taped, slant, std::round(std::get<OnPieces>(row.how)(on_paper.block.pattern)) + 6.0);
    }
    const CheckReport report = checked_block(taped).report;
    CHECK(row_of(report, ShoulderSlope) == nullptr);
    CHECK(row_of(report, slant) != nullptr);
    CHECK(errors_of(report) == "");
  }
}

TEST_CASE("An armhole that does not suit the arm is found and names what to take again") {
  CheckedBlock checked = sound();
  Measure& armscye = checked.body.measurements[ArmscyeGirth]->value;
  armscye += Length::mm(-80);
  CHECK(finds("check.armhole", checked));
}

// The armhole law has several limits: the first problem names the one that is broken.
TEST_CASE("An armhole narrower than 0.30 of the arm is found, one a little wider is not",
          "[kLeastWidthOfArm]") {
  CheckedBlock checked = sound();
  const double width = armhole_width(checked.block.pattern);
  const auto found_at = [&](double arm) {
    checked.body.measurements[UpperArmGirth]->value = Length::mm(arm);
    const CheckReport report = check_block(
        {checked.block.pattern, checked.body, checked.block.ease, checked.block.adjustments});
    return std::any_of(report.problems.begin(), report.problems.end(), [](const Problem& p) {
      return p.code == "check.armhole" && p.where == "upper_chest_girth";
    });
  };
  CHECK(found_at((width + 0.1) / 0.30));
  CHECK_FALSE(found_at((width - 0.1) / 0.30));
}

TEST_CASE("A front armhole that hangs over 3 mm below its underarm is found", "[kMostDip]") {
  CheckedBlock checked = sound();
  Edge& armhole = edge_of(front(checked), "armhole");
  const auto curves = armhole.path.curves();
  const auto hangs = [&](double down) {
    auto lower = std::get<CubicCurve>(curves[0]);
    // Both handles so low that the curve comes down by 3/4 of it, less what the end pulls it up.
    lower.p1 = {between(lower.p0, lower.p3, 0.3).x, lower.p0.y - down};
    lower.p2 = {between(lower.p0, lower.p3, 0.6).x, lower.p0.y - down};
    armhole.path = Path({lower, curves[1]});
    const double dip = lower.p0.y - box_of(armhole.path).bottom;
    const bool found = finds("check.armhole", checked, Length::mm(3.0));
    CHECK(found == (dip > 3.0));
    return found;
  };
  CHECK_FALSE(hangs(1.0));
  CHECK(hangs(40.0));
}

TEST_CASE("An armhole within 12 mm and a neckline within 10 mm of radius are found") {
  const auto found_at = [](const std::string& edge, double radius) {
    CheckedBlock checked = sound();
    Edge& bent = edge_of(back(checked), edge);
    // A bow of that radius in place of a part of the edge, so that only its sharpness counts.
    std::vector<Curve> curves = bent.path.curves();
    const Point from = end_of(curves.back());
    const double k = 0.5523 * radius;
    curves.push_back(CubicCurve{from, from + Vec{k, 0.0}, from + Vec{radius, radius - k},
                                from + Vec{radius, radius}});
    bent.path = Path(curves);
    const CheckReport report = check_block(
        {checked.block.pattern, checked.body, checked.block.ease, checked.block.adjustments});
    return std::any_of(report.problems.begin(), report.problems.end(), [&](const Problem& p) {
      return p.where == "back." + edge && p.message.plain().find("radius") != std::string::npos;
    });
  };
  CHECK(found_at("armhole", 11.5));
  CHECK_FALSE(found_at("armhole", 12.5));
  CHECK(found_at("neckline", 9.5));
  CHECK_FALSE(found_at("neckline", 10.5));
}

namespace {

/// What is told where a taped measurement of a sound block was changed by so much, in mm.
Problem told_of_change(MeasurementName name, double mm) {
  CheckedBlock checked = sound();
  REQUIRE(checked.body.taped(name));
  Adjustment changed{name, Length::mm(mm), {}};
  changed.why += "it is wider than the shoulders";
  checked.block.adjustments = {changed};
  checked.report = check_block(
      {checked.block.pattern, checked.body, checked.block.ease, checked.block.adjustments});
  return first_found("draft.adjusted", checked);
}

}  // namespace

// Widths between the arms, chest and front lengths repeat less well than other tapes. Ours.
TEST_CASE("A bound that changed a taped measurement is told, with what to take again") {
  struct Change {
    MeasurementName name;
    double small;  // mm: a second reading may differ by as much
  };
  for (const auto& [name, small] :
       {Change{AcrossBack, 25.0}, Change{AcrossFront, 25.0}, Change{UpperChestGirth, 40.0},
        Change{FrontWaistLength, 15.0}, Change{SideNeckToWaist, 15.0}, Change{WaistGirth, 20.0},
        Change{ShoulderLength, 10.0}}) {
    for (const double sign : {-1.0, 1.0}) {
      INFO(info(name).key << " by " << sign * small);
      const Problem note = told_of_change(name, sign * small);
      CHECK(note.where == info(name).key);
      CHECK(note.severity == Severity::Note);
      CHECK_FALSE(note.limit.most);
      const Problem warning = told_of_change(name, sign * (small + 0.5));
      CHECK(warning.severity == Severity::Warning);
      CHECK(warning.limit.most == Length::mm(small));
      CHECK_FALSE(warning.hint.empty());
      CHECK(told_of_change(name, sign * 8.0 * small).severity == Severity::Warning);
      CHECK(told_of_change(name, sign * (8.0 * small + 0.5)).severity == Severity::Error);
    }
  }
  const std::string message = told_of_change(AcrossBack, -22.0).message.plain();
  CHECK(message.find("22 mm less than tape and ease: it is wider") != std::string::npos);
}

TEST_CASE("A large armscye may have a longer armhole in proportion before it is a warning") {
  // 55 mm over 371 in all, of which 35 are ease: textbook blocks are 11 to 18 in 100 longer (from
  // memory, computed). The number is ours.
  const auto told = [](double armscye, double mm) {
    CheckedBlock checked = sound();
    checked.body.measurements[ArmscyeGirth]->value = Length::mm(armscye);
    checked.block.adjustments = {{ArmscyeGirth, Length::mm(mm), {}}};
    checked.report = check_block(
        {checked.block.pattern, checked.body, checked.block.ease, checked.block.adjustments});
    return first_found("draft.adjusted", checked).severity;
  };
  CHECK(told(350.0, 19.9) == Severity::Note);
  CHECK(told(350.0, 20.1) == Severity::Warning);
  CHECK(told(500.0, 38.9) == Severity::Note);
  CHECK(told(500.0, 39.1) == Severity::Warning);
  CHECK(told(500.0, -20.1) == Severity::Warning);
}

TEST_CASE("A measurement that nobody measures back is found, so that it does not compile") {
  const std::vector<BackMeasure> all(back_measures().begin(), back_measures().end());
  CHECK(covers_every_measurement(all));
  std::vector<BackMeasure> one_less = all, empty = all, twice = all;
  one_less.pop_back();
  CHECK_FALSE(covers_every_measurement(one_less));
  empty.front().how = OnPieces{};
  CHECK_FALSE(covers_every_measurement(empty));
  twice.front().name = twice.back().name;
  CHECK_FALSE(covers_every_measurement(twice));
}

TEST_CASE("What to take again is said in words, not in keys of a file") {
  for (const BackMeasure& row : back_measures()) {
    INFO(row.take_again);
    CHECK(row.take_again.find('_') == std::string_view::npos);
  }
}

TEST_CASE("What the pieces cannot show is what closes no line of the draft") {
  for (const BackMeasure& row : back_measures()) {
    INFO(info(row.name).key);
    const bool measured = std::holds_alternative<OnPieces>(row.how);
    if (!measured) CHECK(info(row.name).ease.by == Length());
    if (info(row.name).closes.starts_with("nothing")) CHECK_FALSE(measured);
  }
}

namespace {

/// How the block is judged where `name` gave way by so much.
Severity judged_by(const CheckedBlock& checked, MeasurementName name, Measure by, Source source) {
  CheckedBlock changed = checked;
  changed.body.measurements[name] = {measure_of(name, 500.0), source, measure_of(name, 0.0)};
  changed.block.adjustments = {{name, by, "why"}};
  const Problems found = check_limits(
      {changed.block.pattern, changed.body, changed.block.ease, changed.block.adjustments});
  REQUIRE(found.size() == 1);
  return found.front().severity;
}

}  // namespace

// A tenth of a millimetre or degree under and over each limit. Common practice and ours.
TEST_CASE(
    "A taped measurement that gives way passes, is warned of and is refused from its limits on",
    "[kTooFar][kSmallDifference]") {
  struct Limit {
    MeasurementName name;
    double small;
  };
  const CheckedBlock checked = sound();
  for (const auto& [name, small] :
       {Limit{BustGirth, 20.0}, Limit{SideLength, 10.0}, Limit{ShoulderSlope, 2.0},
        Limit{UpperChestGirth, 40.0}, Limit{AcrossBack, 25.0}, Limit{AcrossFront, 25.0},
        Limit{FrontWaistLength, 15.0}, Limit{SideNeckToWaist, 15.0}}) {
    for (const double sign : {1.0, -1.0}) {
      INFO(info(name).key << (sign > 0.0 ? " more" : " less"));
      const auto judged = [&](double off) {
        return judged_by(checked, name, measure_of(name, sign * off), Source::Taped);
      };
      CHECK(judged(small - 0.1) == Severity::Note);
      CHECK(judged(small + 0.1) == Severity::Warning);
      CHECK(judged(8.0 * small - 0.1) == Severity::Warning);
      CHECK(judged(8.0 * small + 0.1) == Severity::Error);
    }
  }
  const Measure far = Length::mm(900.0);
  CHECK(judged_by(checked, BustGirth, far, Source::Estimated) == Severity::Note);
}

TEST_CASE("An armhole is 20 to 90 mm longer than the armscye, or to 0.24 of a large one",
          "[kLeastArmholeEase][kMostArmholeEase][kMostArmholeShare]") {
  // From memory and ours: see src/check/shape_checks.cpp.
  const CheckedBlock checked = sound();
  const double armhole = half_length(checked.block.pattern, BlockEdge::Armhole);
  const auto found_at = [&](double armscye, double asked) {
    CheckedBlock changed = checked;
    changed.body.measurements[ArmscyeGirth]->value = Length::mm(armscye);
    changed.block.ease.set(ArmscyeGirth, Length::mm(asked));
    const Problems found = check_armhole(
        {changed.block.pattern, changed.body, changed.block.ease, changed.block.adjustments});
    return !found.empty() && found.front().where == "armscye_girth";
  };
  CHECK_FALSE(found_at(armhole - 20.1, 35.0));
  CHECK(found_at(armhole - 19.9, 35.0));
  // Asked for less: that is what is checked.
  CHECK_FALSE(found_at(armhole - 10.1, 10.0));
  CHECK(found_at(armhole - 9.9, 10.0));
  const double most = std::fmax(90.0, armhole * 0.24 / 1.24);
  CHECK_FALSE(found_at(armhole - most + 0.2, 35.0));
  CHECK(found_at(armhole - most - 0.2, 35.0));
}

TEST_CASE(
    "A back across point below its underarm is found, one a tenth of a millimetre above is not") {
  const auto found_at = [](double up) {
    CheckedBlock checked = sound();
    const double underarm = corner_point(back(checked), Corner::Underarm).y;
    for (Landmark& landmark : back(checked).landmarks) {
      if (landmark.name == "across_back_point") landmark.at.y = underarm + up;
    }
    const Problems found = check_armhole(
        {checked.block.pattern, checked.body, checked.block.ease, checked.block.adjustments});
    return std::ranges::any_of(found, [](const Problem& p) {
      return p.message.plain().find("across-back point would lie") != std::string::npos;
    });
  };
  CHECK(found_at(-0.1));
  CHECK_FALSE(found_at(0.1));
}
