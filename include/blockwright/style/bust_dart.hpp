#pragma once

#include "blockwright/style/style.hpp"

namespace blockwright {

/// The moves that divide bust darts too wide to sew in one, over kWideToSew or with a mouth wider
/// than the shoulder's widest: what a shoulder cannot take goes to the
/// usual place on the side, where a very wide one becomes two, and all turn about the bust point.
/// None where the dart is narrow enough, was moved, or the piece has a side dart already.
///
/// What goes to the side is decided on the block as drafted, with some room in the shoulder: so a
/// dart that a fitting pinned in the shoulder changes there, until it is too wide. Throws as
/// apply_style() where the side has no room.
Style bust_dart_division(const BlockVersions& block);

/// True if a step of the style takes from the bust dart in the shoulder, or gives to it: then the
/// maker decides where it goes.
bool moves_bust_dart(const Style& style);

}  // namespace blockwright
