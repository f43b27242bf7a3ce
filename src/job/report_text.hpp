#pragma once

#include "block_run.hpp"
#include "blockwright/layout/print_plan.hpp"

#include <string>

namespace blockwright {

/// The report as a table a maker can read, in her unit.
std::string report_text(const BlockRun& run, const PrintOptions& print);

}  // namespace blockwright
