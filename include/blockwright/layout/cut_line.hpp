#pragma once

#include "blockwright/base/length.hpp"
#include "blockwright/geometry/path.hpp"

#include <vector>

namespace blockwright {

/// The line to cut along: the stitch outline with a seam allowance on some of its edges.
///
/// `edges` follow one another round the outline, anticlockwise, each starting where the one before
/// ended; `widths` holds the allowance of each, 0 for none. Edges with no allowance are taken
/// over as they are. Corners:
/// - between an edge with and one without allowance, the end of the allowance is the mirror image
///   of the bare edge in the stitch line: pressed open or turned under, it lies on that edge;
/// - between two edges with allowance, the cut lines are mitred;
/// - where either would reach further than kMitreLimit widths from the corner, or there is nothing
///   to meet, the allowance ends square to its edge (two allowances: a bevel).
///
/// Guarantees: 1. the result is closed, anticlockwise and does not cross itself; 2. nothing of the
/// outline lies outside it; 3. away from the corners it lies at the allowance within
/// kOffsetTolerance. Where allowances overlap (narrow re-entrant corners) their union is taken and
/// the result is a polygon within kFlattening of it.
/// Requires: as many widths as edges, none negative; a simple outline.
/// Source: common practice for the corners, no source.
Path cut_line(const std::vector<Path>& edges, const std::vector<Length>& widths);

/// How far a polygon that stands for curves may leave them, in mm.
inline constexpr double kFlattening = 0.01;

}  // namespace blockwright
