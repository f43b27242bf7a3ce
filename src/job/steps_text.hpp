#pragma once

#include "block_run.hpp"

#include <string>

namespace blockwright {

/// The draft log as numbered instructions for pencil, ruler and compass, in the person's unit.
std::string steps_text(const BlockRun& run);

}  // namespace blockwright
