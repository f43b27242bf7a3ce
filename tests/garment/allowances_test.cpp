// What the edges of a garment are cut with.
#include "blockwright/garment/allowances.hpp"

#include "blockwright/block/kinds.hpp"
#include "blockwright/dart/hem.hpp"
#include "blockwright/dart/panels.hpp"
#include "blockwright/dart/truing.hpp"
#include "dart/refusal.hpp"
#include "support/blocks.hpp"
#include "support/each.hpp"

#include <catch2/catch.hpp>

#include <set>

using namespace blockwright;
using namespace blockwright_tests;

namespace {

EdgeFinish finish_at(const Pattern& pattern, const char* piece, const char* edge) {
  return pattern.piece(piece).edge(edge).finish;
}

RefusedStep allowance_refusal(const Allowances& asked) {
  return refused_with([&] { return with_allowances(ordinary_block(), asked); });
}

Allowances on_edge(const std::string& edge, double width) { return {.edges = {{edge, width}}}; }

// Edges, paths and all, but for what is said of their finish.
std::vector<Path> paths_of(const Pattern& pattern) {
  std::vector<Path> paths;
  for (const Piece& piece : pattern.pieces) {
    for (const Edge& edge : piece.edges) paths.push_back(edge.path);
  }
  return paths;
}

}  // namespace

TEST_CASE("Every edge of a garment gets the allowance of its class, and no line moves") {
  const Allowances asked{.seams = 16, .shoulder = 12, .centre = 22, .hem = 25, .enclosed = 8};
  const Pattern block = ordinary_block();
  CHECK(!is_finished(block));
  const Pattern finished = with_allowances(block, asked).pattern;
  CHECK(is_finished(finished));
  CHECK(paths_of(finished) == paths_of(block));
  for (const char* piece : each({"front", "back"})) {
    CHECK(finish_at(finished, piece, "side") == EdgeFinish{Finish::Seam, 16});
    CHECK(finish_at(finished, piece, "shoulder") == EdgeFinish{Finish::Seam, 12});
    CHECK(finish_at(finished, piece, "waist") == EdgeFinish{Finish::Turned, 25});
    CHECK(finish_at(finished, piece, "armhole") == EdgeFinish{Finish::Enclosed, 8});
    CHECK(finish_at(finished, piece, "neckline") == EdgeFinish{Finish::Enclosed, 8});
  }
  CHECK(finish_at(finished, "front", "centre_front") == EdgeFinish{Finish::Fold, 0});
  CHECK(finish_at(finished, "back", "centre_back") == EdgeFinish{Finish::Seam, 22});
}

TEST_CASE("The seam between two panels is one that is sewn first") {
  const Pattern panels =
      cut_into_panels(ordinary_block(), {"front.shoulder", "front.waist", "", ""}).pattern;
  const Pattern finished = with_allowances(panels, {}).pattern;
  int seams = 0;
  for (const Piece& piece : finished.pieces) {
    for (const Edge& edge : piece.edges) {
      CHECK(edge.finish.how != Finish::NotSaid);
      seams += edge.finish.how == Finish::PanelSeam ? 1 : 0;
    }
  }
  CHECK(seams == 2);
}

TEST_CASE("A hem that was drawn is turned, and trueing keeps what is said of the edges") {
  const Pattern cropped =
      draw_hem(ordinary_block(), {.above_waist = 30, .below_bust_point = {}}).pattern;
  const Pattern finished = true_darts(with_allowances(cropped, {.hem = 30}).pattern).pattern;
  CHECK(finish_at(finished, "front", "hem") == EdgeFinish{Finish::Turned, 30});
  CHECK(finish_at(finished, "back", "side") == EdgeFinish{Finish::Seam, 15});
}

TEST_CASE("A single edge has its own allowance, and a mate that differs is warned of") {
  const MovedDarts finished = with_allowances(ordinary_block(), on_edge("front.side", 25));
  CHECK(finish_at(finished.pattern, "front", "side") == EdgeFinish{Finish::Seam, 25});
  CHECK(finish_at(finished.pattern, "back", "side") == EdgeFinish{Finish::Seam, 15});
  REQUIRE(finished.remarks.size() == 1);
  CHECK(finished.remarks.front().code == "garment.mates");
  CHECK(finished.remarks.front().where == "front.side");
  Allowances both = on_edge("front.side", 25);
  both.edges.push_back({"back.side", 25});
  CHECK(with_allowances(ordinary_block(), both).remarks.empty());
}

TEST_CASE("An edge of a front that a fitting has made two of is named by either or both") {
  Pattern unfolded = ordinary_block();
  Piece& left = *find_named(unfolded.pieces, "front");
  left.name = "front_left";
  Piece right = left;
  right.name = "front_right";
  unfolded.pieces.push_back(right);
  unfolded.seams.clear();
  const Pattern both = with_allowances(unfolded, on_edge("front.side", 30)).pattern;
  CHECK(finish_at(both, "front_left", "side").allowance == 30);
  CHECK(finish_at(both, "front_right", "side").allowance == 30);
  const Pattern one = with_allowances(unfolded, on_edge("front_left.side", 30)).pattern;
  CHECK(finish_at(one, "front_left", "side").allowance == 30);
  CHECK(finish_at(one, "front_right", "side").allowance == 15);
}

TEST_CASE("Without allowance a hem or a neckline is raw") {
  Allowances none = {.hem = 0};
  none.edges.push_back({"front.neckline", 0});
  const Pattern finished = with_allowances(ordinary_block(), none).pattern;
  CHECK(finish_at(finished, "back", "waist") == EdgeFinish{Finish::Raw, 0});
  CHECK(finish_at(finished, "front", "neckline") == EdgeFinish{Finish::Raw, 0});
  CHECK(finish_at(finished, "back", "neckline") == EdgeFinish{Finish::Enclosed, 10});
}

TEST_CASE("An allowance that cannot be sewn is refused, with what can",
          "[kLeastEdgeAllowance][kMostEdgeAllowance]") {
  CHECK(allowance_refusal({.seams = kLeastEdgeAllowance - 0.1}).code == "garment.allowance");
  CHECK(allowance_refusal({.hem = kMostEdgeAllowance + 0.1}).code == "garment.allowance");
  CHECK(allowance_refusal({.enclosed = -1.0}).code == "garment.allowance");
  CHECK(allowance_refusal(on_edge("back.side", 61)).code == "garment.allowance");
  CHECK(allowance_refusal({.seams = kLeastEdgeAllowance}).code == "");
  CHECK(allowance_refusal({.hem = kMostEdgeAllowance}).code == "");
  CHECK(allowance_refusal({.hem = 61}).hint ==
        "write 5 mm to 60 mm, or 0 where you add it on the cloth");
}

TEST_CASE("An edge that is not there, on the fold or bound is refused as what it is") {
  const RefusedStep unknown = allowance_refusal(on_edge("front.sleeve", 20));
  CHECK(unknown.message == "there is no such edge");
  CHECK(unknown.hint.find("front.waist, front.side, front.armhole") != std::string::npos);
  CHECK(allowance_refusal(on_edge("side", 20)).message == "there is no such edge");
  CHECK(allowance_refusal(on_edge("front.centre_front", 20)).message ==
        "it lies on the fold of the cloth");
  Pattern bound = ordinary_block();
  for (Piece& piece : bound.pieces) {
    find_named(piece.edges, "neckline")->finish = {Finish::Bound, 0.0};
  }
  CHECK(finish_at(with_allowances(bound, {}).pattern, "back", "neckline") ==
        EdgeFinish{Finish::Bound, 0.0});
  CHECK(refused_with([&] {
          return with_allowances(bound, on_edge("back.neckline", 10));
        }).message == "it is bound, and a bound edge has no allowance");
}
