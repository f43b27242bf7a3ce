// An edge folded as it is sewn, and lines drawn across it.
#include "blockwright/dart/folded.hpp"

#include "blockwright/base/error.hpp"
#include "blockwright/dart/one_dart.hpp"
#include "blockwright/dart/opened.hpp"
#include "blockwright/dart/truing.hpp"
#include "blockwright/geometry/offset.hpp"
#include "dart/dart_measures.hpp"
#include "support/blocks.hpp"
#include "support/each_person.hpp"

#include <catch2/catch.hpp>

using namespace blockwright;
using namespace blockwright_tests;

namespace {

/// Blocks as drafted and with all front darts in the waist: darts of 5 to 50 degrees.
std::vector<Pattern> blocks(int count) {
  std::vector<Pattern> all;
  for (const Session& session : each_person(count, 31)) {
    all.push_back(checked_block(session).block.pattern);
    all.push_back(one_dart(all.back(), {"front.waist"}).pattern);
  }
  return all;
}

/// The darts of the waist, in its order.
std::vector<Dart> waist_darts(const Piece& piece) {
  const Opened open = opened(piece);
  return open.edges[*find_edge(open, "waist")].darts;
}

/// A level line through the folded piece, from left of it to right of it.
Path level(double y) { return Path::through({{-50.0, y}, {600.0, y}}); }

std::string refusal_of(const Folded& folded, const Path& drawn) {
  try {
    (void)folded.laid_back(drawn);
  } catch (const InputError& error) {
    return error.problem().message.plain();
  }
  return "";
}

}  // namespace

TEST_CASE("A trued waist, folded as it is stitched, is one smooth line as long as it is sewn") {
  for (const Pattern& block : each(blocks(60), "blocks(60)")) {
    for (const Piece& piece : true_darts(block).pattern.pieces) {
      INFO(piece.name);
      const Path sewn = Folded(piece, "waist").edge();
      CHECK(length(sewn) == Approx(sewn_length(piece, piece.edge("waist"))).margin(1e-6));
      CHECK(sharpest_corner(sewn) < 1e-4);
      CHECK(distance(sewn.start(), piece.edge("waist").path.start()) < 1e-9);
    }
  }
}

TEST_CASE("The folded edge laid back is the edge") {
  for (const Pattern& block : each(blocks(60), "blocks(60)")) {
    for (const Piece& piece : block.pieces) {
      INFO(piece.name);
      const auto stretches = sewn_stretches(piece, piece.edge("waist"));
      const Folded folded(piece, "waist");
      const std::vector<Path> parts = folded.laid_back(folded.edge());
      REQUIRE(parts.size() == stretches.size());
      for (std::size_t i = 0; i < parts.size(); ++i) {
        CHECK(apart(parts[i], stretches[i]) < 1e-8);
        CHECK(distance(folded.of_stretch(i)(stretches[i].start()),
                       i == 0 ? stretches[0].start()
                              : folded.of_stretch(i - 1)(stretches[i - 1].end())) < 1e-8);
      }
    }
  }
}

TEST_CASE("A line over closed darts is cut on their legs, as far from the dart point on both") {
  int darts = 0;
  for (const Pattern& block : each(blocks(60), "blocks(60)")) {
    for (const Piece& piece : true_darts(block).pattern.pieces) {
      const Folded folded(piece, "waist");
      for (const double below : {-15.0, 15.0}) {
        INFO(piece.name << " " << below);
        const Path drawn = offset(folded.edge(), below);
        const std::vector<Path> parts = folded.laid_back(drawn);
        const std::vector<Dart> along = waist_darts(piece);
        REQUIRE(parts.size() == along.size() + 1);
        double whole = 0.0;
        for (const Path& part : parts) whole += length(part);
        CHECK(whole == Approx(length(drawn)).margin(1e-6));
        for (std::size_t d = 0; d < along.size(); ++d) {
          const Dart& dart = along[d];
          const Point in = parts[d].end(), out = parts[d + 1].start();
          CHECK(std::abs(distance(dart.point, in) - distance(dart.point, out)) < 1e-8);
          CHECK(std::abs(cross(unit(dart.legs[0] - dart.point), in - dart.point)) < 1e-8);
          CHECK(std::abs(cross(unit(dart.legs[1] - dart.point), out - dart.point)) < 1e-8);
          ++darts;
        }
      }
    }
  }
  CHECK(darts > 500);
}

TEST_CASE("A line past a dart's point, or twice over its stitching, is refused") {
  const Pattern block = checked_block(survey_people(1, 31).front()).block.pattern;
  const Piece& front = block.piece("front");
  const Folded folded(front, "waist");
  const Dart dart = waist_darts(front).front();
  CHECK(refusal_of(folded, level(dart.point.y - 1.0)) == "");
  CHECK(refusal_of(folded, level(dart.point.y + 1.0)).find("past the point") != std::string::npos);
  const Path there_and_back = Path::through({{-50.0, 20.0}, {600.0, 20.0}, {-50.0, 40.0}});
  CHECK(refusal_of(folded, there_and_back).find("twice") != std::string::npos);
}
