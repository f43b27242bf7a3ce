#pragma once

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

}  // namespace blockwright
