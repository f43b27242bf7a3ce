// The draft log: every named point of the pieces is told, at its place, with what closed it.
#include "support/blocks.hpp"
#include "support/each.hpp"
#include "support/people.hpp"

#include <catch2/catch.hpp>

#include <algorithm>

using namespace blockwright;

namespace {

bool is_told(const DraftLog& log, const std::string& piece, Point at) {
  return std::any_of(log.begin(), log.end(), [&](const DraftStep& step) {
    return step.piece == piece && distance(step.at, at) < 1e-9;
  });
}

DraftLog steps_of(const CheckedBlock& checked) { return draft_steps(checked.body, checked.asked); }

}  // namespace

TEST_CASE("Every landmark and every dart's apex is told where the piece has it") {
  const CheckedBlock checked = checked_block(survey_people(1, 3).front());
  for (const Piece& piece : checked.block.pattern.pieces) {
    for (const Landmark& landmark : piece.landmarks) {
      INFO(piece.name << " " << landmark.name);
      CHECK(is_told(steps_of(checked), piece.name, landmark.at));
    }
    for (const Dart& dart : piece.darts) CHECK(is_told(steps_of(checked), piece.name, dart.apex));
  }
}

TEST_CASE("Every step has a rule, names its closer and uses each of its lengths") {
  const CheckedBlock checked = checked_block(bust_only(900.0));
  const DraftLog log = steps_of(checked);
  CHECK(log.size() > 25);
  for (const DraftStep& step : log) {
    INFO(step.piece << " " << step.point);
    CHECK_FALSE(step.rule.empty());
    CHECK_FALSE(step.closed_by.empty());
    for (std::size_t i = 0; i < step.lengths.size(); ++i) {
      std::string mark = std::to_string(i);
      mark.insert(0, 1, '{').push_back('}');
      CHECK(step.rule.find(mark) != std::string::npos);
    }
  }
}

TEST_CASE("With compass and ruler the steps arrive at the same points") {
  // The bust point to side neck point tape, and both compass circles of the front shoulder point.
  const CheckedBlock checked = checked_block(survey_people(1, 9).front());
  const Piece& front = checked.block.pattern.piece("front");
  for (const DraftStep& step : each(steps_of(checked))) {
    if (step.piece != "front") continue;
    if (step.point == "side neck point") {
      CHECK(step.at.x == Approx(step.lengths[0]).margin(1e-9));
      CHECK(distance(step.at, front.landmark("bust_point")) == Approx(step.lengths[1]));
    }
    if (step.point == "shoulder point, dart closed") {
      CHECK(distance(step.at, front.landmark("side_neck_point")) == Approx(step.lengths[0]));
      CHECK(norm(step.at - Point{}) == Approx(step.lengths[1]));
    }
  }
}

// The numbers are those of docs/method.md.
TEST_CASE("A step whose number comes from a rule names the rule beside the measurement") {
  const CheckedBlock checked = checked_block(bust_only(900.0));
  const auto closer = [&](const std::string& piece, const std::string& point) {
    for (const DraftStep& step : steps_of(checked)) {
      if (step.piece == piece && step.point == point) return step.closed_by;
    }
    return std::string();
  };
  CHECK(closer("back", "side neck point") == "neck_base_girth; rule: rise of 0.4 of the width");
  CHECK(closer("back", "blade point") == "rule: 0.5 of the half across back");
  CHECK(closer("front", "across-front point, dart closed") ==
        "across_front; rule: 0.4 of the scye depth above the armpit");
  CHECK(closer("front", "waist dart") ==
        "waist_girth and bust_girth; rule: 0.35 of what is taken out, under the bust point");
  CHECK(closer("front", "side notch") == "rule: at the bust line");
}

TEST_CASE("No step says merely that there is a rule") {
  for (const DraftStep& step : steps_of(checked_block(survey_people(1, 3).front()))) {
    INFO(step.piece << " " << step.point);
    CHECK(step.closed_by.find("rule of the draft") == std::string::npos);
  }
}

// The back armhole has two, so that front and back are told apart: common practice, no source.
TEST_CASE("A notch of two strokes is told as two notches, one of one as a notch") {
  const CheckedBlock checked = checked_block(survey_people(1, 3).front());
  int single = 0, twofold = 0;
  for (const Piece& piece : checked.block.pattern.pieces) {
    for (const Notch& notch : piece.notches) {
      const Point at = point_at_length(piece.edge(notch.edge).path, notch.along);
      for (const DraftStep& step : steps_of(checked)) {
        if (step.point != notch.edge + " notch" || step.piece != piece.name) continue;
        CHECK(distance(step.at, at) < 1e-9);
        INFO(piece.name << " " << notch.edge);
        CHECK(step.rule.starts_with(notch.count == 2 ? "two notches " : "a notch "));
        (notch.count == 2 ? twofold : single) += 1;
      }
    }
  }
  CHECK(single > 0);
  CHECK(twofold > 0);
}
