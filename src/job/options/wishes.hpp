#pragma once

#include "blockwright/job/job.hpp"
#include "blockwright/layout/print_plan.hpp"
#include "blockwright/style/style.hpp"

namespace blockwright {

/// What goes on paper, net. Throws UsageError "paper.unknown".
PrintOptions print_of(const DrawingJob& job);
/// The same with the job's cut and allowance.
PrintOptions print_of(const Job& job);

/// The moves of a pivot job as a style. Throws UsageError "job.value".
Style style_of_moves(const Job& job);

}  // namespace blockwright
