#pragma once

#include "blockwright/job/job.hpp"

#include <iosfwd>
#include <string>

namespace blockwright {

/// Takes a tape session at the prompt, measurement by measurement, and writes it into the client
/// file: a new file where there is none, a new session where there is none of that date, else what
/// that session has not got yet. Whatever was entered is written when the person is done, says
/// "save", or the input ends. `today` is proposed as the date.
///
/// Gives whether anything was written. Throws as reading the client file and writing it.
bool ask_for_tape(const TapeJob& job, const std::string& today, FileStore& files, std::istream& in,
                  std::ostream& out);

}  // namespace blockwright
