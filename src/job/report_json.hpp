#pragma once

#include "block_run.hpp"

#include <string>

namespace blockwright {

/// The report as JSON (docs/formats.md); numbers in mm and degrees, rounded to 0.0001.
std::string report_json(const BlockRun& run);

/// A report that holds problems only, for a client that could not be drafted.
std::string problems_json(const std::string& file, const Problems& problems);

}  // namespace blockwright
