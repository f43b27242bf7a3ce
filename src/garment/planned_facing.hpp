#pragma once

#include "facing_lines.hpp"

#include <string>
#include <vector>

namespace blockwright {

/// A facing before its piece is drawn.
struct PlannedFacing {
  std::string words;  ///< "neck_facing"
  TracedEdge traced;
  std::vector<FacingRun> runs;
  FacingShape shape;
};

/// The name of its piece: "front_neck_facing_left".
std::string name_for(const PlannedFacing& planned);
/// The piece between these lines, with its grain; without notches.
Piece piece_for(const PlannedFacing& planned, const FacingLines& lines);

/// Gives the notches of the edges that it is sewn to mates on the facing, and edges without a notch
/// one. What the roll makes an edge longer or shorter by is spread evenly.
void set_notches(Pattern& pattern, const PlannedFacing& planned, Piece& facing);

/// Joins the facings to the garment and, where it is joined, to each other.
void add_seams(Pattern& pattern, const PlannedFacing& planned, const Piece& facing);
void join_facings(Pattern& pattern);

}  // namespace blockwright
