#pragma once

#include "blockwright/job/job.hpp"

#include <iosfwd>
#include <string>

namespace blockwright {

/// Where the fitter answers.
struct Terminal {
  std::istream& in;
  std::ostream& out;
};

/// Asks at a prompt of corrections that a newer tape already has, then what is seen on the body (or
/// goes on from the words of `job.ask`), offers the corrections that answer it, and asks by how
/// much, how the amount was read and on which side, and once the date and the toile where the file
/// has no fitting yet (`today` if she says nothing); says what it does, and writes it into the
/// client file if she says yes; as often as she wishes. What is refused is asked for again, and
/// nothing else. The end of the input ends the questions; what was written stays, nothing half
/// answered is kept.
void ask_for_corrections(FitJob& job, const std::string& today, FileStore& files,
                         const Terminal& at);

}  // namespace blockwright
