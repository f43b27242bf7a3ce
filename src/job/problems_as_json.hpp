#pragma once

#include "blockwright/base/problem.hpp"

#include <nlohmann/json.hpp>

namespace blockwright {

/// Problems as every report has them: severity, code, where, message, hint.
nlohmann::ordered_json problems_as_json(const Problems& problems);

/// Far below what is drawn and far above what compilers differ by: to 0.0001, and never -0.
double rounded(double value);

}  // namespace blockwright
