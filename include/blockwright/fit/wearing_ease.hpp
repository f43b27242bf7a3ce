#pragma once

#include "blockwright/block/wearing_ease.hpp"
#include "blockwright/fit/apply.hpp"

#include <vector>

namespace blockwright {

/// The bust line and the waist all round, as sewn, in mm.
struct WornGirths {
  double bust = 0.0;
  double waist = 0.0;
};

/// A block with the ease that a garment is worn with.
struct WornBlock {
  Pattern pattern;
  WornGirths drafted;  ///< of the block as drafted
  WornGirths fitted;   ///< of the block with its corrections
  WornGirths worn;     ///< of `pattern`
  Problems remarks;    ///< as those of FittedPattern about its lines and darts
};

/// How far a side edge is moved at the bust line at most, in mm. Common practice is 13; ours is
/// what takes a toile's ease of 50 mm to a boned bodice's of -20, where there is no armhole to
/// suffer.
inline constexpr double kMostAtSideEdge = 20.0;

/// The drafted block with its corrections and then with another ease, by the moves of the
/// corrections: the bust at the side seams, the waist as "waist taken in", the underarm up the side
/// seam, the shoulder point in. Sewn, the girths are those of `body` with the ease, and with what
/// the corrections did to them, within 0.01 mm; each half of the body gets half of it.
///
/// `body`: the girths without ease, but for what she wears more or less than others.
///
/// Guarantees: a girth that is there within 0.05 mm stays as it is, and a block of which nothing is
/// to be changed is given back as it is; side seams walk and shoulders keep their ease as after a
/// correction. Requires: as apply_rows(). Throws as apply_corrections(), and "fit.wearing_ease",
/// `where` "wearing_ease.bust" or the like, naming the nearest that can be done.
WornBlock with_wearing_ease(const Pattern& block, const std::vector<Correction>& corrections,
                            const WearingEase& ease, const WornGirths& body);

}  // namespace blockwright
