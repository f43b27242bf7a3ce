#pragma once

#include "blockwright/job/job.hpp"

#include <iosfwd>

namespace blockwright {

/// Asks at a prompt of corrections that a newer tape already has, then what is seen on the body,
/// offers the corrections that answer it, and asks by how much, how the amount was read and on
/// which side; as often as the fitter wishes. What was answered is added to the client file. The
/// end of the input ends the questions; nothing half answered is kept.
void ask_for_corrections(FitJob& job, FileStore& files, std::istream& in, std::ostream& out);

}  // namespace blockwright
