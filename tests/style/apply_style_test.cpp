#include "blockwright/base/error.hpp"
#include "blockwright/check/check.hpp"
#include "blockwright/dart/truing.hpp"
#include "blockwright/fit/apply.hpp"
#include "blockwright/fit/wearing_ease.hpp"
#include "blockwright/style/style.hpp"
#include "steps.hpp"
#include "support/blocks.hpp"
#include "support/each_person.hpp"
#include "support/random.hpp"

#include <catch2/catch.hpp>

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <limits>

using namespace blockwright;

namespace {

namespace fs = std::filesystem;

std::vector<fs::path> example_styles() {
  std::vector<fs::path> files;
  for (const auto& entry :
       fs::directory_iterator(fs::path(BLOCKWRIGHT_SOURCE_DIR) / "examples/styles")) {
    files.push_back(entry.path());
  }
  std::sort(files.begin(), files.end());
  return files;
}

std::string text_of(const fs::path& path) {
  std::ifstream in(path);
  return {std::istreambuf_iterator<char>(in), {}};
}

}  // namespace

TEST_CASE("The example styles make sound pieces of many people's blocks") {
  const auto files = example_styles();
  REQUIRE(files.size() >= 5);
  for (const fs::path& file : files) {
    INFO(file.filename().string());
    const Style style = read_style(text_of(file), file.filename().string());
    int made = 0;
    for (const Session& session : each_person(30, 71)) {
      const Pattern block = checked_block(session).block.pattern;
      try {
        const StyledPattern styled = apply_style(block, style, kUsualCup);
        ++made;
        CHECK(styled.steps.size() == style.steps.size());
        for (const Problem& problem : check_pattern(styled.pattern)) FAIL_CHECK(to_text(problem));
      } catch (const InputError& error) {
        INFO(to_text(error.problem()));
        CHECK(error.problem().code.rfind("dart.", 0) == 0);
      }
    }
    CHECK(made >= 20);
  }
}

TEST_CASE("The bodice with one waist dart is made of anybody's block, and sound as printed") {
  const fs::path file =
      fs::path(BLOCKWRIGHT_SOURCE_DIR) / "examples/styles/one-waist-dart-bodice.json";
  const Style style = read_style(text_of(file), file.filename().string());
  for (const Session& session : each_person(people(300), 73)) {
    const Pattern pieces = apply_style(checked_block(session).block.pattern, style, 250.0).pattern;
    CHECK(pieces.piece("front").darts.size() == 1);
    CHECK(check_pattern(pieces).empty());
    CHECK(check_pattern(true_darts(pieces).pattern).empty());
  }
}

TEST_CASE("Worn with any ease, all darts go into one and a hem ends the bodice, sound as printed") {
  using enum MeasurementName;
  Style style;
  style.steps = {OneDart{"front.waist"}, HemDesign{std::nullopt, 90.0}};
  for (const WearingEase& ease : kWearingEases) {
    INFO(ease.name);
    for (const Session& session : each_person(people(75), 73)) {
      const CheckedBlock block = checked_block(session);
      const double bust = block.body.length(BustGirth).mm();
      const double waist = block.body.length(WaistGirth).mm();
      const Pattern worn = with_wearing_ease(block.block.pattern, {}, ease, {bust, waist}).pattern;
      const Pattern pieces = apply_style(worn, style, kUsualCup).pattern;
      CHECK(pieces.piece("front").darts.size() == 1);
      CHECK(check_pattern(pieces).empty());
      CHECK(check_pattern(true_darts(pieces).pattern).empty());
    }
  }
}

TEST_CASE("The strapped top is made of anybody's block as it is worn, and sound as printed") {
  using enum MeasurementName;
  const fs::path file = fs::path(BLOCKWRIGHT_SOURCE_DIR) / "examples/styles/strapped-top.json";
  const Style style = read_style(text_of(file), file.filename().string());
  REQUIRE(style.wearing_ease.has_value());
  int people_made = 0, low_waists = 0;
  for (const Session& session : each_person(people(300), 74)) {
    const CheckedBlock block = checked_block(session);
    const double bust = block.body.length(BustGirth).mm();
    const double waist = block.body.length(WaistGirth).mm();
    const Pattern worn =
        with_wearing_ease(block.block.pattern, {}, *style.wearing_ease, {bust, waist}).pattern;
    try {
      const Pattern top = apply_style(worn, style, kUsualCup).pattern;
      ++people_made;
      for (const Problem& problem : check_pattern(top)) FAIL_CHECK(to_text(problem));
      for (const Problem& problem : check_pattern(true_darts(top).pattern)) {
        FAIL_CHECK(to_text(problem));
      }
      CHECK(find_named(top.pieces, "strap") != nullptr);
    } catch (const InputError& error) {
      INFO(to_text(error.problem()));
      CHECK(error.problem().code.starts_with("garment."));
      ++low_waists;
    }
  }
  CAPTURE(people_made, low_waists);
  CHECK(low_waists <= people_made / 50);
}

TEST_CASE("Steps are done in order, each with what it did in words") {
  Style style;
  style.steps = {PivotMove{"front.shoulder", "front.side", 0.5, std::nullopt, std::nullopt},
                 PivotMove{"front.side", "front.waist", 1.0, std::nullopt, std::nullopt}};
  const StyledPattern styled = apply_style(ordinary_block(), style, kUsualCup);
  REQUIRE(styled.steps.size() == 2);
  CHECK(styled.steps[0].words == "pivot front.shoulder to front.side, 50 % of it");
  CHECK(styled.steps[0].after.piece("front").darts.size() == 3);
  CHECK(styled.steps[1].after.piece("front").darts.size() == 2);
  CHECK(styled.pattern.piece("front").darts.size() == 2);
}

TEST_CASE("A step that cannot be done names the line of the value that is wrong, or its own") {
  const auto where = [](const std::string& step) {
    const std::string text = R"({"format": "blockwright-style-1", "name": "n", "steps": [
  {"pivot": {"dart": "front.shoulder", "to": "front.side", "part": 0.5}},
)" + step + "]}";
    try {
      apply_style(ordinary_block(), read_style(text, "s.json"), kUsualCup);
    } catch (const InputError& error) {
      return error.problem().code + " " + error.problem().where;
    }
    return std::string("it was done");
  };
  // The third line holds the step, the fourth its first key.
  CHECK(where(R"({"pivot": {
"dart": "front.sholder", "to": "front.waist"}})") ==
        "dart.unknown s.json:4:9 steps[1].pivot.dart: front.sholder");
  CHECK(where(R"({"pivot": {
"dart": "front.shoulder",
"to": "front.hem:0.5"}})") == "dart.unknown s.json:5:7 steps[1].pivot.to: front.hem");
  CHECK(where(R"({"pivot": {
"dart": "front.shoulder",
"to": "front.side:half"}})") == "dart.place s.json:5:7 steps[1].pivot.to: side:half");
  CHECK(where(R"({"pivot": {
"dart": "front.shoulder", "to": "front.waist",
"part": 1.5}})") == "dart.part s.json:5:9 steps[1].pivot.part: front.shoulder");
  CHECK(where(R"({"pivot": {
"dart": "front.shoulder", "to": "front.waist",
"angle": 170}})") == "dart.part s.json:5:10 steps[1].pivot.angle: front.shoulder");
  CHECK(where(R"({"pivot": {
"dart": "front.shoulder", "to": "front.waist",
"hold_back": -1}})") == "dart.place s.json:5:14 steps[1].pivot.hold_back: front.shoulder");
  CHECK(where(R"({"split": {
"dart": "front.waist",
"shares": [0.5, 0.25]}})") == "dart.part s.json:5:11 steps[1].split.shares: front.waist");
  CHECK(where(R"({"split": {
"dart": "front.waist",
"spacing": 0.5}})") == "dart.place s.json:5:12 steps[1].split.spacing: front.waist");
  CHECK(where(R"({"dart_point": {
"dart": "front.waist",
"hold_back": 1e308}})") == "dart.place s.json:5:14 steps[1].dart_point.hold_back: front.waist");
  CHECK(where(R"({"gathers": {
"dart": "front.waist",
"over": 1e308}})") == "dart.place s.json:5:9 steps[1].gathers.over: front.waist");
  CHECK(where(R"({"spread": {"from": "back.waist:0.2", "to": "back.neck",
"by": -4}})") == "dart.place s.json:4:7 steps[1].spread.by: back.waist:0.2");
  CHECK(where(R"({"spread": {"from": "back.waist:0.2", "to": "back.neck", "by": 4,
"lines": 99}})") == "dart.place s.json:4:10 steps[1].spread.lines: back.waist:0.2");
  CHECK(where(R"({"spread": {"from": "back.waist:0.2", "to": "back.neck", "by": 4, "lines": 2,
"apart": 1e9}})") == "dart.place s.json:4:10 steps[1].spread.apart: back.waist:0.2");
  CHECK(where(R"({"panel_seam": {"from": "front.shoulder", "to": "front.waist",
"centre_panel": "Über"}})") == "dart.panel s.json:4:17 steps[1].panel_seam.centre_panel: Über");
  // No one value is wrong.
  CHECK(where(R"({"pivot": {
"dart": "front.shoulder", "to": "back.shoulder"}})") ==
        "dart.blocked s.json:4:9 steps[1].pivot.dart: front.shoulder");
}

TEST_CASE("Every step names the piece that it is done on, but for edges of all of them") {
  for (StyleStep& step : step_of_each_name()) {
    const StepRow row = row_of(step);
    INFO(row.name);
    if (row.name == "hem" || row.name == "neckline" || row.name == "top_edge" ||
        row.name == "armhole" || row.name == "centre_seam")
      continue;
    if (row.finishes) continue;
    CHECK(std::ranges::any_of(row.keys, [](const StepKey& key) { return key.text != nullptr; }));
  }
}

TEST_CASE("A step where there is its dart is left out of a block without it, and only then") {
  int with = 0, without = 0;
  const Style style = read_style(R"({"format": "blockwright-style-1", "name": "n", "steps": [
    {"merge": {"dart": "front.waist_outer", "into": "front.waist", "where_there": true}}]})",
                                 "s.json");
  Style always = style;
  always.where_there.clear();
  for (const Session& session : each_person(40, 71)) {
    const Pattern block = checked_block(session).block.pattern;
    const StyledPattern styled = apply_style(block, style, kUsualCup);
    REQUIRE(styled.steps.size() == 1);
    const bool is_there = find_named(block.piece("front").darts, "waist_outer") != nullptr;
    (is_there ? with : without) += 1;
    CHECK((styled.pattern.piece("front").darts.size() < block.piece("front").darts.size()) ==
          is_there);
    if (is_there) continue;
    const Problems& remarks = styled.steps.front().remarks;
    REQUIRE(remarks.size() == 1);
    CHECK(remarks.front().severity == Severity::Note);
    CHECK(remarks.front().code == "dart.unknown");
    CHECK_THAT(remarks.front().message.plain(), Catch::Contains("the step is left out"));
    CHECK_THROWS_AS(apply_style(block, always, kUsualCup), InputError);
  }
  CHECK(with > 3);
  CHECK(without > 3);
  // What else is wrong is refused.
  Style wrong{"n", {PivotMove{"front.shoulder", "front.side:7"}}};
  wrong.where_there = {0};
  CHECK_THROWS_AS(apply_style(ordinary_block(), wrong, kUsualCup), InputError);
}

TEST_CASE("A dart is pressed and held back as the style says") {
  Style style;
  style.steps = {PressMove{"front.waist", PressMove::Towards::Side},
                 PointMove{"front.waist", 33.0}};
  const Pattern block = ordinary_block();
  const Dart before = block.piece("front").dart("waist");
  const Dart after = apply_style(block, style, kUsualCup).pattern.piece("front").dart("waist");
  CHECK(before.pressed_to == Leg::First);
  CHECK(after.pressed_to == Leg::Second);
  CHECK(distance(after.apex, after.point) == Approx(33.0));
  CHECK(after.apex == before.apex);
}

TEST_CASE("An edge that a fitting left too short for a dart is refused as short") {
  const Pattern drafted = ordinary_block();
  const Piece& whole = drafted.piece("front");
  const auto row = [](int number, double by) {
    return RowAmount{CorrectionRow{number}, 1, by, AmountAs::Length, BodySide::Both, ""};
  };
  // All that makes a side shorter, each by about what it takes at most: shoulders taken up, the
  // shoulder point lower, the armhole larger, the underarm lower.
  const double rest = sewn_length(whole, whole.edge("side")) - 8.0 - 60.0 - 20.0 - 24.0;
  const Pattern block =
      apply_rows(drafted, {row(50, 60.0), row(12, 20.0), row(25, 24.0), row(19, rest)}).pattern;
  const Piece& front = block.piece("front");
  REQUIRE(sewn_length(front, front.edge("side")) < 10.0);
  const PivotMove move{"front.shoulder", "front.side:0.5", 1.0, {}, {}};
  try {
    apply_style(block, {"test", {move}}, kUsualCup);
    FAIL("a dart was opened on an edge that has no room for it");
  } catch (const InputError& error) {
    CHECK(error.problem().code == "dart.place");
    CHECK_THAT(error.problem().message.plain(), Catch::Contains("has no room for a dart"));
  }
}

TEST_CASE("A step with lengths beyond all sense can be told, and is refused by name") {
  constexpr double infinity = std::numeric_limits<double>::infinity();
  SplitMove split{"front.waist"};
  split.spacing = 1e20;
  CHECK(words_of(split).plain() == "split front.waist into 2, fanned, 1e+20 mm apart");
  CHECK(words_of(PointMove{"front.waist", infinity}).plain() ==
        "end front.waist no number short of its apex");
  CHECK(words_of(PivotMove{"front.waist", "front.side", 1e300, {}, {}}) ==
        "pivot front.waist to front.side, 1e+302 % of it");
  const std::string text = R"({"format": "blockwright-style-1", "name": "a", "steps": [
    {"dart_point": {"dart": "front.waist", "hold_back": 1e308}}]})";
  try {
    apply_style(ordinary_block(), read_style(text, "a.json"), kUsualCup);
    FAIL("it was applied");
  } catch (const InputError& error) {
    CHECK(error.problem().code == "dart.place");
  }
}

TEST_CASE("A style says its allowances last, and a step behind them is refused", "[finishing]") {
  const auto styled = [](const std::string& steps) {
    const std::string text =
        R"({"format": "blockwright-style-1", "name": "n", "steps": [)" + steps + "]}";
    return apply_style(ordinary_block(), read_style(text, "s.json"), kUsualCup);
  };
  const std::string allowance =
      R"({"allowance": {"seams": 1.5, "hem": 2.5, "edges": {"back.side": 2}}})";
  const std::string hem = R"({"hem": {"above_waist": 3}})";
  const StyledPattern done = styled(hem + ", " + allowance);
  CHECK(done.pattern.piece("front").edge("hem").finish == EdgeFinish{Finish::Turned, 25.0});
  CHECK(done.pattern.piece("back").edge("side").finish == EdgeFinish{Finish::Seam, 20.0});
  CHECK(done.steps.back().words.plain() ==
        "leave 15 mm at seams, 25 mm at the hem and 10 mm at enclosed edges");
  REQUIRE(done.steps.back().remarks.size() == 1);
  try {
    styled(allowance + ",\n" + hem);
    FAIL("the hem was drawn behind the allowances");
  } catch (const InputError& error) {
    CHECK(error.problem().code == "style.order");
    CHECK(error.problem().where == "s.json:2:9 steps[1].hem: hem");
  }
}

TEST_CASE("A width that cannot be sewn is refused at its line", "[finishing]") {
  try {
    const Style style = read_style(R"({"format": "blockwright-style-1", "name": "n", "steps": [
  {"allowance": {"seams": 1.5,
"hem": 9}}]})",
                                   "s.json");
    apply_style(ordinary_block(), style, kUsualCup);
    FAIL("it was cut with 9 cm");
  } catch (const InputError& error) {
    CHECK(error.problem().code == "garment.allowance");
    CHECK(error.problem().where == "s.json:3:8 steps[0].allowance.hem: hem");
  }
}

TEST_CASE("Finishing steps in any order move no line, and are refused by name or sound",
          "[finishing]") {
  const Pattern block = ordinary_block();
  int done = 0;
  for (Random& random : each_random(400, 95)) {
    Style style;
    for (int i = random.whole(1, 4); i > 0; --i) {
      const int kind = random.whole(0, 3);
      if (kind == 0) {
        style.steps.emplace_back(
            OpeningPlan{static_cast<OpeningPlan::At>(random.whole(0, 2)),
                        static_cast<Closure>(random.whole(0, 1)),  // zips: buttons draw edges
                        {}});
      } else if (kind == 1) {
        const char* edges[] = {"neckline", "armhole", "hem", "front.side", "back.armhole"};
        style.steps.emplace_back(BindingPlan{
            {{edges[random.whole(0, 4)]}}, random.between(3.0, 26.0), random.between(0.0, 9.0)});
      } else if (kind == 2) {
        const char* edges[] = {"neckline", "armhole", "top_edge", "front.armhole"};
        FacingPlan plan{{edges[random.whole(0, 3)]}};
        if (random.whole(0, 1) == 1) plan.width = random.between(35.0, 75.0);
        plan.roll = random.between(0.8, 3.2);
        if (random.whole(0, 3) == 0) plan.edges = {"neckline", "armhole"};
        plan.in_one = random.whole(0, 2) == 0;
        style.steps.emplace_back(plan);
      } else {
        Allowances allowances;
        allowances.hem = random.between(0.0, 65.0);
        style.steps.emplace_back(allowances);
      }
    }
    try {
      const Pattern finished = apply_style(block, style, kUsualCup).pattern;
      CHECK(check_pattern(finished).empty());
      for (const Piece& piece : block.pieces) {
        for (const Edge& edge : piece.edges) {
          CHECK(finished.piece(piece.name).edge(edge.name).path == edge.path);
        }
      }
      ++done;
    } catch (const InputError& error) {
      CHECK(error.problem().code.starts_with("garment."));
      CHECK(!error.problem().hint.empty());
    }
  }
  CHECK(done > 50);
}

TEST_CASE("A button stand comes behind what draws edges and before what finishes them") {
  const OpeningPlan buttons{OpeningPlan::At::CentreFront, Closure::Buttons};
  const auto refusal = [](const std::vector<StyleStep>& steps) -> std::string {
    try {
      (void)apply_style(ordinary_block(), {"", steps}, kUsualCup);
    } catch (const InputError& error) {
      return error.problem().code + " " + error.problem().where;
    }
    return "";
  };
  const BindingPlan binding{{{"armhole"}}};
  NecklineDesign v;
  v.shape = NeckShape::V;
  v.depth_share = 0.5;
  CHECK(refusal({v, buttons, binding, Allowances{}}).empty());
  CHECK(refusal({buttons, v}) == "style.order neckline");
  CHECK(refusal({binding, buttons}) == "style.order opening");
  CHECK(refusal({Allowances{}, buttons}) == "style.order opening");
  CHECK(draws_edges(buttons));
  CHECK(is_finishing(buttons));
  CHECK(!draws_edges(OpeningPlan{}));
}
