#pragma once

#include "blockwright/job/job.hpp"

namespace blockwright {

/// run_job() for one of many clients, who need not all have come as far as the toile that is named.
JobResult run_client(const Job& job, FileStore& files);

}  // namespace blockwright
