// The kinds of a bodice agree with themselves and with each other, and a drafted piece has what its
// kind names.
#include "blockwright/block/corners.hpp"
#include "blockwright/block/drafted_piece.hpp"
#include "support/blocks.hpp"
#include "support/each_person.hpp"
#include "support/people.hpp"

#include <catch2/catch.hpp>

#include <algorithm>
#include <set>

using namespace blockwright;

namespace {

bool has_edge(const PieceKind& kind, std::string_view name) {
  return std::any_of(kind.edges.begin(), kind.edges.end(),
                     [&](const KindEdge& edge) { return edge.name == name; });
}

const PieceKind& other_of(const PieceKind& kind) {
  return &kind == &kBodiceFront ? kBodiceBack : kBodiceFront;
}

}  // namespace

TEST_CASE("Darts, seams and notches of a kind name edges that there are") {
  for (const PieceKind* kind : {&kBodiceFront, &kBodiceBack}) {
    INFO(kind->name);
    CHECK(kind->dart_positions.size() >= 5);
    for (const DartPosition& p : kind->dart_positions) CHECK(has_edge(*kind, p.edge));
    for (const KindSeam& seam : kind->seams) {
      CHECK(seam.mate_piece == other_of(*kind).name);
      CHECK(has_edge(other_of(*kind), seam.mate_edge));
    }
    for (const KindNotch& notch : kind->notches) {
      CHECK(notch.edge < kind->edges.size());
      if (!notch.mate_edge.empty()) CHECK(has_edge(other_of(*kind), notch.mate_edge));
    }
  }
}

// Common practice, no source: whoever sews looks for the same mark on both sides of a seam; one on
// the front of an armhole, two on the back.
TEST_CASE(
    "Notches that meet on a seam have as many strokes; the armhole has one in front, two behind") {
  int matched = 0;
  for (const PieceKind* kind : each({&kBodiceFront, &kBodiceBack})) {
    for (const KindNotch& notch : kind->notches) {
      INFO(notch.name);
      if (notch.mate_edge.empty()) {
        CHECK(notch.count == (kind == &kBodiceFront ? 1 : 2));
        continue;
      }
      const PieceKind& mate = other_of(*kind);
      const auto meets = [&](const KindNotch& other) {
        return other.mate_piece == kind->name && mate.edges[other.edge].name == notch.mate_edge;
      };
      const auto met = std::ranges::find_if(mate.notches, meets);
      REQUIRE(met != mate.notches.end());
      CHECK(met->count == notch.count);
      ++matched;
    }
  }
  CHECK(matched == 2);
}

TEST_CASE("A bodice's edges come in the order of its parts") {
  for (const PieceKind* kind : each({&kBodiceFront, &kBodiceBack})) {
    REQUIRE(kind->edges.size() == index_of(BlockEdge::Other));
    for (std::size_t i = 0; i < kind->edges.size(); ++i) {
      CHECK(index_of(kind->edges[i].part) == i);
    }
  }
}

TEST_CASE("A drafted piece has every edge, point and line of its kind, and names no other") {
  const Pattern pattern = checked_block(survey_people(1, 3).front()).block.pattern;
  for (const Piece& piece : pattern.pieces) {
    INFO(piece.name);
    REQUIRE(is_whole(piece));
    REQUIRE(piece.landmarks.size() == piece.kind->landmarks.size());
    for (std::size_t i = 0; i < piece.edges.size(); ++i) {
      CHECK(piece.edges[i].name == piece.kind->edges[i].name);
      CHECK(piece.edges[i].role == piece.kind->edges[i].role);
    }
    CHECK(find_line(piece, LineUse::Bust)->name == "bust_line");
    CHECK(find_landmark(piece, PointUse::CentreWaist)->at == Point{});
    CHECK(corner_point(piece, Corner::Underarm) == part_of(piece, BlockEdge::Armhole).path.start());
  }
  CHECK(find_landmark(pattern.pieces[0], PointUse::Marked)->name == "bust_point");
  CHECK(find_landmark(pattern.pieces[1], PointUse::Marked) == nullptr);
}

// Right angles at both centres, half a turn at both ends of both seams: common practice, no source.
TEST_CASE("Eight corners of a block are looked at, and all are as they should be") {
  for (const Session& session : each_person(20, 5)) {
    const auto corners = block_corners(checked_block(session).block.pattern);
    std::set<std::string> places;
    for (const BlockCorner& corner : corners) {
      INFO(corner.where << ": " << corner.degrees);
      CHECK(std::abs(corner.off()) <= corner.within);
      places.insert(corner.where);
    }
    CHECK(places == std::set<std::string>{"front centre and waist", "back centre and waist",
                                          "front neckline and centre", "back neckline and centre",
                                          "waist at the closed side", "armhole at the closed side",
                                          "armhole at the closed shoulder",
                                          "neckline at the closed shoulder"});
  }
}
