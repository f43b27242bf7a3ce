#pragma once

#include "blockwright/base/error.hpp"

#include <string>

namespace blockwright {

/// What is wrong with a step that finishes edges.
struct RefusedFinish {
  std::string code;
  std::string key;  ///< of the step in a style file
  std::string where;
  Wording message, hint;
};

/// Throws it as an InputError.
[[noreturn]] void refuse(const RefusedFinish& refused);

}  // namespace blockwright
