#pragma once

#include "blockwright/fit/redrawing.hpp"

namespace blockwright {

/// The seven moves that every correction of the fitting catalogue is made of. All keep the rules of
/// Redrawing; all are the identity at zero; none rounds. Points are moved by vectors in the piece's
/// own frame, amounts are mm.

/// M: moves a corner and blends both edges that meet there, to nothing at the next joint (for the
/// armhole the across point). Every other stroke is the same to the last bit; at the far ends the
/// curves keep their place and direction.
Opened with_corner_moved(const Opened& open, Corner corner, Vec by);

/// O: the curve that runs `by` mm to the left of its direction of travel (into an anticlockwise
/// piece where positive), as one cubic with the same end directions, exactly as long as the true
/// parallel: longer by `by` times the angle that it turns to the right. On front necklines of
/// drafted blocks, offset by -2, 1 and 3 mm, every point lies within 13 % of the offset off the
/// parallel, and there and back is the old curve within 0.000001 mm (tests/fit).
/// Requires: it bends one way, nowhere more sharply than `by` on the inner side; `ends` lie near
/// those of the true parallel.
CubicCurve offset_stroke(const CubicCurve& curve, double by, const Segment& ends);

/// T: shifts what lies on the outline from one node to another; lengths and angles of it are kept.
/// R: turns it about a point; the point and the lengths of it are kept. A wedge of width w at
/// distance r from the point is closed or opened by wedge_angle(w, r).
/// The strokes to either side are redrawn to meet it.
void shift_part(Redrawing& work, Redrawing::Node first, Redrawing::Node last, Vec by);
void turn_part(Redrawing& work, Redrawing::Node first, Redrawing::Node last, Point about, Angle by);
/// Carries the sign of the width. Throws InputError "fit.amount" unless |width| < 2 radius.
Angle wedge_angle(double width, double radius);
/// By how much a level line of length `run` turns to bring its end `by` mm up. Throws "fit.amount"
/// unless |by| < run.
Angle lifting_angle(double by, double run);

/// D: makes a dart's mouth wider (or narrower) about its apex. On the waist half to either side:
/// the leg ends keep their distance from the apex, and the waist is sewn shorter by what the dart
/// takes. On the shoulder the outer part turns about the apex, so that the shoulder keeps its sewn
/// length and, closed, its line. Legs stay equal, and mouth = 2 leg sin(angle / 2). Throws
/// InputError "fit.negative_dart" where less than kLeastMouth would be left.
void set_mouth(Redrawing& work, DartSpot dart, double mouth);
/// V: re-points a dart to another apex with the same mouth. On the waist the mouth is shifted along
/// its chord as far as makes both legs equal. On the shoulder the inner leg ends where it did, and
/// the outer part of the shoulder turns as the new legs ask for, so that, closed, it keeps its
/// line.
void point_dart(Redrawing& work, DartSpot dart, Point apex);

/// F: inserts a strip of `by` mm (folds one out where negative) along a level line between underarm
/// and waist that crosses the waist darts: what lies above it moves up by exactly `by`, what lies
/// below stays; sides, centre and darts are drawn anew between their ends, the darts with their
/// mouths. Marks of the side seam keep their distance from the underarm.
Opened with_strip(const Opened& open, double by);

/// The full-bust move: the side of the front is turned about a hinge at the armhole until it has
/// opened a gap at the bust point.
struct FullBust {
  Angle turn;         ///< of the side part about the hinge, and what the bust darts gain
  double drop = 0.0;  ///< mm that the bust point's lower part comes down by
};
/// The turn that opens `width` mm across at a bust point from which the hinge lies `hinge` away:
/// (width, -drop) = (1 - Rot(turn)) hinge. To first order turn = width / hinge.y and drop = width
/// hinge.x / hinge.y. A negative width overlaps (the small-bust move). Exact to rounding. Requires:
/// hinge.y > 0 and |width| < hinge.y. An overlap beyond what the hinge reaches is the widest that
/// it reaches.
/// Source: plane geometry; the trade's worked numbers in tests/fit.
FullBust full_bust(double width, Vec hinge);

/// The armhole keeps its direction at the underarm although the side seam has turned, by up to
/// 1.4 degrees: less than a joined seam shows.
void hold_armhole(Redrawing& work);

}  // namespace blockwright
