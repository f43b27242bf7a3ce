#pragma once

#include "blockwright/geometry/path.hpp"

namespace blockwright {

/// Paths are taken apart at exact places and put together again by these; nothing is measured.

/// True if `a` comes before `b` in the direction of travel.
bool comes_before(PathPlace a, PathPlace b);

/// The part of a path before a place, the part after it, and the part between two places. A part of
/// no extent has no strokes. Requires of part_between: `from` does not come after `to`.
Path part_before(const Path& path, PathPlace place);
Path part_after(const Path& path, PathPlace place);
Path part_between(const Path& path, PathPlace from, PathPlace to);

/// The path with its start or its end moved, the rest unchanged (a cubic's nearest handle moves
/// too). Meant for rounding errors.
Path starting_at(Path path, Point start);
Path ending_at(Path path, Point end);

/// The path without strokes of no extent, which rounding leaves where a path is taken apart; a path
/// of nothing else stays. No point moves by more than 1e-9 mm.
Path without_specks(Path path);

/// The same with straight strokes that go on in one line made one stroke.
Path without_straight_joints(Path path);

/// Appends `next` to `path`: joined exactly where the gap is no more than `snap` mm (the start of
/// `next` is moved), bridged by a straight stroke where it is wider.
void append(Path& path, const Path& next, double snap = 1e-6);
void append_line(Path& path, Point to, double snap = 1e-6);

}  // namespace blockwright
