#pragma once

#include "blockwright/pattern/pattern.hpp"

#include <optional>
#include <vector>

namespace blockwright {

/// An edge of a piece of the pattern.
struct OutlineEdge {
  const Piece* piece = nullptr;
  std::size_t edge = 0;

  [[nodiscard]] const Edge& get() const { return piece->edges[edge]; }
  [[nodiscard]] EdgeOf name() const { return {piece->name, get().name}; }
};

/// True of a centre front or back.
bool lies_at_centre(const OutlineEdge& of);
/// True of the edge of a front that laps over its other half.
bool is_front_edge(const OutlineEdge& of);

/// What a facing follows: the free edges of a piece and a front edge, or shoulders too.
enum class Follows { FreeEdges, ShouldersToo };

/// The line along a finished edge as it is sewn: the darts that open on it and on what it ends at
/// closed, panels joined. The grain is that of the part with the centre, or of the first part.
struct TracedEdge {
  std::vector<OutlineEdge> edges;  ///< in the order of travel
  std::vector<double> sewn;        ///< length of each, in mm
  std::vector<Path> lines;         ///< each of them, end to end
  std::vector<Placement> lies;     ///< how the cloth at the start of each lies
  OutlineEdge before_edge, after_edge;
  Path before, after;  ///< from the ends of the line away, along seams, the centre or the hem
  Vec grain;
};

/// The lines from the first to before the last as one.
struct EdgeRange {
  std::size_t from = 0, to = 0;
};
Path line_of(const TracedEdge& traced, EdgeRange range);

/// Traces what a facing follows over `from`, on pieces with trued darts. Nothing where two panels
/// are joined in a way that it cannot follow. Requires: an edge that it follows, of a piece of a
/// kind, in the frame in which it is drafted.
std::optional<TracedEdge> traced_edge(const Pattern& trued, const OutlineEdge& from,
                                      Follows follows);

}  // namespace blockwright
