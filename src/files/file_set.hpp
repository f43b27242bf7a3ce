#pragma once

#include "blockwright/files/file_store.hpp"
#include "open_folder.hpp"
#include "set_names.hpp"

#include <functional>
#include <string>
#include <vector>

namespace blockwright {

/// Writes a set of files into a folder, all of them or none. `next_stem` gives a new stem for the
/// names beside (set_names.hpp) at each call.
///
/// The steps, and what a run killed there leaves: 1. the list is made, empty, and locked; 2. every
/// new file is written beside and flushed; 3. every older file gets a second name; 4. the list is
/// written and flushed: up to here no older file was touched; 5. each new file is renamed to its
/// place, which the last one completes: until then clear_leftovers() puts the older files back,
/// from then on the new ones stay; 6. the folder is flushed; 7. the list is removed, then the
/// second names. A step that fails undoes those before it in the same way.
///
/// Throws FileError "file.write".
void write_set(const OpenFolder& folder, const std::vector<NewFile>& files,
               const std::function<std::string()>& next_stem);

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

/// Holds a folder by a lock on a hidden file in it, ".blockwright-lock", which goes with the lock.
/// The system lets go of the lock of a process that dies; its file stays and serves the next.
/// Throws FileError "file.busy" while another process, or another lock of this one, holds it, and
/// "file.write" if it cannot be held.
FolderLock held(OpenFolder folder);

}  // namespace blockwright
