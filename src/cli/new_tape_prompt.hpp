#pragma once

#include "blockwright/job/job.hpp"

#include <iosfwd>

namespace blockwright {

/// Shows the sum of the corrections that a newer tape session has some of, measurement by
/// measurement, asks what becomes of them, and writes each answer into the client file as it is
/// given. Without an answer the sum counts this time and is asked of again the next. False: the
/// input ended, and what is left was not asked.
bool ask_of_explained(const Job& job, FileStore& files, std::istream& in, std::ostream& out);

}  // namespace blockwright
