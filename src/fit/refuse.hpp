#pragma once

#include "blockwright/base/error.hpp"
#include "blockwright/measure/measurement_name.hpp"

#include <initializer_list>
#include <string>

namespace blockwright {

/// Throws InputError. `where` is left to apply_rows(), which knows the row; `again` are the
/// measurements that the hint says to take again.
[[noreturn]] inline void refuse_fit(const char* code, const Wording& message, const Wording& hint,
                                    std::initializer_list<MeasurementName> again = {}) {
  Problem problem{Severity::Error, code, "", message, hint};
  for (const MeasurementName name : again) problem.measurements.emplace_back(info(name).key);
  throw InputError(problem);
}

}  // namespace blockwright
