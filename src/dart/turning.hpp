#pragma once

#include "blockwright/dart/opened.hpp"

namespace blockwright {

/// Turns what lies between two darts of one apex about that apex, anticlockwise by `turn`: with a
/// positive turn the first opens and the second closes by it, with a negative one the reverse. The
/// rest of the piece stays; edges, darts, landmarks and balance lines between are carried along
/// unchanged, balance lines are led straight across the mouths.
///
/// Requires: first < second; both darts are about one apex; no leg of another dart is crossed.
/// Exact to rounding.
void turn_between(Opened& open, DartSpot first, DartSpot second, Angle turn);

/// The same by a straight shift: both mouths change alike, and their legs are no longer equal, so
/// that they must be bridged or joined after.
void shift_between(Opened& open, DartSpot first, DartSpot second, Vec by);

}  // namespace blockwright
