#pragma once

#include "blockwright/measure/body.hpp"

#include <string>
#include <vector>

namespace blockwright {

/// One taped measurement that contradicts others.
struct SettledMeasurement {
  MeasurementName name;
  Measure taped;
  Measure settled;
  /// How far it would have to move to agree with the others in full, in SDs of such a movement.
  double residual = 0.0;
  /// How much of an error in it the others would show: 0 none of it, 1 all.
  double redundancy = 0.0;
};

/// A body whose taped lengths agree as those of any body do.
struct SettledTape {
  Body body;
  std::vector<SettledMeasurement> contradicting;  ///< in the order of the table; mostly none
  Adjustments moved;                              ///< of those, what moved and why
};

/// Settles every taped value as one network. Bands hold on nearly every body of that bust: side
/// length and scye depth make up the back waist length, front, side and back lengths go with each
/// other, neighbours keep their order. Values that keep them come back exactly as taped. What
/// passes them is shared out by the least squares, each value in proportion to its variance
/// (taped_sd()); what is marked sure does not move, nor does the bust girth, from which the bands
/// follow. A band that needs an estimate is left to fill_in() and the draft.
///
/// A slip of the tape is not laid on its neighbours: what passes a band by up to two tape errors
/// (SDs of its sum) is shared out whole, beyond that less and less, and from four on nothing. No
/// value moves by more than two of its own SDs or out of its limits. Judging and the checks name
/// such a slip.
///
/// Guarantees: (1) independent of the order of keys, continuous in every value; (2) idempotent
/// where no band is passed by more than two tape errors. Cost: a few microseconds.
/// docs/decisions/019-the-whole-tape.md. Requires: a body from fill_in().
SettledTape settle_tape(const Body& body);

/// The moved ones as a table for the terminal, with a sentence before it: taped, used, moved by. A
/// sentence alone where what contradicts is too far apart to be moved; empty where nothing does.
std::string settled_table(const SettledTape& tape, Unit unit);

}  // namespace blockwright
