#include "straps.hpp"

#include "blockwright/block/kinds.hpp"
#include "blockwright/dart/top_edge.hpp"

#include <algorithm>

namespace blockwright {
namespace {

bool is_long(const Edge& edge) { return edge.role == EdgeRole::Seam; }

}  // namespace

bool is_strap(const Piece& piece) {
  return piece.kind == nullptr && sided_name(piece.name).whole == kStrapPiece;
}

bool has_straps(const Pattern& pattern) { return std::ranges::any_of(pattern.pieces, is_strap); }

bool has_flat_straps(const Pattern& pattern) {
  return has_straps(pattern) && std::ranges::any_of(pattern.pieces, [](const Piece& piece) {
           return find_named(piece.edges, kStrapEnd) != nullptr;
         });
}

std::vector<EdgeOf> strap_edges(const Pattern& pattern) {
  std::vector<EdgeOf> edges;
  for (const Piece& piece : pattern.pieces) {
    if (!is_strap(piece)) continue;
    for (const Edge& edge : piece.edges) {
      if (is_long(edge)) edges.push_back({piece.name, edge.name});
    }
  }
  return edges;
}

double bound_length(const Piece& piece, const Edge& edge) {
  if (!is_strap(piece)) return sewn_length(piece, edge);
  const bool is_first = first_where(piece.edges, is_long) == &edge;
  return is_first ? length(edge.path) - 2.0 * kStrapSewnIn : 0.0;
}

bool ends_at_straps(const Pattern& pattern, const std::vector<EdgeOf>& edges) {
  if (!has_straps(pattern)) return false;
  bool neckline = false, armhole = false;
  for (const EdgeOf& at : edges) {
    const Piece& piece = pattern.piece(at.piece);
    if (is_strap(piece)) return false;
    neckline = neckline || is_part(piece, at.edge, BlockEdge::Neckline);
    armhole = armhole || is_part(piece, at.edge, BlockEdge::Armhole);
  }
  return neckline != armhole;
}

EdgeFinish strap_finish(const Edge& edge, const Allowances& allowances) {
  if (is_long(edge)) return {Finish::Seam, allowances.enclosed};
  return {Finish::Raw, 0.0};
}

}  // namespace blockwright
