#pragma once

#include "blockwright/dart/opened.hpp"
#include "blockwright/geometry/path.hpp"

namespace blockwright {

/// A path that was blended, and how far its points moved at most, in mm.
struct Blended {
  Path path;
  double moved = 0.0;
};

/// The path with its end (or start) direction turned, anticlockwise positive. Both ends of the path
/// stay, and so does everything further than `reach` mm from the turned end; the change fades out
/// smoothly. For small turns: about 20 degrees. A path whose end bows too far to be turned so is
/// left as it is.
Blended with_end_turned(const Path& path, Angle by, double reach);
Blended with_start_turned(const Path& path, Angle by, double reach);

/// Blending makes a stretch a trifle longer or shorter: a mark at its end stays on it.
void keep_marks_on(Opened& open, std::size_t edge, std::size_t stretch);

/// Largest distance of points of one path from another, in mm, found from 32 samples of each
/// stroke.
double largest_distance(const Path& of, const Path& from);

}  // namespace blockwright
