// What cloth a garment takes, in words, from the lines that its pieces are cut along.
#include "cloth_lines.hpp"

#include "blockwright/garment/allowances.hpp"
#include "blockwright/garment/binding.hpp"
#include "blockwright/garment/facing.hpp"
#include "support/blocks.hpp"

#include <catch2/catch.hpp>

#include <algorithm>
#include <cmath>

namespace cloth_lines_test {

using namespace blockwright;

namespace {

Pattern finished_block() { return with_allowances(ordinary_block(), {}).pattern; }

double width_of(const Path& path) {
  double left = 1e9, right = -1e9;
  for (const Point p : flattened(path, 0.01)) {
    left = std::fmin(left, p.x);
    right = std::fmax(right, p.x);
  }
  return right - left;
}

}  // namespace

// The front's side is 15 mm wider where it is widest, its fold adds nothing; the back's centre, an
// opening, adds as much again.
TEST_CASE("Pieces are laid with their allowances, and on the fold with none there") {
  const Pattern block = finished_block();
  const std::vector<ClothPiece> pieces = cloth_pieces(block, Material::Cloth);
  REQUIRE(pieces.size() == 2);
  const double front = width_of(flat_outline(block.piece("front")));
  const double back = width_of(flat_outline(block.piece("back")));
  for (const ClothPiece& piece : pieces) {
    const bool is_front = piece.name == "front";
    CHECK(piece.cut_on == (is_front ? CutOn::Fold : CutOn::Pair));
    const double more = piece.width - (is_front ? front : back);
    CHECK(more > (is_front ? 8.0 : 23.0));
    CHECK(more < (is_front ? 22.0 : 37.0));
  }
  CHECK(cloth_pieces(block, Material::Interfacing).empty());
}

TEST_CASE("Cloth and interfacing are said for the widths that they are sold in") {
  FacingPlan facing;
  facing.edges = {"neckline"};
  const Pattern faced = with_facing(finished_block(), facing).pattern;
  const std::vector<std::string> lines = cloth_lines(faced, Unit::Cm);
  CHECK(std::ranges::count_if(lines, [](const std::string& line) {
          return line.starts_with("interfacing, 90 cm wide: ");
        }) == 1);
  CHECK(lines.back() ==
        "counted for that: cloth folded in half along its length, all pieces one way up, 5 cm for "
        "the ends, 5 % for shrinking; more for checks or a large pattern");
  CHECK(lines.front().find("bias") == std::string::npos);
  const std::vector<std::string> inches = cloth_lines(faced, Unit::Inch);
  CHECK(inches.front().starts_with("cloth, 36 in "));
  CHECK(inches.front().find(" yd (") != std::string::npos);
}

TEST_CASE("Bias strips are part of the cloth, or come from what is left over") {
  BindingPlan binding;
  binding.runs = {{"neckline"}, {"armhole"}};
  const Pattern bound = with_binding(finished_block(), binding).pattern;
  for (const std::string& line : cloth_lines(bound, Unit::Cm)) {
    if (!line.starts_with("cloth, ")) continue;
    CHECK((line.ends_with("; bias strips included") ||
           line.ends_with("; bias strips from what is left over")));
  }
}

TEST_CASE("A piece that a cloth is too narrow for is named") {
  Pattern wide = finished_block();
  for (Piece& piece : wide.pieces) {
    if (piece.name != "back") continue;
    piece = Piece{"back", {}, {}, {}, {}, {}, {{100.0, 50.0}, {100.0, 350.0}}, CutOn::Pair};
    const Path box = Path::through({{0.0, 0.0}, {900.0, 0.0}, {900.0, 400.0}, {0.0, 400.0}});
    piece.edges.push_back({"rim", EdgeRole::Seam, box});
    piece.edges.push_back({"end", EdgeRole::Seam, Path::through({{0.0, 400.0}, {0.0, 0.0}})});
  }
  const std::vector<std::string> lines = cloth_lines(wide, Unit::Cm);
  CHECK(lines[0] == "cloth, 90 cm wide: too narrow for the back");
  CHECK_THAT(lines[1], Catch::Contains(", laid open in one layer"));
}

}  // namespace cloth_lines_test
