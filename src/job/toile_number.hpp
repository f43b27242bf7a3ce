#pragma once

#include "blockwright/measure/client.hpp"

#include <string>

namespace blockwright {

/// Refuses a toile that is neither of the file nor the one that is sewn next, by the place of its
/// option. Throws UsageError "job.value". 0, all corrections, is always there.
void judge_toile(int toile, const Client& client, const std::string& place);

}  // namespace blockwright
