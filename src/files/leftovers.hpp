#pragma once

#include "open_folder.hpp"
#include "set_names.hpp"

#include <string>
#include <vector>

namespace blockwright {

/// Puts back what stood under the names of a set whose list is whole: an older file takes its place
/// again, a new file that had none goes back beside. A file that was not yet put in its place is
/// left alone. May be begun again at any point where it was broken off. False, with errno, if
/// something could not be put back.
bool put_back(const OpenFolder& folder, const std::string& stem,
              const std::vector<SetEntry>& entries);

/// Finishes the sets that dead processes left: puts back older files where a set is incomplete, and
/// removes what is beside. Sets of live processes are left alone, and so are those that cannot be
/// judged. Throws FileError "file.write" if an older file cannot be put back.
void clear_leftovers(const OpenFolder& folder);

}  // namespace blockwright
