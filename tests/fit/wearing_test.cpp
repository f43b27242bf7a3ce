// A block worn with another ease: sleeved, sleeveless, close, strapless.
#include "blockwright/base/error.hpp"
#include "blockwright/block/kinds.hpp"
#include "blockwright/fit/wearing_ease.hpp"
#include "blockwright/geometry/path.hpp"
#include "support/blocks.hpp"
#include "support/each_person.hpp"

#include <catch2/catch.hpp>

#include <algorithm>
#include <cmath>
#include <optional>

using namespace blockwright;

namespace {

WornGirths body_girths(const Body& body) {
  using enum MeasurementName;
  return {body.length(BustGirth).mm(), body.length(WaistGirth).mm()};
}

WearingEase drawn_ease(const CheckedBlock& block) {
  using enum MeasurementName;
  const Ease& ease = block.block.ease;
  return {"", ease.length(BustGirth).mm(), ease.length(WaistGirth).mm()};
}

WornBlock worn_with(const CheckedBlock& block, const WearingEase& ease,
                    const std::vector<Correction>& corrections = {}) {
  return with_wearing_ease(block.block.pattern, corrections, ease, body_girths(block.body));
}

// A length by another way: the checks', which know nothing of this.
double measured(const CheckedBlock& block, const Pattern& worn, MeasurementName name) {
  const CheckReport report = check_block({worn, block.body, block.block.ease, {}});
  return row_of(report, name)->pattern.number();
}

double edge_of(const Pattern& pattern, const char* piece, BlockEdge edge) {
  const Piece& of = pattern.piece(piece);
  return sewn_length(of, part_of(of, edge));
}

std::optional<Problem> refusal_of(const CheckedBlock& block, const WearingEase& ease) {
  try {
    (void)worn_with(block, ease);
    return std::nullopt;
  } catch (const InputError& error) {
    return error.problem();
  }
}

Correction correction(const char* action, const char* place, double mm,
                      BodySide side = BodySide::Both) {
  Correction asked;
  asked.action = action;
  asked.place = place;
  asked.by = Length::mm(mm);
  asked.side = side;
  return asked;
}

}  // namespace

// The eases are of common practice (docs/decisions/026-wearing-ease.md).
TEST_CASE("Worn with each ease, bust and waist of anybody are the body's and the ease") {
  using enum MeasurementName;
  for (const WearingEase& ease : kWearingEases) {
    INFO(ease.name);
    int less = 0;
    for (const Session& session : each_person(people(150), 5)) {
      const CheckedBlock block = checked_block(session);
      const WornGirths body = body_girths(block.body);
      const WornBlock worn = worn_with(block, ease);
      CHECK(std::abs(worn.worn.bust - body.bust - ease.bust) < 0.05);
      CHECK(std::abs(worn.worn.waist - body.waist - ease.waist) < 0.05);
      CHECK(std::abs(measured(block, worn.pattern, BustGirth) - body.bust - ease.bust) < 0.5);
      CHECK(std::abs(measured(block, worn.pattern, WaistGirth) - body.waist - ease.waist) < 0.5);
      // Seams and notches walk, and pieces are whole.
      CHECK(errors_of(worn.pattern).empty());
      less += worn.remarks.empty() ? 0 : 1;
    }
    CHECK(less < people(150) / 5);
  }
}

TEST_CASE("From small to large busts every ease can be worn, and nothing crosses") {
  for (const int bust : {760, 900, 1100, 1300, 1400}) {
    for (const Session& session : each_at_bust(bust, people(20), 3)) {
      const CheckedBlock block = checked_block(session);
      if (!errors_of(block.report).empty()) continue;
      for (const WearingEase& ease : kWearingEases) {
        INFO(ease.name);
        const WornBlock worn = worn_with(block, ease);
        CHECK(std::abs(worn.worn.bust - bust - ease.bust) < 0.05);
        CHECK(errors_of(worn.pattern).empty());
      }
    }
  }
}

TEST_CASE("The underarm goes up and the shoulder point in by what is asked") {
  for (const Session& session : each_person(people(100), 17)) {
    const CheckedBlock block = checked_block(session);
    const Pattern& before = block.block.pattern;
    WearingEase ease = drawn_ease(block);
    ease.raise_underarm = 10.0;
    const Pattern up = worn_with(block, ease).pattern;
    for (const char* piece : {"front", "back"}) {
      CHECK(std::abs(edge_of(up, piece, BlockEdge::Side) - edge_of(before, piece, BlockEdge::Side) -
                     10.0) < 0.1);
    }
    ease = drawn_ease(block);
    ease.shoulder_in = 8.0;
    const Pattern in = worn_with(block, ease).pattern;
    for (const char* piece : {"front", "back"}) {
      CHECK(std::abs(edge_of(in, piece, BlockEdge::Shoulder) -
                     edge_of(before, piece, BlockEdge::Shoulder) + 8.0) < 0.1);
      for (const BlockEdge kept : {BlockEdge::Waist, BlockEdge::Side, BlockEdge::Neckline}) {
        CHECK(std::abs(edge_of(in, piece, kept) - edge_of(before, piece, kept)) < 1e-9);
      }
    }
  }
}

TEST_CASE("The toile's own ease changes nothing, to the last bit") {
  for (const Session& session : each_person(people(100), 17)) {
    const CheckedBlock block = checked_block(session);
    const Pattern& before = block.block.pattern;
    const WornBlock worn = worn_with(block, drawn_ease(block));
    for (const Piece& piece : before.pieces) {
      CHECK(flat_outline(worn.pattern.piece(piece.name)) == flat_outline(piece));
    }
    CHECK(worn.remarks.empty());
    CHECK(worn.worn.bust == worn.drafted.bust);
  }
}

TEST_CASE("What corrections did to the girths stays, and so does their side") {
  const CheckedBlock block = checked_block(survey_people(1, 7).front());
  const WornGirths body = body_girths(block.body);
  const WearingEase ease{"", 40.0, 20.0, 5.0, 5.0};
  const std::vector<Correction> both = {correction("let_out", "side_at_bust", 6.0),
                                        correction("take_in", "side_at_waist", 4.0)};
  const WornBlock even = worn_with(block, ease, both);
  CHECK(even.fitted.bust - even.drafted.bust > 9.0);
  CHECK(std::abs(even.worn.bust - body.bust - 40.0 - (even.fitted.bust - even.drafted.bust)) < 0.1);
  CHECK(std::abs(even.worn.waist - body.waist - 20.0 - (even.fitted.waist - even.drafted.waist)) <
        0.1);
  CHECK(even.pattern.pieces.size() == 2);
  const WornBlock odd =
      worn_with(block, ease, {correction("lower", "one_shoulder", 6.0, BodySide::Left)});
  CHECK(odd.pattern.pieces.size() == 4);
  CHECK(errors_of(odd.pattern).empty());
  CHECK(std::abs(odd.worn.bust - body.bust - 40.0) < 0.5);
  CHECK(refusal_of(block, {"", 40.0, 20.0, 5.0, 5.0}) == std::nullopt);
}

TEST_CASE("What a block cannot be worn with is refused with the nearest that it can",
          "[kMostAtSideEdge]") {
  // Half of half a girth at each edge: 20 mm of it are 80 mm of the whole girth.
  for (const Session& session : each_person(20, 5)) {
    const CheckedBlock block = checked_block(session);
    WearingEase ease{"", 50.0 + 79.9, 25.0};
    CHECK_FALSE(refusal_of(block, ease));
    ease.bust = 50.0 + 90.0;
    const auto refusal = refusal_of(block, ease);
    REQUIRE(refusal);
    CHECK(refusal->code == "fit.wearing_ease");
    CHECK(refusal->where == "wearing_ease.bust");
    CHECK_THAT(refusal->message.plain(), Catch::StartsWith("bust ease 140 mm"));
    CHECK_THAT(refusal->hint.plain(), Catch::Contains("nearest"));
    ease.bust = 50.0 + 79.0;  // which is what it says, or next to it
    CHECK_FALSE(refusal_of(block, ease));
  }
}

TEST_CASE("Of the underarm and the shoulder a named ease takes what the block has room for") {
  const auto is_note = [](const Problem& p) { return p.code == "fit.wearing_ease"; };
  int noted = 0;
  for (const Session& session : each_person(people(90), 5)) {
    const CheckedBlock block = checked_block(session);
    WearingEase ease = kWearingEases[2];
    CHECK(std::ranges::none_of(worn_with(block, ease).remarks, is_note));
    // More than most shoulders have.
    ease.shoulder_in = 95.0;
    const WornBlock worn = worn_with(block, ease);
    const auto note = std::ranges::find_if(worn.remarks, is_note);
    if (note == worn.remarks.end()) continue;
    ++noted;
    CHECK(note->severity == Severity::Note);
    CHECK(note->where == "wearing_ease.shoulder_in");
    ease.name = "";  // asked for in lengths it is refused
    const auto refusal = refusal_of(block, ease);
    REQUIRE(refusal);
    CHECK(refusal->where == note->where);
  }
  CHECK(noted >= people(90) / 90);
}

TEST_CASE("Without an armhole its roundness does not limit the bust") {
  int kept = 0, cut_away = 0;
  for (const Session& session : each_person(people(90), 5)) {
    const CheckedBlock block = checked_block(session);
    WearingEase ease{"", -20.0, 5.0};
    kept += refusal_of(block, ease) ? 1 : 0;
    ease.has_armhole = false;
    cut_away += refusal_of(block, ease) ? 1 : 0;
  }
  CHECK(kept >= people(90) / 90);
  CHECK(cut_away == 0);
}
