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

/// Adds the files of a folder, perhaps those of its subfolders; links to folders are not followed,
/// so that none is met twice.
void add_files(const fs::path& folder, const std::string& ending, Listing which,
               std::vector<std::string>& found) {
  std::error_code error, ignored;
  std::vector<fs::path> subfolders;
  for (auto it = fs::directory_iterator(folder, error); !error && it != fs::directory_iterator();
       it.increment(error)) {
    const fs::path& path = it->path();
    if (is_hidden(path) != (which == Listing::Hidden)) continue;
    if (path.native().ends_with(ending) && it->is_regular_file(ignored))
      found.push_back(path.string());
    const bool deep = which == Listing::WithSubfolders;
    if (deep && !it->is_symlink(ignored) && it->is_directory(ignored)) subfolders.push_back(path);
  }
  if (error) fail_reading(folder.string(), "the folder cannot be read", error.value());
  for (const fs::path& subfolder : subfolders) add_files(subfolder, ending, which, found);
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
  std::vector<std::string> found;
  add_files(folder, ending, which, found);
  std::sort(found.begin(), found.end());
  return found;
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
