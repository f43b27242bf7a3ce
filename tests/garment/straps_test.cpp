// Tops on straps, finished.
#include "blockwright/block/kinds.hpp"
#include "blockwright/dart/hem.hpp"
#include "blockwright/dart/one_dart.hpp"
#include "blockwright/dart/top_edge.hpp"
#include "blockwright/garment/allowances.hpp"
#include "blockwright/garment/binding.hpp"
#include "blockwright/garment/making.hpp"
#include "blockwright/garment/opening.hpp"
#include "dart/refusal.hpp"
#include "support/blocks.hpp"

#include <catch2/catch.hpp>

#include <algorithm>

using namespace blockwright;
using namespace blockwright_tests;

namespace {

using Runs = std::vector<std::vector<std::string>>;

Pattern top_on_straps(double width) {
  TopEdgeDesign design;
  design.shape = TopShape::Sweetheart;
  design.straps = StrapDesign{width, 35.0};
  const Pattern darts = one_dart(ordinary_block(), {"front.waist"}, 150.0).pattern;
  return draw_top_edge(darts, design).pattern;
}

Pattern bound_top(const Runs& runs, double strap = 20.0) {
  return with_binding(top_on_straps(strap), {.runs = runs}).pattern;
}

double sewn_on(const Pattern& pattern, const char* piece, const char* edge) {
  return sewn_length(pattern.piece(piece), pattern.piece(piece).edge(edge));
}

// Without what is sewn in at its ends.
double strap_way(const Pattern& top) { return sewn_on(top, "strap", "long_edge") - 30.0; }

std::vector<std::string> sewing_of(const Pattern& pattern) {
  std::vector<std::string> lines;
  for (const Wording& line : making_of(pattern).to_sew) lines.push_back(line.plain());
  return lines;
}

std::size_t line_with(const std::vector<std::string>& lines, std::string_view words) {
  const auto has_words = [&](const std::string& line) { return line.find(words) != line.npos; };
  const auto line = std::ranges::find_if(lines, has_words);
  REQUIRE(line != lines.end());
  return static_cast<std::size_t>(line - lines.begin());
}

}  // namespace

// Source: one strip round an opening and its strap is as long as their edges, the strap and its
// ends; common practice, no source.
TEST_CASE("One strip binds the top edge and runs on along both straps") {
  const Pattern top = bound_top({{"neckline", "strap"}});
  REQUIRE(top.bindings.size() == 1);
  const Binding& strip = top.bindings.front();
  const double edges =
      2.0 * (sewn_on(top, "front", "neckline") + sewn_on(top, "back", "neckline") + strap_way(top));
  CHECK(strip.strips == 1);
  CHECK(strip.edge_length == Approx(edges));
  CHECK(strip.strip_length <= edges + 2.0 * kStripEnd);
  CHECK(strip.strip_length >= 0.96 * edges + 2.0 * kStripEnd);
  for (const char* edge : {"long_edge", "other_long_edge"}) {
    CHECK(top.piece("strap").edge(edge).finish == EdgeFinish{Finish::Bound, 0.0});
  }
  const Pattern opened =
      with_opening(top, {.at = OpeningPlan::At::LeftSide, .with = Closure::OpenZip}).pattern;
  CHECK(opened.bindings.front().joined == "the centre back");
}

TEST_CASE("A strip round an armhole and its strap is a ring of each side") {
  const Pattern top = bound_top({{"armhole", "strap"}});
  REQUIRE(top.bindings.size() == 1);
  CHECK(top.bindings[0].strips == 2);
  CHECK(top.bindings[0].joined == "the underarm");
  CHECK(top.bindings[0].edge_length == Approx(sewn_on(top, "front", "armhole") +
                                              sewn_on(top, "back", "armhole") + strap_way(top)));
}

TEST_CASE("Between the straps front and back have a strip each, caught in with the straps") {
  const Pattern top = bound_top({{"neckline"}, {"armhole"}});
  REQUIRE(top.bindings.size() == 3);
  CHECK(top.bindings[0].edge_length == Approx(2.0 * sewn_on(top, "front", "neckline")));
  CHECK(top.bindings[1].edge_length == Approx(2.0 * sewn_on(top, "back", "neckline")));
  CHECK(top.bindings[2].strips == 2);
  for (const Binding& one : top.bindings) CHECK(one.joined == "");
  for (std::size_t i = 1; i <= 3; ++i) {
    CHECK(making_of(top).to_cut.at(i).plain().ends_with("its ends are caught in at the straps"));
  }
}

TEST_CASE("A strap is cut with an allowance along, its ends as long as they are sewn in") {
  const Pattern top = with_allowances(top_on_straps(20.0), {.enclosed = 8.0}).pattern;
  const Piece& strap = top.piece("strap");
  CHECK(strap.edge("long_edge").finish == EdgeFinish{Finish::Seam, 8.0});
  CHECK(strap.edge("other_long_edge").finish == EdgeFinish{Finish::Seam, 8.0});
  CHECK(strap.edge("front_end").finish == EdgeFinish{Finish::Raw, 0.0});
  CHECK(strap.edge("back_end").finish == EdgeFinish{Finish::Raw, 0.0});
  for (const char* piece : {"front", "back"}) {
    CHECK(top.piece(piece).edge("strap_end").finish == EdgeFinish{Finish::Seam, kStrapSewnIn});
  }
}

TEST_CASE("Straps are sewn in after the edges that end at them, before those that go on") {
  Pattern bound = bound_top({{"armhole"}, {"hem"}, {"neckline", "strap"}});
  bound = with_allowances(bound, {}).pattern;
  const std::vector<std::string> lines = sewing_of(bound);
  const std::size_t straps = line_with(lines, "sew the straps to the strap ends of the front");
  CHECK(line_with(lines, "bind the armhole") < straps);
  CHECK(line_with(lines, "bind the neckline and strap") > straps);
  CHECK(line_with(lines, "the binding closes them") == straps - 1);
  CHECK(std::ranges::count_if(
            lines, [](const std::string& line) { return line.starts_with("bind the "); }) == 3);
  const std::vector<EdgeWords> edges = making_of(bound).edges;
  CHECK(std::ranges::count_if(edges, [](const EdgeWords& one) {
          return one.words.plain() == "bound, both long edges as one";
        }) == 1);
  const std::vector<std::string> faced = sewing_of(with_allowances(top_on_straps(8.0), {}).pattern);
  const std::size_t set = line_with(faced, "where neckline and armhole meet");
  CHECK(line_with(faced, "trim and turn them") == set - 1);
  CHECK(line_with(faced, "face or line the armhole and neckline") > set);
}

TEST_CASE("A strap is bound as a whole, and where it is wide enough for an end", "[kFlatStrap]") {
  const auto refusal = [](const Runs& runs, double strap) {
    return refused_with([&] { return with_binding(top_on_straps(strap), {.runs = runs}); });
  };
  CHECK(refusal({{"strap.long_edge"}}, 20.0).message == "a folded strap is bound as a whole");
  CHECK(refusal({{"neckline", "strap"}}, kFlatStrap - 0.1).message ==
        "the straps are too narrow to be bound");
  CHECK(refusal({{"neckline", "strap"}}, kFlatStrap).code == "");
  CHECK(refusal({{"neckline", "strap"}, {"armhole", "strap"}}, 20.0).message ==
        "it is bound already");
  const auto unstrapped = [] { return with_binding(ordinary_block(), {.runs = {{"strap"}}}); };
  CHECK(refused_with(unstrapped).message == "there is no such edge");
}

TEST_CASE("A neckline that runs on along straps lets the head through") {
  const Pattern opened =
      with_opening(top_on_straps(20.0), {.at = OpeningPlan::At::LeftSide, .with = Closure::OpenZip})
          .pattern;
  CHECK(getting_in(opened, {.bust = 905.0}).empty());
}
