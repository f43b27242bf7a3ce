#pragma once

#include "blockwright/dart/opened.hpp"

#include <vector>

namespace blockwright {

/// Makes darts that lie side by side out of one, or one out of two neighbours, each turning about
/// an apex of its own. What lies outside the group keeps its place exactly: turning by all of them
/// is one turn about one point.

/// Puts `angles.size()` darts in the place of one, their axes parallel, about `spacing` mm
/// apart along the closed edge.
/// The angles' sum is the dart's. New darts are named `name` + "_1" ... in the order of the edge,
/// or against it if `count_from_end`. Returns false, and changes nothing, if the edge has no room.
bool part_parallel(Opened& open, DartSpot one, const std::vector<Angle>& angles, double spacing,
                   bool count_from_end);

/// Makes neighbours on one edge one dart, which keeps the name and place of `into`.
void join_neighbours(Opened& open, DartSpot first, bool into_second);

}  // namespace blockwright
