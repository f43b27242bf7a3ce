#include "blockwright/base/error.hpp"
#include "blockwright/files/file_store.hpp"
#include "file_set.hpp"
#include "open_folder.hpp"

#include <algorithm>
#include <cerrno>
#include <fcntl.h>
#include <filesystem>
#include <system_error>
#include <unistd.h>
#include <utility>

namespace blockwright {
namespace {

namespace fs = std::filesystem;

/// A client or job file is a page of numbers; more than this is some other file.
constexpr std::size_t kLargestInput = std::size_t{16} << 20;

/// Opens without waiting: a pipe that nobody writes to would hold the program up for ever.
OpenFile opened_to_read(SystemCalls& calls, const std::string& path) {
  if (path.find('\0') != std::string::npos) {
    refuse_reading(path.substr(0, path.find('\0')), "the path goes on behind a NUL character",
                   "take the NUL away");
  }
  OpenFile file(calls, uninterrupted([&] {
                  return calls.open(AT_FDCWD, path, O_RDONLY | O_NONBLOCK | O_NOCTTY | O_CLOEXEC,
                                    0);
                }));
  if (!file.is_open()) fail_reading(path, "the file cannot be opened", errno);
  return file;
}

void require_regular(const std::string& path, OpenFile& file) {
  FileStatus status;
  if (!file.status(status)) fail_reading(path, "the file cannot be read", errno);
  if (status.kind == FileKind::File) return;
  const char* what = status.kind == FileKind::Folder ? "this is a folder, not a file"
                                                     : "this is a pipe or a device, not a file";
  refuse_reading(path, what, "name a client or job file");
}

bool is_hidden(const fs::path& path) { return path.filename().string().starts_with('.'); }

std::string kind_words(fs::file_type type) {
  switch (type) {
    case fs::file_type::directory:
      return "a folder";
    case fs::file_type::fifo:
      return "a pipe";
    case fs::file_type::socket:
      return "a socket";
    default:
      return "a device";
  }
}

/// Why a name is not that of a file to be read; empty if it is.
std::string why_not_read(const fs::directory_entry& entry) {
  std::error_code error, ignored;
  if (entry.is_regular_file(ignored)) return "";
  const fs::file_type type = entry.status(error).type();
  if (type == fs::file_type::not_found) return "a link that leads nowhere";
  if (error) return error.message();
  return (entry.is_symlink(ignored) ? "a link to " : "") + kind_words(type);
}

/// Looks through a folder for files whose names end in `ending`.
class Search {
 public:
  Search(const std::string& ending, Listing which) : ending_(ending), which_(which) {}

  /// Links to folders are not followed, so that none is met twice.
  void look_through(const std::string& folder) {
    std::vector<fs::path> subfolders;
    if (const auto error = look_at_names(folder, subfolders)) {
      fail_reading(folder, "the folder cannot be read", error.value());
    }
    while (!subfolders.empty()) {
      const fs::path next = subfolders.back();
      subfolders.pop_back();
      if (const auto error = look_at_names(next, subfolders)) {
        others.push_back({next.string(), "a folder that cannot be read: " + error.message()});
      }
    }
    std::ranges::sort(files);
    std::ranges::sort(others, {}, &NotRead::path);
  }

  std::vector<std::string> files;
  std::vector<NotRead> others;

 private:
  std::error_code look_at_names(const fs::path& folder, std::vector<fs::path>& subfolders) {
    std::error_code error;
    for (auto it = fs::directory_iterator(folder, error); !error && it != fs::directory_iterator();
         it.increment(error)) {
      if (is_hidden(it->path()) == (which_ == Listing::Hidden)) look_at(*it, subfolders);
    }
    return error;
  }

  void look_at(const fs::directory_entry& entry, std::vector<fs::path>& subfolders) {
    std::error_code ignored;
    const bool deep = which_ == Listing::WithSubfolders;
    const bool named = entry.path().native().ends_with(ending_);
    const bool folder = (named || deep) && entry.is_directory(ignored);
    if (deep && folder && !entry.is_symlink(ignored)) return subfolders.push_back(entry.path());
    if (!named && !folder) return;
    const std::string reason = why_not_read(entry);
    if (reason.empty()) return files.push_back(entry.path().string());
    others.push_back({entry.path().string(), reason});
  }

  const std::string& ending_;
  Listing which_;
};

Search searched(const fs::path& folder, const std::string& ending, Listing which) {
  Search search(ending, which);
  search.look_through(folder.string());
  return search;
}

}  // namespace

std::string DiskFiles::read(const std::string& path) {
  OpenFile file = opened_to_read(calls_, path);
  require_regular(path, file);
  std::string bytes;
  if (!file.read(bytes, kLargestInput + 1)) fail_reading(path, "the file cannot be read", errno);
  if (bytes.size() > kLargestInput) {
    refuse_reading(path, "the file is larger than 16 MiB", "this is no client or job file");
  }
  return bytes;
}

std::vector<std::string> DiskFiles::list(const std::string& folder, const std::string& ending,
                                         Listing which) {
  return searched(folder, ending, which).files;
}

std::vector<NotRead> DiskFiles::not_read(const std::string& folder, const std::string& ending,
                                         Listing which) {
  return searched(folder, ending, which).others;
}

void DiskFiles::write_all(const std::vector<NewFile>& files) {
  if (files.empty()) return;
  const OpenFolder folder(calls_, place_for_writing(files.front().path).folder);
  {
    const std::lock_guard<std::mutex> one_at_a_time(clearing_);
    if (cleared_.insert(folder.path()).second) clear_leftovers(folder);
  }
  write_set(folder, files, [this] { return set_stem(::getpid(), sets_++); });
}

FolderLock DiskFiles::lock(const std::string& folder) {
  FolderLock lock = held(OpenFolder(calls_, folder));
  const OpenFolder opened(calls_, folder);
  const std::lock_guard<std::mutex> one_at_a_time(clearing_);
  clear_leftovers(opened);
  cleared_.insert(opened.path());
  return lock;
}

}  // namespace blockwright
