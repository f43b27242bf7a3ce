// Each check finds the fault it is for, planted in a sound block.
#include "checks.hpp"

#include "blockwright/geometry/box.hpp"
#include "support/blocks.hpp"
#include "support/each.hpp"
#include "support/people.hpp"

#include <catch2/catch.hpp>

#include <algorithm>
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

// An upper arm nearly as thick as the bust, on a side of 9 cm.
TEST_CASE("A draft whose armhole would reach down to the waist is refused") {
  Session session = bust_only(603.9);
  tape(session, UpperChestGirth, 600.0);
  tape(session, UnderbustGirth, 500.0);
  tape(session, HipGirth, 1795.4);
  tape(session, UpperArmGirth, 562.2);
  tape(session, FrontShoulderSlant, 260.0);
  tape(session, AcrossBack, 221.6);
  tape(session, AcrossFront, 191.6);
  Ease ease = Ease::of_toile();
  ease.set(UnderbustGirth, Length::mm(-200.0));
  ease.set(FrontShoulderSlant, Length::mm(16.0));
  ease.set(SideLength, Length::mm(-200.0));
  ease.set(ScyeDepth, Length::mm(-200.0));
  const Problem problem = first_found("check.armhole", checked_block(session, ease));
  CHECK(problem.where == "front.armhole");
  CHECK(problem.limit.least == Length::mm(20.0));
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

TEST_CASE("A bust line that tilts is found") {
  CheckedBlock checked = sound();
  for (BalanceLine& line : front(checked).balance_lines) {
    if (line.name == "bust_line") {
      line.path = Path::through({line.path.start(), line.path.end() + Vec{0.0, 0.5}});
    }
  }
  CHECK(finds("check.level", checked, Length::mm(0.1)));
}

TEST_CASE("An armhole that does not suit the arm is found and names what to take again") {
  CheckedBlock checked = sound();
  Measure& armscye = checked.body.measurements[ArmscyeGirth]->value;
  armscye += Length::mm(-80);
  CHECK(finds("check.armhole", checked));
}

// The armhole law has several limits: the first problem names the one that is broken.
TEST_CASE("An armhole narrower than 0.30 of the arm is found, one a little wider is not") {
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

TEST_CASE("A front armhole that hangs over 3 mm below its underarm is found") {
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

TEST_CASE("A bound that changed a taped measurement is told, with what to take again") {
  CheckedBlock checked = sound();
  Adjustment narrower{AcrossBack, Length::mm(-22), {}};
  narrower.why += "it is wider than the shoulders";
  checked.block.adjustments.push_back(narrower);
  const CheckReport report = check_block(
      {checked.block.pattern, checked.body, checked.block.ease, checked.block.adjustments});
  const auto it = std::find_if(report.problems.begin(), report.problems.end(), [](const auto& p) {
    return p.code == "draft.adjusted" && p.where == "across_back";
  });
  REQUIRE(it != report.problems.end());
  CHECK(it->severity == Severity::Warning);
  CHECK(it->message.plain().find("22 mm") != std::string::npos);
  CHECK(it->limit.most == Length::mm(10.0));
  CHECK_FALSE(it->hint.empty());
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

TEST_CASE("What the pieces cannot show is what closes no line of the draft") {
  for (const BackMeasure& row : back_measures()) {
    INFO(info(row.name).key);
    const bool measured = std::holds_alternative<OnPieces>(row.how);
    if (!measured) CHECK(info(row.name).ease.by == Length());
    if (info(row.name).closes.starts_with("nothing")) CHECK_FALSE(measured);
  }
}
