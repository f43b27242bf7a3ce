#pragma once

#include "blockwright/job/job.hpp"
#include "blockwright/measure/client_edit.hpp"

namespace blockwright {

/// The item-th of --add with what belongs to it: its amount as a file of that unit has it, and its
/// own --as, --side and --seen. Throws UsageError "job.value".
NewCorrection correction_of(const FitJob& job, std::size_t item, Unit file_unit);

}  // namespace blockwright
