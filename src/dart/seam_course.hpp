#pragma once

#include "blockwright/dart/panels.hpp"
#include "moving.hpp"
#include "smooth_seam.hpp"

namespace blockwright {

/// The darts at both ends of a panel seam, in the order of the outline.
struct SeamEnds {
  DartSpot first, second;
};

/// What the seam is drawn from. Takes the darts that lie between its waist end and the side out of
/// the piece: the strip of cloth before each moves to its other leg, and the seam takes up what
/// they did on every level. Throws "dart.place" where `seam.beside` is out of its range or has no
/// meaning. Requires: the first end is on the waist.
SeamCourse course_of(Opened& open, const SeamEnds& ends, const PanelSeam& seam);

/// The lines of the course. In front the side panel is eased in over the bust: where it is less
/// than 4 mm longer, its waist end is let down until it is, and the course says by how much. Throws
/// "dart.panel" where more would have to be eased in than a seam takes.
SeamLines lines_of(SeamCourse& course, const Piece& piece, const PanelSeam& seam);

/// A stretch of edge with its start moved; the move fades out towards its end, and the directions
/// at both ends stay.
Path with_start_moved(const Path& stretch, Vec by);

}  // namespace blockwright
