#pragma once

#include "blockwright/pattern/pattern.hpp"

#include <string>
#include <vector>

namespace blockwright {

/// Where the ends of a strip round these edges meet; empty where it ends at an opening.
std::string join_of(const Pattern& pattern, const std::vector<EdgeOf>& edges);

}  // namespace blockwright
