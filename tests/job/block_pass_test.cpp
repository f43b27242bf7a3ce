// The passes from a tape to a checked block.
#include "block_pass.hpp"

#include "support/blocks.hpp"
#include "support/people.hpp"

#include <catch2/catch.hpp>

using namespace blockwright;

namespace {

/// A piece like a C, with a dart in its upper arm that opens into the slit. Trued, the dart's cap
/// hangs 3.7 mm below the edge.
Piece dart_over_slit(double slit) {
  const double low = 50.0 - slit;
  Piece piece;
  piece.name = "front";
  piece.edges = {
      {"lower", EdgeRole::Hem,
       Path::through({{0, low}, {0, 0}, {200, 0}, {200, 200}, {0, 200}, {0, 50}})},
      {"slit", EdgeRole::Hem,
       Path::through({{0, 50}, {60, 50}, {75, 50}, {90, 50}, {150, 50}, {150, low}, {0, low}})}};
  piece.darts = {{"waist", "slit", {75, 140}, {75, 140}, {Point{60, 50}, Point{90, 50}}, {75, 50}}};
  piece.grainline = {{170, 20}, {170, 180}};
  return piece;
}

}  // namespace

TEST_CASE("a block is judged with its darts trued, as it will be printed") {
  CHECK(faults_once_trued(checked_block(bust_only(920.0)).block.pattern).empty());
  CHECK(faults_once_trued({.pieces = {dart_over_slit(5.0)}, .seams = {}}).empty());

  const Piece narrow = dart_over_slit(3.0);
  CHECK_FALSE(find_problem(narrow));
  const Problems faults = faults_once_trued({.pieces = {narrow}, .seams = {}});
  REQUIRE(faults.size() == 1);
  CHECK(faults[0].code == "pattern.broken");
  CHECK_THAT(faults[0].message, Catch::Contains("crosses itself"));
}
