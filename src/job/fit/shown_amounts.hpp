#pragma once

#include "block_pass.hpp"
#include "blockwright/layout/change_page.hpp"

#include <vector>

namespace blockwright {

/// Where the page of a fitting shows the amounts of these corrections: at the place whose length
/// the fitter watches (measure/correction_table.hpp), as each correction alone moves it; of one
/// whose watched length ends at no such place where it moves most. Each in the words that it was
/// given in, with its number where there are several. Requires: run.block is the block without
/// corrections. Cost: about a draft for each.
std::vector<ShownAmount> shown_amounts(const std::vector<NumberedCorrection>& corrections,
                                       const BlockRun& run);

}  // namespace blockwright
