#pragma once

#include "blockwright/files/file_store.hpp"
#include "open_folder.hpp"

#include <memory>

namespace blockwright {

/// Holds a folder by a lock on a hidden file in it, ".blockwright-lock", which goes with the lock.
/// The system lets go of the lock of a process that dies; its file stays and serves the next.
/// Throws FileError "file.busy" while another process, or another lock of this one, holds it, and
/// "file.write" if it cannot be held.
std::unique_ptr<FolderLock> held(OpenFolder folder);

}  // namespace blockwright
