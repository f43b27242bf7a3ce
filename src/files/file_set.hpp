#pragma once

#include "blockwright/files/file_store.hpp"
#include "open_folder.hpp"

#include <functional>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace blockwright {

// While a set of files is written, the folder holds files beside, named after the process and the
// set:
//   .blockwright-4711-0.set     the list of the set, locked as long as its process lives
//   .blockwright-4711-0.2.new   the third file (the first is 0), until it is put in its place
//   .blockwright-4711-0.2.old   the older file of that name
// No other file of the program has names of this form, and no other is ever removed.

/// What a set has in common: ".blockwright-4711-0".
std::string set_stem(long process, unsigned set);
std::string list_name(const std::string& stem);
std::string new_name(const std::string& stem, std::size_t i);
std::string old_name(const std::string& stem, std::size_t i);

/// The stem of the set that a file of this name belongs to; nothing if to none.
std::optional<std::string> set_stem_of(const std::string& name);

/// A file of a set.
struct SetEntry {
  std::string name;
  bool had_older = false;  ///< whether one of its name stood there before

  bool operator==(const SetEntry&) const = default;
};

/// A set as its list tells it.
struct SetList {
  std::vector<SetEntry> entries;
  bool taken_back = false;  ///< complete, and yet to be put back
};

/// The text of a list. It is whole from the moment before the first file is put in its place.
std::string set_list_text(const std::vector<SetEntry>& entries);
/// Written behind the text, says that the older files are being put back.
std::string taken_back_text();
/// Nothing if the text is not whole, or names what no set has: a file outside the folder.
std::optional<SetList> set_list_in(std::string_view text);

/// Writes a set of files into a folder, all of them or none. `next_stem` gives a new stem for the
/// names beside at each call.
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
