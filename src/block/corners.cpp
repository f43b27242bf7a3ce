#include "blockwright/block/corners.hpp"

#include <algorithm>
#include <cmath>

namespace blockwright {
namespace {

constexpr double kRightAngle = 90.0, kHalfTurn = 180.0;

// A corner of a piece by the edges that meet there.
struct Meeting {
  const Piece* piece = nullptr;
  const Edge *before = nullptr, *after = nullptr;

  [[nodiscard]] double degrees() const {
    return std::abs(turn_between(-end_tangent(before->path), start_tangent(after->path)).degrees());
  }
  [[nodiscard]] CornerShape shape() const {
    const KindEdge* edge = kind_edge(*piece, after->name);
    return edge == nullptr ? CornerShape::Free : edge->start;
  }
};

Meeting corner_before(const Piece& piece, std::size_t edge) {
  const std::size_t count = piece.edges.size();
  return {&piece, &piece.edges[(edge + count - 1) % count], &piece.edges[edge % count]};
}

// The edge in plain words: "centre" for a centre front, else its name.
std::string spoken(const Piece& piece, const Edge& edge) {
  const KindEdge* known = kind_edge(piece, edge.name);
  if (known == nullptr) return edge.name;
  if (known->part == BlockEdge::Centre) return "centre";
  std::string words = edge.name;
  std::ranges::replace(words, '_', ' ');
  return words;
}

void add_square_corners(const Piece& piece, std::vector<BlockCorner>& corners) {
  for (std::size_t i = 0; i < piece.edges.size(); ++i) {
    const Meeting m = corner_before(piece, i);
    if (m.shape() != CornerShape::Square) continue;
    corners.push_back(
        {piece.name + " " + spoken(piece, *m.before) + " and " + spoken(piece, *m.after),
         m.degrees(), kRightAngle, kSquareWithin});
  }
}

// The corner at the start or at the end of a seam's edge.
Meeting seam_end(const Pattern& pattern, const EdgeOf& side, bool at_start) {
  const Piece& piece = pattern.piece(side.piece);
  const auto edge = static_cast<std::size_t>(&piece.edge(side.edge) - piece.edges.data());
  return corner_before(piece, at_start ? edge : edge + 1);
}

void add_joined_corners(const Pattern& pattern, const Seam& seam,
                        std::vector<BlockCorner>& corners) {
  if (seam.a.size() != 1 || seam.b.size() != 1) return;
  for (const bool at_start : {true, false}) {
    const Meeting a = seam_end(pattern, seam.a.front(), at_start);
    const Meeting b = seam_end(pattern, seam.b.front(), at_start != seam.b_runs_back);
    if (a.shape() != CornerShape::Smooth || b.shape() != CornerShape::Smooth) continue;
    corners.push_back(
        {spoken(*a.piece, at_start ? *a.before : *a.after) + " at the closed " + seam.name,
         a.degrees() + b.degrees(), kHalfTurn, kSmoothWithin});
  }
}

}  // namespace

std::vector<BlockCorner> block_corners(const Pattern& pattern) {
  std::vector<BlockCorner> corners;
  for (const Piece& piece : pattern.pieces) add_square_corners(piece, corners);
  for (const Seam& seam : pattern.seams) add_joined_corners(pattern, seam, corners);
  return corners;
}

}  // namespace blockwright
