#pragma once

#include "blockwright/check/check.hpp"

#include <vector>

namespace blockwright {

/// Every measurement of the body that closes an unknown, taken again on the pieces. The slope is
/// left out where slants close the shoulders, unless it was taped.
std::vector<MeasureBack> measure_back(const CheckInput& input);

/// check.measure_back: a measurement does not come back.
Problems check_measure_back(const CheckInput& input);

/// draft.adjusted: a bound changed a measurement.
Problems check_limits(const CheckInput& input);

}  // namespace blockwright
