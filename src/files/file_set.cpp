#include "file_set.hpp"

#include "blockwright/base/error.hpp"

#include <cerrno>
#include <fcntl.h>
#include <limits>
#include <system_error>

namespace blockwright {
namespace {

constexpr unsigned kOwnerAndGroup = 0640;

/// What stands under a name before the set is written.
struct Older {
  bool is_there = false;
  unsigned mode = kOwnerAndGroup;
};

/// Only a regular file is ever replaced.
Older older_at(const OpenFolder& folder, const std::string& name) {
  FileStatus status;
  const std::string path = folder.path_of(name);
  if (!folder.status(name, status)) fail_writing(path, "the file cannot be made", errno);
  switch (status.kind) {
    case FileKind::None:
      return {};
    case FileKind::File:
      return {true, status.mode & kOwnerAndGroup};
    case FileKind::Link:
      refuse_writing(path, "a link has this name, and links are not followed",
                     "remove the link, or name what it leads to");
    case FileKind::Folder:
      refuse_writing(path, "a folder has this name", "move it away" + std::string(kOtherFolder));
    case FileKind::Other:
      break;
  }
  refuse_writing(path, "a pipe or device has this name",
                 "move it away" + std::string(kOtherFolder));
}

/// Makes a file beside. Names beside are this set's own: what else has one is a leftover.
OpenFile made_beside(const OpenFolder& folder, const std::string& name, unsigned mode) {
  const int flags = O_WRONLY | O_CREAT | O_EXCL;
  OpenFile file = folder.open(name, flags, mode);
  if (file.is_open() || errno != EEXIST || !folder.remove(name)) return file;
  return folder.open(name, flags, mode);
}

/// Whether no other process took the list for a leftover between its making and its locking. Where
/// the file system has no locks nobody does.
bool is_held(OpenFile& list) {
  if (!list.lock() && errno == EWOULDBLOCK) return false;
  FileStatus status;
  return !list.status(status) || status.links > 0;
}

/// One set on its way into the folder.
class FileSet {
 public:
  FileSet(const OpenFolder& folder, const std::vector<NewFile>& files)
      : folder_(folder), files_(files) {
    std::set<std::string> names;
    for (const NewFile& file : files) {
      const FilePlace place = place_for_writing(file.path);
      const std::string& name = place.name;
      require(place.folder == folder.path() && names.insert(name).second,
              "a set of files has different names in one folder");
      const Older older = older_at(folder, name);
      entries_.push_back({name, older.is_there});
      modes_.push_back(older.mode);
    }
  }

  void write(const std::function<std::string()>& next_stem) {
    OpenFile list = begun_list(next_stem);
    try {
      write_beside();
      keep_older();
      write_list(list);
      put_in_place();
    } catch (const Error& error) {
      take_back(list, error);
      throw;
    }
    clear();
  }

 private:
  [[noreturn]] void fail(std::size_t i, const char* what) const {
    fail_writing(files_[i].path, what, errno);
  }

  OpenFile begun_list(const std::function<std::string()>& next_stem) {
    for (;;) {
      stem_ = next_stem();
      OpenFile list = folder_.open(list_name(stem_), O_WRONLY | O_CREAT | O_EXCL, kOwnerAndGroup);
      if (!list.is_open() && errno != EEXIST) fail(0, "the file cannot be made");
      if (list.is_open() && is_held(list)) return list;
    }
  }

  void write_beside() const {
    std::vector<OpenFile> beside;
    beside.reserve(files_.size());
    for (std::size_t i = 0; i < files_.size(); ++i) {
      beside.push_back(made_beside(folder_, new_name(stem_, i), modes_[i]));
      if (!beside[i].is_open()) fail(i, "the file cannot be made");
      if (!beside[i].write(files_[i].bytes)) fail(i, "the file cannot be written");
      beside[i].start_flush();
    }
    flush_beside(beside);
  }

  void flush_beside(std::vector<OpenFile>& beside) const {
    for (std::size_t i = 0; i < beside.size(); ++i) {
      if (!beside[i].flush() || !beside[i].close()) fail(i, "the file cannot be written");
    }
  }

  /// A second name keeps the older file; where the file system has none, or grants none, a copy
  /// does.
  void keep_older() const {
    for (std::size_t i = 0; i < entries_.size(); ++i) {
      if (!entries_[i].had_older) continue;
      const bool kept = folder_.link(entries_[i].name, old_name(stem_, i)) || copy_older(i);
      if (!kept) fail(i, "the older file cannot be kept until the new one is in its place");
    }
  }

  [[nodiscard]] bool copy_older(std::size_t i) const {
    std::string bytes;
    OpenFile from = folder_.open(entries_[i].name, O_RDONLY);
    if (!from.is_open() || !from.read(bytes, std::numeric_limits<std::size_t>::max())) return false;
    OpenFile to = made_beside(folder_, old_name(stem_, i), modes_[i]);
    return to.is_open() && to.write(bytes) && to.flush() && to.close();
  }

  void write_list(OpenFile& list) {
    if (!list.write(set_list_text(entries_)) || !list.flush())
      fail(0, "the file cannot be written");
    listed_ = true;
  }

  void put_in_place() const {
    for (std::size_t i = 0; i < entries_.size(); ++i) {
      const bool placed = folder_.rename(new_name(stem_, i), entries_[i].name);
      if (!placed) fail(i, "the file cannot be put in its place");
    }
    if (!folder_.flush()) fail(0, "the file cannot be put in its place");
  }

  /// Throws an error of its own where older files could not be put back; their list then stays.
  void take_back(OpenFile& list, const Error& why) const {
    if (listed_) (void)list.write(taken_back_text());
    if (listed_ && !put_back(folder_, stem_, entries_)) {
      Problem problem = why.problem();
      problem.message +=
          "; an older file could not be put back: " + std::generic_category().message(errno);
      problem.hint = "check the disk, then run again: the next run into this folder puts it back";
      throw FileError(problem);
    }
    clear();
  }

  /// The list goes first: without it the others are nobody's, and the next run removes them.
  void clear() const {
    if (!folder_.remove(list_name(stem_))) return;
    for (std::size_t i = 0; i < entries_.size(); ++i) {
      (void)folder_.remove(old_name(stem_, i));
      (void)folder_.remove(new_name(stem_, i));
    }
  }

  const OpenFolder& folder_;
  const std::vector<NewFile>& files_;
  std::vector<SetEntry> entries_;
  std::vector<unsigned> modes_;
  std::string stem_;
  bool listed_ = false;  ///< the list is whole: names may have been touched
};

}  // namespace

void write_set(const OpenFolder& folder, const std::vector<NewFile>& files,
               const std::function<std::string()>& next_stem) {
  FileSet(folder, files).write(next_stem);
}

}  // namespace blockwright
