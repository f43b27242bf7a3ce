#pragma once

#include "blockwright/dart/pivot.hpp"
#include "blockwright/pattern/pattern.hpp"

namespace blockwright {

/// A centre that lies on the fold of the cloth and is to be a seam. The back of a block is cut as a
/// pair in any case.
struct CentreSeam {
  enum class At { Front };
  At at = At::Front;
};

/// Makes the centre front a seam: the front is cut as a pair, and a notch stands at the level of
/// the bust line, or in the middle of the edge where that level is nearer than 15 mm to an end
/// (both ours). Where a fitting has made two fronts of one, their seam gets the notches. Later
/// moves leave it a seam.
///
/// Guarantees: no line moves. Throws InputError "dart.blocked": a dart opens on the centre.
MovedDarts with_centre_seam(const Pattern& pattern, const CentreSeam& seam);

/// True of a centre edge that is a seam by choice: it has notches to be sewn by.
bool is_seam_by_choice(const Piece& piece, const Edge& centre);

}  // namespace blockwright
