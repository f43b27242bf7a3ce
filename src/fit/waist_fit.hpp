#pragma once

#include "blockwright/fit/redrawing.hpp"

namespace blockwright {

/// The half piece with its side waist point turned about the underarm point, so that the side seam
/// keeps its length, until the sewn waist is `by` mm longer than it is. Throws InputError
/// "fit.amount" where the side would slant by more than a third.
Opened with_waist_let_out_at_side(const Opened& open, double by);

/// The waist edge moved up by `by` at its one end and not at all at the other, square at both, with
/// everything between moved by a smooth share. Moves no other point; works on what `work` has.
enum class WaistEnd { Centre, Side };
void raise_waist(Redrawing& work, const Opened& open, WaistEnd end, double by);

}  // namespace blockwright
