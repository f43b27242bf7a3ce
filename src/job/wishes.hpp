#pragma once

#include "blockwright/job/job.hpp"
#include "blockwright/layout/print_plan.hpp"
#include "blockwright/measure/client.hpp"
#include "blockwright/style/style.hpp"

#include <optional>

namespace blockwright {

/// The job's words, judged.
struct Wishes {
  PrintOptions print;
  bool svg = false, pdf = false, json = false;
  std::optional<Unit> unit;
  bool report_json = false;
};

/// Throws UsageError "job.value" for the option `--key`.
[[noreturn]] void refuse_option(const std::string& key, const std::string& message,
                                const std::string& hint);

/// Throws UsageError "job.value" or "paper.unknown".
Wishes wishes_of(const Job& job);

/// The moves of a pivot job as a style. Throws UsageError "job.value".
Style style_of_moves(const Job& job);

}  // namespace blockwright
