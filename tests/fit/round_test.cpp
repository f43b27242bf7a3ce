#include "blockwright/block/neckline.hpp"
#include "blockwright/geometry/path.hpp"
#include "blockwright/geometry/solve.hpp"
#include "fit/fit_people.hpp"
#include "hollows.hpp"
#include "support/each.hpp"

#include <catch2/catch.hpp>

#include <array>

using namespace blockwright;
using namespace blockwright_tests;

// Necklines and armholes stay round and as hollow as they are drafted. The bounds are ours: a
// sharper one cannot be bound or faced; drafted back armholes lie 0.13 to 0.28 of the straight line
// from underarm to shoulder point inside it.

namespace {

/// One of the pairs of words for both sides, by an amount within its row's range.
RowAmount any_row(Random& random) {
  const auto& words = correction_words();
  while (true) {
    const CorrectionWords& chosen =
        words[static_cast<std::size_t>(random.whole(0, static_cast<int>(words.size()) - 1))];
    const FittingRow& row = fitting_row(chosen.row);
    if (row.stage == kOneSideStage) continue;
    const double by = random.between(row.amount.least.mm(), row.amount.most.mm());
    return {chosen.row,       chosen.sign,    by,
            AmountAs::Length, BodySide::Both, std::string(chosen.place)};
  }
}

/// The usual half with a line drawn anew between its ends, this share of their distance hollow.
HalfBlock with_hollow(Opened HalfBlock::*piece, BlockEdge edge, double share) {
  HalfBlock half = halves_of(usual_block()).right;
  auto& stretches = (half.*piece).edges[index_of(edge)].stretches;
  const Point from = stretches.front().start(), to = stretches.back().end();
  // A cubic whose handles end so far off its chord lies three quarters of that off it.
  const Vec off = share / 0.75 * left_of(to - from);
  stretches = {Path({CubicCurve{from, from + off, to + off, to}})};
  return half;
}

/// What is said of it, if one correction made it so.
std::string said_of(Opened HalfBlock::*piece, BlockEdge edge, double share) {
  const HalfBlock usual = halves_of(usual_block()).right;
  const HalfBlock half = with_hollow(piece, edge, share);
  const Problems problems = judge_hollows({usual, half}, {{"shoulder shorter", {}}});
  return problems.empty() ? "" : problems.front().message.plain();
}

/// A neckline nearly straight to a corner of its end tangents 20 mm off the centre front; the
/// nearer its last handle reaches to that, the less of its turn it makes at its end.
Path with_hook(double reach) {
  const Point side_neck{60.0, 80.0}, corner{20.0, 0.0};
  return Path(
      {corner_curve(side_neck, corner - side_neck, {0.0, 0.0}, {-1.0, 0.0}, Ends{0.6, reach})});
}

/// One that makes this share of its turn within 15 mm of its end.
Path with_turn_at_end(double share) {
  const auto less = [&](double reach) { return share - turn_at_end(with_hook(reach)); };
  return with_hook(solve_between(less, {0.1, 0.9}, 1e-9));
}

/// What is said of a front with that neckline, or of such a front before and after a correction.
Problems said_of_neckline(const Path& before, const Path& after) {
  const auto with = [](const Path& neckline) {
    HalfBlock half = halves_of(usual_block()).right;
    half.front.edges[index_of(BlockEdge::Neckline)].stretches = {neckline};
    return half;
  };
  const HalfBlock was = with(before), is = with(after);
  return judge_hollows({was, is}, {{"front neck lower", {}}});
}

/// Of the hollows, the first that is warned of.
std::optional<Problem> hollow_warning(const FittedPattern& fitted) {
  const auto found = std::ranges::find_if(fitted.remarks, [](const Problem& problem) {
    const std::string text = problem.message.plain();
    return has(text, "has become") || has(text, "runs nearly straight");
  });
  return found == fitted.remarks.end() ? std::nullopt : std::optional(*found);
}

double radius_of(const Pattern& pattern, const char* piece, const char* edge) {
  return least_radius(pattern.piece(piece).edge(edge).path);
}

}  // namespace

TEST_CASE("No two rows in their ranges turn a neckline or an armhole within less than 8 mm") {
  int fitted = 0, tried = 0;
  for (Random& random : each_random(people(3000), 8)) {
    const Pattern& block =
        blocks()[static_cast<std::size_t>(random.whole(0, static_cast<int>(blocks().size()) - 1))];
    const Outcome got = outcome(block, {any_row(random), any_row(random)});
    ++tried;
    if (!got.fitted) continue;
    ++fitted;
    for (const char* piece : {"front", "back"}) {
      for (const char* edge : {"neckline", "armhole"}) {
        const double was = radius_of(block, piece, edge);
        const double is = radius_of(got.fitted->pattern, piece, edge);
        if (is >= 8.0 || is >= was - 1e-6) continue;
        INFO(piece << " " << edge);
        CHECK(is >= 8.0);
      }
    }
  }
  // Hardly any pair is refused for it, or for anything else.
  CHECK(fitted > tried * 93 / 100);
}

TEST_CASE("A front neck narrowed at the sides is redrawn as it would be drafted, not patched") {
  // The corner of the drafted neckline's end tangents keeps 0.55 of its width from the centre
  // front.
  for (const Pattern& block : each_block(10)) {
    const Outcome got =
        outcome(block, {{numbered(8), -1, 6.0, AmountAs::Length, BodySide::Both, ""}});
    if (!got.fitted) continue;
    const Path& was = block.piece("front").edge("neckline").path;
    const Path& is = got.fitted->pattern.piece("front").edge("neckline").path;
    const auto room = [](const Path& neck) {
      return neckline_room(neck.start(), start_tangent(neck), neck.end(), end_tangent(neck));
    };
    CHECK(room(is) >= std::fmin(room(was), 0.55) - 0.001);
    CHECK(least_radius(is) >= 0.65 * least_radius(was));
  }
}

TEST_CASE("A line is called nearly straight or very hollow beyond its limits and not within them",
          "[kLeastFrontArmholeHollow][kMostFrontArmholeHollow][kLeastBackArmholeHollow]"
          "[kMostBackArmholeHollow][kLeastFrontNeckHollow][kMostFrontNeckHollow]"
          "[kLeastBackNeckHollow][kMostBackNeckHollow]") {
  const struct {
    Opened HalfBlock::*piece;
    BlockEdge edge;
    double least, most;
  } lines[] = {{&HalfBlock::front, BlockEdge::Armhole, 0.14, 0.75},
               {&HalfBlock::back, BlockEdge::Armhole, 0.09, 0.30},
               {&HalfBlock::front, BlockEdge::Neckline, 0.075, 0.20},
               {&HalfBlock::back, BlockEdge::Neckline, 0.03, 0.25}};
  for (const auto& [piece, edge, least, most] : lines) {
    CAPTURE(least, most);
    CHECK(has(said_of(piece, edge, least - 0.001), "has become nearly straight"));
    CHECK(said_of(piece, edge, least + 0.001).empty());
    CHECK(said_of(piece, edge, most - 0.001).empty());
    CHECK(has(said_of(piece, edge, most + 0.001), "has become very hollow"));
  }
}

TEST_CASE("A front neckline that turns by more than 0.7 at its end has a hook", "[kMostHook]") {
  const Path round = with_hook(0.9);
  const auto is_told = [&](double share) {
    const Path neckline = with_turn_at_end(share);
    REQUIRE(turn_at_end(neckline) == Approx(share).margin(1e-6));
    const Problems problems = said_of_neckline(round, neckline);
    return !problems.empty() && has(problems.front().message.plain(), "runs nearly straight");
  };
  CHECK_FALSE(is_told(0.695));
  CHECK(is_told(0.705));
  // What was so before is no correction's doing.
  CHECK(said_of_neckline(with_turn_at_end(0.72), with_turn_at_end(0.72)).empty());
}

TEST_CASE("A straightened neckline is told with its correction and the lengths that may be off") {
  int hooked = 0;
  for (const Pattern& block : each_block(3)) {
    for (const double by : {12.0, 15.0}) {
      const Outcome got =
          outcome(block, {{numbered(18), 1, by, AmountAs::Length, BodySide::Both, ""},
                          {numbered(1), 1, 5.0, AmountAs::Length, BodySide::Both, ""}});
      if (!got.fitted) continue;
      for (const Problem& problem : got.fitted->remarks) {
        if (!has(problem.message.plain(), "runs nearly straight")) continue;
        ++hooked;
        CHECK(problem.where == "take in upper chest");
        CHECK(problem.measurements ==
              std::vector<std::string>{"front_waist_length", "side_neck_to_waist"});
        CHECK(has(problem.hint.plain(),
                  "measure front waist length and side neck to waist again: "
                  "one of them may be off by about"));
        CHECK(turn_at_end(got.fitted->pattern.piece("front").edge("neckline").path) > 0.7);
      }
    }
  }
  // Of the few people of a sanitized build perhaps none.
  CHECK(hooked >= (kSanitized ? 0 : 3));
}

TEST_CASE("No usual amount of a row makes a line too flat or too deep") {
  for (const Pattern& block : each_block(6)) {
    for (const CorrectionWords& words : correction_words()) {
      const FittingRow& row = fitting_row(words.row);
      INFO(words.action << " " << words.place);
      const Outcome got =
          outcome(block, {{words.row, words.sign, row.amount.usual.mm(), AmountAs::Length,
                           side_of(row), std::string(words.place)}});
      if (got.fitted) CHECK_FALSE(hollow_warning(*got.fitted));
    }
  }
}

TEST_CASE("The correction that did most of it is told once, with what to do, and no other") {
  const RowAmount shorter{numbered(9), 1, 13.0, AmountAs::Length, BodySide::Both, ""};
  const RowAmount filled{numbered(22), 1, 16.0, AmountAs::Length, BodySide::Both, ""};
  const FittedPattern flat = apply_rows(usual_block(), {shorter, filled});
  const auto told = hollow_warning(flat);
  REQUIRE(told);
  CHECK(told->severity == Severity::Warning);
  CHECK(told->where == "fill back armhole");
  CHECK(has(told->message.plain(), "the back armhole has become nearly straight"));
  CHECK(has(told->hint.plain(), "scoop back_armhole"));
  CHECK(std::ranges::count(flat.remarks, *told) == 1);
  // The cure: as much again, and nothing is said.
  RowAmount scooped = filled;
  scooped.sign = -1;
  CHECK_FALSE(hollow_warning(apply_rows(usual_block(), {shorter, filled, scooped})));
}
