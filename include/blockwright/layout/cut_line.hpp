#pragma once

#include "blockwright/base/length.hpp"
#include "blockwright/geometry/path.hpp"

#include <vector>

namespace blockwright {

/// How the allowances of two edges end at the corner between them.
enum class CornerCut {
  Mitre,          ///< each runs on straight to the other's cut line; a bare one's is its edge
  OnFold,         ///< the same with a fold of the cloth, which is followed as far as it takes
  TurnsBefore,    ///< that of the edge before the corner is folded back on the finished piece ...
  TurnsAfter,     ///< ... or that after it: it ends as the mirror image, in its stitch line, of the
                  ///< other's cut line, so that nothing of it sticks out when it is folded back
  MirrorsBefore,  ///< the same of a facing that is cut on, as far as the other's line takes it
  MirrorsAfter,
  SquareBefore,  ///< that of the edge before the corner ends square to it, where the other's cut
  SquareAfter,   ///< line crosses its stitch line: two panels sewn there have ends that match
};

/// An edge of the outline and what its cut line does.
struct CutEdge {
  Path edge;
  Length width;                         ///< of the allowance; 0 for none
  CornerCut at_end = CornerCut::Mitre;  ///< at the corner with the next edge
};

/// The line to cut along: the stitch outline with a seam allowance on some of its edges.
///
/// The edges follow one another round the outline, anticlockwise, each starting where the one
/// before ended. Edges with no allowance are taken over as they are. Where an allowance that turns
/// or ends square would reach further than kMitreLimit of the wider one's widths beyond the point
/// that it ends from, or its image would fall inside the piece, the two are mitred; where a mitre
/// between two allowances would reach further than that from the corner, it is a bevel.
///
/// Guarantees: 1. the result is closed, anticlockwise and does not cross itself; 2. nothing of the
/// outline lies outside it; 3. away from the corners it lies at the allowance within
/// kOffsetTolerance; 4. on a fold nothing of it passes the fold line led on straight.
/// Where allowances overlap (narrow re-entrant corners) their union is taken and
/// the result is a polygon within kFlattening of it.
/// Requires: widths not negative; a simple outline.
/// Source: common practice for the corners, no source.
Path cut_line(const std::vector<CutEdge>& edges);

/// The same with corners as a toile has them: `widths` holds the allowance of each edge. Beside a
/// bare edge an allowance is turned, or ends square where it cannot be; others are mitred.
Path cut_line(const std::vector<Path>& edges, const std::vector<Length>& widths);

/// How far a polygon that stands for curves may leave them, in mm.
inline constexpr double kFlattening = 0.01;

}  // namespace blockwright
