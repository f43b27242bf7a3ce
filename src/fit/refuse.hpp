#pragma once

#include "blockwright/base/error.hpp"

#include <string>

namespace blockwright {

/// Throws InputError. `where` is left to apply_rows(), which knows the row.
[[noreturn]] inline void refuse_fit(const char* code, const std::string& message,
                                    const std::string& hint) {
  throw InputError({Severity::Error, code, "", message, hint});
}

}  // namespace blockwright
