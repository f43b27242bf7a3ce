#include "file_set.hpp"

#include <cerrno>
#include <fcntl.h>
#include <map>

namespace blockwright {
namespace {

/// More than the list of any set.
constexpr std::size_t kLongestList = std::size_t{1} << 20;

/// A new file that is still beside has not been put in its place: its name is as it was.
bool put_back_one(const OpenFolder& folder, const std::string& stem, std::size_t i,
                  const SetEntry& entry) {
  FileStatus beside, older;
  if (!folder.status(new_name(stem, i), beside)) return false;
  if (beside.kind != FileKind::None) return true;
  if (!entry.had_older) return folder.rename(entry.name, new_name(stem, i)) || errno == ENOENT;
  if (!folder.status(old_name(stem, i), older)) return false;
  const bool is_back = older.kind == FileKind::None;
  return is_back || folder.rename(old_name(stem, i), entry.name);
}

/// Whether the process of a list is dead. The list is held by this one from then on.
bool take_over(OpenFile& list) {
  FileStatus status;
  return list.lock() && list.status(status) && status.kind == FileKind::File && status.links > 0;
}

enum class Outcome { Complete, Incomplete, Unknown };

/// How far a dead process had come: the last file put in its place made the set complete.
Outcome outcome_of(const OpenFolder& folder, const std::string& stem, const SetList& list) {
  for (std::size_t i = 0; i < list.entries.size(); ++i) {
    FileStatus beside;
    if (!folder.status(new_name(stem, i), beside)) return Outcome::Unknown;
    if (beside.kind != FileKind::None) return Outcome::Incomplete;
  }
  return list.taken_back ? Outcome::Incomplete : Outcome::Complete;
}

/// True if only what is beside is left to remove. Adds to `beside` what goes back there.
bool finish(const OpenFolder& folder, const std::string& stem, OpenFile& file,
            std::vector<std::string>& beside) {
  std::string text;
  if (!take_over(file) || !file.read(text, kLongestList)) return false;
  const std::optional<SetList> list = set_list_in(text);
  if (!list) return true;  // it died before the first file was put in its place
  const Outcome outcome = outcome_of(folder, stem, *list);
  for (std::size_t i = 0; i < list->entries.size(); ++i) beside.push_back(new_name(stem, i));
  if (outcome == Outcome::Incomplete && !put_back(folder, stem, list->entries)) {
    fail_writing(folder.path(), "older files that a killed run had set aside cannot be put back",
                 errno);
  }
  return outcome != Outcome::Unknown;
}

/// The list goes first: what has none is nobody's.
void clear_set(const OpenFolder& folder, const std::string& stem, std::vector<std::string> beside) {
  OpenFile list = folder.open(list_name(stem), O_RDWR);
  if (list.is_open() ? !finish(folder, stem, list, beside) : errno != ENOENT) return;
  if (!folder.remove(list_name(stem))) return;
  for (const std::string& name : beside) (void)folder.remove(name);
}

}  // namespace

bool put_back(const OpenFolder& folder, const std::string& stem,
              const std::vector<SetEntry>& entries) {
  int error = 0;
  for (std::size_t i = 0; i < entries.size(); ++i) {
    if (!put_back_one(folder, stem, i, entries[i]) && error == 0) error = errno;
  }
  (void)folder.flush();
  errno = error;
  return error == 0;
}

void clear_leftovers(const OpenFolder& folder) {
  std::vector<std::string> names;
  if (!folder.names(names)) fail_writing(folder.path(), "the folder cannot be read", errno);
  std::map<std::string, std::vector<std::string>> sets;
  for (const std::string& name : names) {
    const auto stem = set_stem_of(name);
    if (stem) sets[*stem].push_back(name);
  }
  for (const auto& [stem, beside] : sets) clear_set(folder, stem, beside);
}

}  // namespace blockwright
