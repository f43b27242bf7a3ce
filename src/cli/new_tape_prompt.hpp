#pragma once

#include "blockwright/job/job.hpp"

#include <iosfwd>

namespace blockwright {

/// Shows the sum of the corrections that a newer tape session has some of, measurement by
/// measurement, asks what becomes of them, and writes the answers into the client file. Without an
/// answer, or at the end of the input, the sum counts this time and is asked of again the next.
void ask_of_explained(const Job& job, FileStore& files, std::istream& in, std::ostream& out);

}  // namespace blockwright
