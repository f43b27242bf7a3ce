#pragma once

#include "blockwright/files/file_store.hpp"
#include "open_folder.hpp"

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

}  // namespace blockwright
