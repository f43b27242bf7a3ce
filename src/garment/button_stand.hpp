#pragma once

#include "blockwright/garment/opening.hpp"

#include <string>
#include <vector>

namespace blockwright {

/// Opens these centre edges, named `place` as an opening, with buttons, as opening.hpp says.
/// Requires: each is of a piece of its own, and that of a front.
MovedDarts with_buttons(const Pattern& pattern, const OpeningPlan& plan,
                        const std::vector<EdgeOf>& edges, const std::string& place);

}  // namespace blockwright
