#pragma once

#include "blockwright/job/options.hpp"

namespace blockwright {

/// The job with the options of a job file.
template <class AnyJob = Job>
AnyJob read_job(const std::string& text, std::string_view file, AnyJob job) {
  read_job_file(text, file, JobOptions(job));
  return job;
}

}  // namespace blockwright
