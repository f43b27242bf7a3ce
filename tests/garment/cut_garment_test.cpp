// What is cut of good cloth, on many people's blocks.
#include "blockwright/block/kinds.hpp"
#include "blockwright/dart/drawn_neckline.hpp"
#include "blockwright/dart/hem.hpp"
#include "blockwright/dart/panels.hpp"
#include "blockwright/dart/truing.hpp"
#include "blockwright/garment/allowances.hpp"
#include "blockwright/garment/binding.hpp"
#include "blockwright/garment/facing.hpp"
#include "blockwright/geometry/intersections.hpp"
#include "blockwright/layout/print_plan.hpp"
#include "support/blocks.hpp"
#include "support/each_person.hpp"

#include <catch2/catch.hpp>

#include <cmath>
#include <map>

using namespace blockwright;

namespace {

// A V neck that is faced, a hem over the waist, princess seams from the shoulder and bound
// armholes.
Pattern princess_garment(const Pattern& block) {
  NecklineDesign v;
  v.shape = NeckShape::V;
  Pattern pattern = draw_neckline(block, v).pattern;
  pattern = draw_hem(pattern, {.above_waist = 10.0, .below_bust_point = {}}).pattern;
  pattern = cut_into_panels(pattern, {"front.shoulder", "front.waist", "", ""}).pattern;
  pattern = cut_into_panels(pattern, {"back.shoulder", "back.waist", "", ""}).pattern;
  pattern = with_binding(pattern, {.runs = {{"armhole"}}}).pattern;
  pattern = with_facing(pattern, {.edges = {"neckline"}}).pattern;
  return with_allowances(pattern, {.hem = 30.0}).pattern;
}

std::map<std::string, Path> cut_lines(const Pattern& pattern) {
  PrintOptions options;
  options.cut = CutStyle::Garment;
  std::map<std::string, Path> lines;
  for (const LaidPiece& laid : lay_out(pattern, options, {}).pieces) {
    for (const Stroke& stroke : laid.lines.strokes) {
      if (stroke.role == LineRole::CutLine) lines[laid.piece.name] = stroke.path;
    }
  }
  return lines;
}

void check_cut(const Piece& piece, const Path& cut) {
  INFO(piece.name);
  CHECK(distance(cut.start(), cut.end()) < 1e-9);
  CHECK(!find_crossing(cut, 0.01));
  for (const Point p : flattened(flat_outline(piece), 1.0)) {
    CHECK((contains(cut, p, 0.005) || nearest(cut, p).distance < 0.02));
  }
  for (const Edge& edge : piece.edges) {
    // Across a dart's mouth the edge has corners of its own.
    if (first_where(piece.darts, [&](const Dart& d) { return d.edge == edge.name; }) != nullptr) {
      continue;
    }
    INFO(edge.name);
    const Point middle = point_at_length(edge.path, 0.5 * length(edge.path));
    CHECK(nearest(cut, middle).distance == Approx(edge.finish.allowance).margin(0.1));
  }
}

}  // namespace

TEST_CASE("On everybody's garment the cut line is simple, all round, at each edge's allowance") {
  int made = 0;
  for (const Session& session : each_person(60, 92)) {
    const Pattern block = checked_block(session).block.pattern;
    const auto check_all = [](const Pattern& finished) {
      const Pattern pattern = true_darts(finished).pattern;
      const auto lines = cut_lines(pattern);
      for (const Piece& piece : pattern.pieces) check_cut(piece, lines.at(piece.name));
    };
    check_all(with_allowances(block, {}).pattern);
    try {
      check_all(princess_garment(block));
      ++made;
    } catch (const InputError&) {
      continue;  // a block without a waist dart, or a dart in the way of the hem
    }
  }
  CHECK(made > 20);
}

TEST_CASE("Beside a V neck on the fold nothing is cut beyond the fold") {
  for (const Session& session : each_person(30, 93)) {
    const Pattern block = checked_block(session).block.pattern;
    NecklineDesign v;
    v.shape = NeckShape::V;
    const Pattern pattern = with_allowances(draw_neckline(block, v).pattern, {}).pattern;
    for (const Point p : flattened(cut_lines(pattern).at("front"), 0.1)) CHECK(p.x > -1e-6);
  }
}
