#include "named_edges.hpp"

#include "refusal.hpp"

#include <algorithm>

namespace blockwright {
namespace {

// A lower edge is a hem, whether a style has drawn it or it is the waist of the block.
bool has_name(const Edge& edge, std::string_view name) {
  return edge.name == name || edge.part_name() == name ||
         (name == "hem" && edge.role == EdgeRole::Hem);
}

bool is_meant(const Piece& piece, std::string_view name) {
  return name.empty() || piece.name == name || sided_name(piece.name).whole == name;
}

}  // namespace

std::vector<EdgeOf> edges_named(const Pattern& pattern, std::string_view name) {
  const std::size_t dot = name.find('.');
  const std::string_view piece = dot == std::string_view::npos ? "" : name.substr(0, dot);
  const std::string_view edge = dot == std::string_view::npos ? name : name.substr(dot + 1);
  std::vector<EdgeOf> found;
  for (const Piece& one : pattern.pieces) {
    if (!is_meant(one, piece)) continue;
    for (const Edge& of_it : one.edges) {
      if (has_name(of_it, edge)) found.push_back({one.name, of_it.name});
    }
  }
  return found;
}

const Edge& edge_at(const Pattern& pattern, const EdgeOf& at) {
  return pattern.piece(at.piece).edge(at.edge);
}

Edge& edge_at(Pattern& pattern, const EdgeOf& at) {
  Piece* piece = find_named(pattern.pieces, at.piece);
  require(piece != nullptr, "the edge's piece");
  Edge* edge = find_named(piece->edges, at.edge);
  require(edge != nullptr, "the piece's edge");
  return *edge;
}

std::string name_of(const EdgeOf& at) { return at.piece + "." + at.edge; }

std::string all_edge_names(const Pattern& pattern) {
  std::vector<std::string> names;
  for (const Piece& piece : pattern.pieces) {
    for (const Edge& edge : piece.edges) {
      if (edge.role != EdgeRole::Fold) names.push_back(name_of({piece.name, edge.name}));
    }
  }
  std::string text;
  for (std::size_t i = 0; i < names.size(); ++i) {
    if (i > 0) text += i + 1 == names.size() ? " and " : ", ";
    text += names[i];
  }
  return text;
}

void refuse(const RefusedFinish& refused) {
  Problem problem{Severity::Error, refused.code, refused.where, refused.message, refused.hint};
  problem.options = {refused.key};
  throw InputError(problem);
}

}  // namespace blockwright
