#pragma once

#include "blockwright/check/check.hpp"

namespace blockwright {

/// Every measurement of the body that closes an unknown, taken again on the pieces. The slope is
/// left out where slants close the shoulders, unless it was taped.
std::vector<MeasureBack> measure_back(const CheckInput& input);

/// check.measure_back: a measurement does not come back.
Problems check_measure_back(const CheckInput& input);
/// draft.adjusted: a bound changed a measurement.
Problems check_limits(const CheckInput& input);

/// pattern.broken: a piece's own invariants.
Problems broken_pieces(const Pattern& pattern);
/// check.seam: joined edges are equally long, less their ease-in; notches on them agree.
Problems unequal_seams(const Pattern& pattern);
/// check.angle: square corners and smooth joined seams.
Problems check_angles(const CheckInput& input);
/// check.curve: necklines bend one way, armholes turn back at most once.
Problems check_curves(const CheckInput& input);
/// check.dart: no edge but its own runs across a dart.
Problems check_darts(const CheckInput& input);
/// check.level: the bust line meets itself at the side seam.
Problems check_levels(const CheckInput& input);
/// check.armhole: the armhole keeps clear of the waist, the back's rises to its across point; its
/// length against the armscye.
Problems check_armhole(const CheckInput& input);

}  // namespace blockwright
