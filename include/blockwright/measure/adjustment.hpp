#pragma once

#include "blockwright/base/wording.hpp"
#include "blockwright/measure/measurement_name.hpp"

#include <vector>

namespace blockwright {

/// What reconciling did to one measurement so that the set is consistent: the pattern carries the
/// measurement plus its ease plus `by` (mm, or degrees for the shoulder slope).
struct Adjustment {
  MeasurementName name;
  double by = 0.0;
  Wording why;  ///< the bound that was reached, in the words of the trade
};

using Adjustments = std::vector<Adjustment>;

}  // namespace blockwright
