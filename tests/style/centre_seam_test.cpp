// A centre front that is a seam.
#include "blockwright/dart/centre_seam.hpp"

#include "blockwright/block/kinds.hpp"
#include "blockwright/check/check.hpp"
#include "blockwright/dart/truing.hpp"
#include "blockwright/fit/apply.hpp"
#include "blockwright/fit/wearing_ease.hpp"
#include "blockwright/garment/making.hpp"
#include "blockwright/style/style.hpp"
#include "support/blocks.hpp"
#include "support/each_person.hpp"

#include <catch2/catch.hpp>

#include <algorithm>
#include <fstream>
#include <sstream>

using namespace blockwright;

namespace {

Style style_of(const std::string& steps) {
  return read_style(R"({"format": "blockwright-style-1", "name": "n", "steps": [)" + steps + "]}",
                    "s.json");
}

Pattern styled(const Pattern& block, const std::string& steps) {
  return apply_style(block, style_of(steps), kUsualCup).pattern;
}

constexpr const char* kSeamStep = R"({"centre_seam": {"at": "front"}})";

Style example() {
  std::ifstream file(BLOCKWRIGHT_SOURCE_DIR "/examples/styles/centre-seam-top.json");
  std::ostringstream text;
  text << file.rdbuf();
  return read_style(text.str(), "centre-seam-top.json");
}

}  // namespace

TEST_CASE("A centre seam cuts the front as a pair, moves no line and is notched at the bust line") {
  const Pattern block = ordinary_block();
  const Pattern seamed = styled(block, kSeamStep);
  const Piece &was = block.piece("front"), &front = seamed.piece("front");
  CHECK(front.cut_on == CutOn::Pair);
  CHECK(front.edge("centre_front").role == EdgeRole::Seam);
  for (const Edge& edge : was.edges) {
    CHECK(length(front.edge(edge.name).path) == Approx(length(edge.path)));
  }
  const auto* notch = find_named(front.notches, "centre_front.bust");
  REQUIRE(notch != nullptr);
  CHECK(notch->mate_piece == "front");
  const Point at = point_at_length(front.edge("centre_front").path, notch->along);
  CHECK(at.y == Approx(find_line(front, LineUse::Bust)->path.start().y).margin(0.01));
  CHECK(find_named(seamed.seams, "centre_front") != nullptr);
  CHECK(check_pattern(seamed).empty());
  // Twice is once.
  const Pattern twice = styled(seamed, kSeamStep);
  CHECK(twice.piece("front").notches.size() == front.notches.size());
  CHECK(twice.seams.size() == seamed.seams.size());
}

TEST_CASE("Later steps leave the centre front a seam") {
  const Pattern moved = styled(ordinary_block(), std::string(kSeamStep) + R"(,
    {"pivot": {"dart": "front.shoulder", "to": "front.waist"}},
    {"hem": {"above_waist": 3}}, {"neckline": {"shape": "round"}},
    {"allowance": {"centre": 2}})");
  const Piece& front = moved.piece("front");
  CHECK(front.cut_on == CutOn::Pair);
  CHECK(front.edge("centre_front").finish == EdgeFinish{Finish::Seam, 20.0});
  const Pattern panels = styled(ordinary_block(), std::string(kSeamStep) + R"(,
    {"panel_seam": {"from": "front.shoulder", "to": "front.waist"}})");
  const Piece& centre = piece_of(panels, kBodiceFront);
  CHECK(centre.cut_on == CutOn::Pair);
  CHECK(check_pattern(panels).empty());
  // Without the step a straight centre lies on the fold.
  CHECK(styled(ordinary_block(), R"({"hem": {"above_waist": 3}})").piece("front").cut_on ==
        CutOn::Fold);
}

TEST_CASE("A centre front with a dart on it is refused, and one with a seam can open") {
  try {
    styled(ordinary_block(), std::string(R"({"pivot": {"dart": "front.shoulder",
      "to": "front.centre_front"}}, )") +
                                 kSeamStep);
    FAIL("a dart on the centre was taken");
  } catch (const InputError& error) {
    CHECK(error.problem().code == "dart.blocked");
  }
  const std::string opening = R"({"opening": {"at": "centre_front", "with": "open_zip"}})";
  CHECK_THROWS_AS(styled(ordinary_block(), opening), InputError);
  const Pattern opened = styled(ordinary_block(), std::string(kSeamStep) + ", " + opening);
  CHECK(opened.piece("front").edge("centre_front").role == EdgeRole::Opening);
  CHECK_THROWS_AS(styled(ordinary_block(), opening + ", " + kSeamStep), InputError);
}

TEST_CASE("Two fronts of a body whose sides differ get notches that meet") {
  for (const Session& session : each_person(people(10), 5)) {
    const Pattern sides =
        apply_rows(checked_block(session).block.pattern,
                   {{CorrectionRow{47}, 1, 4.0, AmountAs::PerHalf, BodySide::Left, ""}})
            .pattern;
    const Pattern seamed = styled(sides, kSeamStep);
    CHECK(seamed.seams.size() == sides.seams.size());
    for (const char* name : {"front_right", "front_left"}) {
      const Piece& front = seamed.piece(name);
      CHECK(front.cut_on == CutOn::One);
      REQUIRE(find_named(front.notches, "centre_front.bust") != nullptr);
      CHECK(find_named(front.notches, "centre_front.bust")->mate_piece != name);
    }
    for (const Problem& problem : check_pattern(seamed)) {
      CHECK(problem.severity != Severity::Error);
    }
  }
}

TEST_CASE("The top with a centre-front seam is made of anybody's block") {
  using enum MeasurementName;
  const Style style = example();
  int people_made = 0, refused = 0;
  for (const Session& session : each_person(people(60), 75)) {
    const CheckedBlock block = checked_block(session);
    const double bust = block.body.length(BustGirth).mm();
    const double waist = block.body.length(WaistGirth).mm();
    const Pattern worn =
        with_wearing_ease(block.block.pattern, {}, *style.wearing_ease, {bust, waist}).pattern;
    try {
      const Pattern top = apply_style(worn, style, kUsualCup).pattern;
      ++people_made;
      CHECK(top.piece("front").cut_on == CutOn::Pair);
      for (const Problem& problem : check_pattern(true_darts(top).pattern)) {
        FAIL_CHECK(to_text(problem));
      }
      const std::vector<Wording> sewing = making_of(top).to_sew;
      CHECK(std::ranges::any_of(sewing, [](const Wording& line) {
        return line.plain().starts_with("sew the centre front and centre back");
      }));
    } catch (const InputError& error) {
      CHECK(error.problem().code.starts_with("garment."));
      ++refused;
    }
  }
  CHECK(refused <= people_made / 20);
}
