// Strips of bias round edges.
#include "blockwright/garment/binding.hpp"

#include "blockwright/block/kinds.hpp"
#include "blockwright/garment/allowances.hpp"
#include "blockwright/garment/making.hpp"
#include "blockwright/garment/opening.hpp"
#include "dart/refusal.hpp"
#include "support/blocks.hpp"

#include <catch2/catch.hpp>

using namespace blockwright;
using namespace blockwright_tests;

namespace {

using Runs = std::vector<std::vector<std::string>>;

BindingPlan bind(const Runs& runs) { return {.runs = runs}; }

double sewn_at(const Pattern& pattern, const char* piece, const char* edge) {
  return sewn_length(pattern.piece(piece), pattern.piece(piece).edge(edge));
}

RefusedStep binding_refusal(const BindingPlan& plan) {
  return refused_with([&] { return with_binding(ordinary_block(), plan); });
}

}  // namespace

TEST_CASE("An armhole takes a strip of each side, a neckline one over the centre front") {
  const Pattern block = ordinary_block();
  const Pattern bound = with_binding(block, bind({{"neckline"}, {"armhole"}, {"hem"}})).pattern;
  REQUIRE(bound.bindings.size() == 3);
  const double neck =
      2.0 * (sewn_at(block, "front", "neckline") + sewn_at(block, "back", "neckline"));
  const double armhole = sewn_at(block, "front", "armhole") + sewn_at(block, "back", "armhole");
  const double waist = 2.0 * (sewn_at(block, "front", "waist") + sewn_at(block, "back", "waist"));
  CHECK(bound.bindings[0].edge_length == Approx(neck));
  CHECK(bound.bindings[1].edge_length == Approx(armhole));
  CHECK(bound.bindings[2].edge_length == Approx(waist));
  CHECK(bound.bindings[0].strips == 1);
  CHECK(bound.bindings[1].strips == 2);
  // Hollow edges are bound with the strip stretched by 4 %, the waist is not.
  CHECK(bound.bindings[1].strip_length == Approx(0.96 * armhole + 2.0 * kStripEnd));
  CHECK(bound.bindings[2].strip_length == Approx(waist + 2.0 * kStripEnd));
  CHECK(bound.bindings[1].joined == "the underarm");
  CHECK(bound.bindings[0].joined == "");  // the block opens at the centre back
  CHECK(bound.piece("front").edge("armhole").finish == EdgeFinish{Finish::Bound, 0.0});
  CHECK(!is_finished(bound));
}

TEST_CASE("A strip ends at the opening that it meets, and is a ring elsewhere") {
  const auto joined = [](const OpeningPlan& opening) {
    const Pattern opened = with_opening(ordinary_block(), opening).pattern;
    const Pattern bound = with_binding(opened, bind({{"neckline"}, {"hem"}})).pattern;
    // Whichever of the two is said first.
    const Pattern before = with_binding(ordinary_block(), bind({{"neckline"}, {"hem"}})).pattern;
    const Pattern after = with_opening(before, opening).pattern;
    for (std::size_t i : {0U, 1U}) CHECK(after.bindings[i].joined == bound.bindings[i].joined);
    return bound.bindings[0].joined + "/" + bound.bindings[1].joined;
  };
  using enum OpeningPlan::At;
  CHECK(joined({.at = CentreBack, .with = Closure::OpenZip}) == "/");
  CHECK(joined({.at = CentreBack, .with = Closure::Zip}) == "/the centre back");
  CHECK(joined({.at = LeftSide, .with = Closure::OpenZip}) == "the centre back/");
}

TEST_CASE("Each side of a body whose sides differ has a strip of its own") {
  Pattern unfolded = ordinary_block();
  Piece& left = *find_named(unfolded.pieces, "front");
  left.name = "front_left";
  left.cut_on = CutOn::One;
  Piece right = mirrored(left);
  right.name = "front_right";
  unfolded.pieces.push_back(right);
  unfolded.seams.clear();
  const Pattern bound = with_binding(unfolded, bind({{"armhole"}, {"neckline"}})).pattern;
  REQUIRE(bound.bindings.size() == 3);
  CHECK(bound.bindings[0].strips == 1);
  CHECK(bound.bindings[1].strips == 1);
  CHECK(bound.bindings[0].edge_length == Approx(bound.bindings[1].edge_length));
  const Pattern whole = with_binding(ordinary_block(), bind({{"armhole"}, {"neckline"}})).pattern;
  CHECK(bound.bindings[0].strip_length == Approx(whole.bindings[0].strip_length));
  CHECK(bound.bindings[2].strip_length == Approx(whole.bindings[1].strip_length));
}

TEST_CASE("Cut width and square of cloth by the rule") {
  const Pattern bound = with_binding(ordinary_block(), bind({{"armhole"}})).pattern;
  const Binding& binding = bound.bindings.front();
  CHECK(binding.cut_width == Approx(4.0 * 7.0 + 3.5));
  // A worked value: 250 cm of 3.2 cm from a square of 30 cm (computed).
  CHECK(square_for({2500.0, 32.0}) == Approx(300.0).margin(5.0));
  CHECK(binding.square == Approx(square_for({2.0 * binding.strip_length, binding.cut_width})));
}

TEST_CASE("A binding that cannot be sewn is refused, with what can",
          "[kLeastBindingWidth][kMostBindingWidth][kMostStretch]") {
  const auto shows = [](double mm) {
    return binding_refusal({.runs = {{"armhole"}}, .shows = mm}).code;
  };
  const auto stretch = [](double percent) {
    return binding_refusal({.runs = {{"armhole"}}, .stretch = percent}).code;
  };
  CHECK(shows(kLeastBindingWidth - 0.1) == "garment.binding");
  CHECK(shows(kLeastBindingWidth) == "");
  CHECK(shows(kMostBindingWidth + 0.1) == "garment.binding");
  CHECK(shows(kMostBindingWidth) == "");
  CHECK(stretch(kMostStretch + 0.1) == "garment.binding");
  CHECK(stretch(kMostStretch) == "");
  CHECK(stretch(-1.0) == "garment.binding");
  CHECK(binding_refusal(bind({})).code == "garment.binding");
  CHECK(binding_refusal(bind({{"sleeve"}})).message == "there is no such edge");
  CHECK(binding_refusal(bind({{"side"}})).message == "it is sewn to another edge or opens");
  CHECK(binding_refusal(bind({{"front.centre_front"}})).message ==
        "it lies on the fold of the cloth");
  CHECK(binding_refusal(bind({{"armhole"}, {"front.armhole"}})).message == "it is bound already");
}

TEST_CASE("What is made of bound edges says strips, square and order") {
  Pattern pattern = with_opening(ordinary_block(), {.at = OpeningPlan::At::LeftSide}).pattern;
  pattern = with_binding(pattern, bind({{"neckline"}, {"armhole"}})).pattern;
  pattern = with_allowances(pattern, {.hem = 25}).pattern;
  const MakingOf making = making_of(pattern);
  CHECK(making.to_cut.size() == 4);
  REQUIRE(making.to_buy.size() == 1);
  CHECK(making.to_buy[0].plain().starts_with("zip, "));
  std::vector<std::string> lines;
  for (const Wording& line : making.to_sew) lines.push_back(line.plain());
  REQUIRE(lines.size() == 8);
  CHECK(lines[0].starts_with("sew the darts"));
  CHECK(lines[1] == "sew the shoulders and press them open");
  CHECK(lines[2] == "sew the centre back and press it open");
  CHECK(lines[3] == "sew the right side seam and press it open");
  CHECK(lines[4].starts_with("sew the left side above the zip and below the notch"));
  CHECK(lines[5] == "bind the neckline, 7 mm wide, stretching the strip evenly");
  CHECK(lines[6] == "bind the armhole, 7 mm wide, stretching the strip evenly");
  CHECK(lines[7] == "turn the waist up by 25 mm");
  CHECK(making.edges.size() == 6);
}
