#pragma once

#include "blockwright/base/problem.hpp"

#include <string>

namespace blockwright {

/// Far below what is drawn and far above what compilers differ by: to 0.0001, and never -0.
double rounded(double value);

/// A JSON list of problems as every report has them: severity, code, where, message, hint.
std::string problems_json(const Problems& problems);

}  // namespace blockwright
