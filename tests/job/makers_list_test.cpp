// A maker's list from the fitting room: each fault found by its words, mended by what was pinned,
// on four people of the wardrobe. The faults and cures are common practice, no source.
#include "block_pass.hpp"
#include "blockwright/geometry/path.hpp"
#include "blockwright/job/fit_words.hpp"
#include "blockwright/measure/correction_table.hpp"
#include "support/each.hpp"
#include "support/memory_files.hpp"

#include <catch2/catch.hpp>

#include <algorithm>
#include <cmath>
#include <fstream>
#include <sstream>

using namespace blockwright;

namespace {

/// What she says, the correction that must be one of the first two answers, and what she pinned.
struct OnTheList {
  const char* said;
  const char* words;
  const char* pinned;
};

constexpr OnTheList kList[] = {
    {"neck cuts in at the front by a centimetre", "lower front_neck", "1 cm"},
    {"armhole digs in", "lower underarm", "1 cm"},
    {"waist loose", "take_in waist", "2 cm whole_girth"},
    {"1.5 cm out at each centre back", "take_in centre_back", "1.5 cm per_half"},
    {"bust line too low", "take_up shoulders", "1 cm"},
    {"bust points too far apart (pinched centre front)", "narrow bust_points", "0.6 cm per_half"},
    {"shoulder stands off at its end", "lower shoulder_point", "0.6 cm"},
    {"sides not flat", "take_in side", "0.5 cm per_seam"},
    {"neck sides to come in by 3 cm", "narrow side_neck", "1.5 cm"},  // 3 cm of the whole width
    {"front hem too short over a full bust", "lower front_hem", "1 cm"},
    {"tight at the bust line", "let_out side_at_bust", "1 cm per_half"},
    {"petite: cloth taken in at the shoulders", "take_up shoulders", "1.5 cm"},
};

constexpr const char* kPeople[] = {"ondine-marsh", "pippa-quill", "tamsin-reed",
                                   "wilhelmina-crake"};

MemoryFiles files_of(const std::string& person) {
  std::ifstream in(BLOCKWRIGHT_SOURCE_DIR "/examples/wardrobe/" + person + ".json");
  std::ostringstream text;
  text << in.rdbuf();
  MemoryFiles files;
  files.files["her.json"] = text.str();
  return files;
}

/// Her block with this correction alone.
BlockRun mended(const std::string& person, const OnTheList& item) {
  MemoryFiles files = files_of(person);
  FitJob job;
  job.client = "her.json";
  job.add = {std::string(item.words) + " " + item.pinned};
  job.date = "2027-01-01";
  job.toile = 9;
  const JobResult result = run_fit(job, files);
  for (const Problem& problem : result.problems) UNSCOPED_INFO(to_text(problem));
  REQUIRE(result.exit_code == 0);
  BlockSource source = block_source(files.files["her.json"], job, "");
  source.client.fittings.erase(source.client.fittings.begin(), source.client.fittings.end() - 1);
  return fitted_block(source);
}

/// The lengths that she watches have moved by what she pinned.
void check_watched(const BlockRun& run) {
  REQUIRE(run.fitted.effects.size() == 1);
  const Effect& effect = run.fitted.effects.front();
  const Correction& correction = run.corrections.front().correction;
  for (const LengthMoved& watched : watched_at(effect.row, correction.place).lengths) {
    INFO(watched.name);
    const auto moved = std::ranges::find(effect.moved, watched.name, &MovedLength::name);
    REQUIRE(moved != effect.moved.end());
    CHECK(moved->change() == Approx(watched.per_mm * effect.by).margin(0.5));
  }
}

void check_round(const BlockRun& run) {
  for (const char* piece : each({"front", "back"})) {
    for (const char* edge : each({"neckline", "armhole"})) {
      const auto radius = [&](const Pattern& pattern) {
        return least_radius(pattern.piece(piece).edge(edge).path);
      };
      CHECK(radius(run.fitted.pattern) >= std::fmin(8.0, radius(run.block.pattern)) - 1e-6);
    }
  }
}

}  // namespace

TEST_CASE("Each fault of a maker's list is one of the first two answers to her words") {
  for (const OnTheList& item : each(kList)) {
    INFO(item.said);
    const FitAnswers answers = answers_to(item.said, Unit::Cm);
    const auto first_two = std::min<std::size_t>(answers.best.size(), 2);
    const bool found = std::any_of(
        answers.best.begin(), answers.best.begin() + static_cast<std::ptrdiff_t>(first_two),
        [&](const FitAnswer& answer) { return answer.words == item.words; });
    CHECK(found);
  }
}

TEST_CASE("Each of a maker's list does what she pinned, and leaves round curves, on four people") {
  for (const char* person : each(kPeople)) {
    for (const OnTheList& item : each(kList)) {
      const BlockRun run = mended(person, item);
      INFO(item.words);
      CHECK_FALSE(has_errors(run.problems));
      check_watched(run);
      check_round(run);
    }
  }
}

// The sums of her list that she can check with a tape.
TEST_CASE("A waist pinned in by 2 cm, and 1.5 cm at each centre back, come in by so much") {
  const auto waist = [](const OnTheList& item) {
    const BlockRun run = mended("ondine-marsh", item);
    for (const MovedLength& moved : run.fitted.effects.front().moved) {
      if (moved.name == "waist") return moved.change();
    }
    return 0.0;
  };
  CHECK(waist(kList[2]) == Approx(-20.0).margin(0.5));
  CHECK(waist(kList[3]) == Approx(-30.0).margin(0.5));
}
