#pragma once

#include "blockwright/dart/pivot.hpp"
#include "blockwright/pattern/pattern.hpp"

#include <string>
#include <vector>

namespace blockwright {

/// An allowance that is asked for on one edge, in mm.
struct EdgeAllowance {
  std::string edge;  ///< "front.side"
  double width = 0.0;
};

/// What the edges of a garment are cut with beyond the stitch line, by their class, in mm.
/// Common practice, no source: 1.5 cm at seams, 1 cm at an edge that is faced, lined or set into a
/// sleeve, 2 to 2.5 cm at a hem; a bound edge and a fold have none.
struct Allowances {
  double seams = 15.0;  ///< sides, panel seams, other joined edges
  double shoulder = 15.0;
  double centre = 15.0;  ///< a centre seam or opening
  double hem = 20.0;
  double enclosed = 10.0;  ///< neckline and armhole
  std::vector<EdgeAllowance> edges = {};
};

/// The least that a machine sews along without the edge slipping from under the foot, and the most
/// that is let out; 0 is taken for an edge that gets its allowance on the cloth. Common practice,
/// no source.
inline constexpr double kLeastEdgeAllowance = 5.0;
inline constexpr double kMostEdgeAllowance = 60.0;

/// Says of every edge how it is finished and what it is cut with; edges that are bound
/// or folded back stay so.
/// "front.side" is the side of both fronts where a fitting has made two of one.
///
/// Guarantees: no line moves. Where the two sides of a seam get different allowances a warning says
/// so ("garment.mates"), for then the cut edges do not meet when it is pinned. Throws InputError
/// "garment.allowance": a width that cannot be sewn, an edge that is not there, lies on the fold or
/// is bound.
MovedDarts with_allowances(const Pattern& pattern, const Allowances& allowances);

/// True if a style has said the allowances: bound edges alone make no garment.
bool is_finished(const Pattern& pattern);

}  // namespace blockwright
