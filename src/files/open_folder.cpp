#include "open_folder.hpp"

#include "blockwright/files/safe_name.hpp"

#include <algorithm>
#include <fcntl.h>
#include <utility>

namespace blockwright {
namespace {

constexpr std::size_t kChunk = 1 << 16;

constexpr unsigned kFolderOfOwnerAndGroup = 0750;

bool make_folder(SystemCalls& calls, const std::string& path) {
  const auto made = uninterrupted([&] { return calls.make_folder(path, kFolderOfOwnerAndGroup); });
  return made == 0 || errno == EEXIST;
}

/// Each folder on the way, from the top. One that cannot be made may be there all the same, where
/// the last one then tells; where that one has no folder to be in, the first that failed is the
/// reason.
bool make_folders(SystemCalls& calls, const std::string& path) {
  int first_error = 0;
  for (std::size_t slash = path.find('/', 1); slash != std::string::npos;
       slash = path.find('/', slash + 1)) {
    const bool made = make_folder(calls, path.substr(0, slash));
    if (!made && first_error == 0) first_error = errno;
  }
  if (make_folder(calls, path)) return true;
  if (errno == ENOENT && first_error != 0) errno = first_error;
  return false;
}

int open_folder(SystemCalls& calls, const std::string& path) {
  return uninterrupted(
      [&] { return calls.open(AT_FDCWD, path, O_RDONLY | O_DIRECTORY | O_CLOEXEC, 0); });
}

int made_and_opened(SystemCalls& calls, const std::string& path) {
  const int folder = open_folder(calls, path);
  if (folder >= 0 || errno != ENOENT) return folder;
  return make_folders(calls, path) ? open_folder(calls, path) : -1;
}

void require_no_nul(const std::string& path) {
  const std::size_t nul = path.find('\0');
  if (nul == std::string::npos) return;
  refuse_writing(path.substr(0, nul), "the path goes on behind a NUL character",
                 "take the NUL away");
}

/// Throws FileError "file.write".
int folder_at(SystemCalls& calls, const std::string& path) {
  require_no_nul(path);
  const int folder = made_and_opened(calls, path);
  if (folder < 0) fail_writing(path, "the folder cannot be opened or made", errno);
  return folder;
}

}  // namespace

OpenFile::OpenFile(OpenFile&& other) noexcept
    : calls_(other.calls_), file_(std::exchange(other.file_, -1)) {}

OpenFile::~OpenFile() {
  const int error = errno;
  (void)close();
  errno = error;
}

bool OpenFile::write(std::string_view bytes) {
  while (!bytes.empty()) {
    const auto n = uninterrupted([&] { return calls_->write(file_, bytes.data(), bytes.size()); });
    if (n == 0) errno = EIO;
    if (n <= 0) return false;
    bytes.remove_prefix(static_cast<std::size_t>(n));
  }
  return true;
}

bool OpenFile::read(std::string& bytes, std::size_t most) {
  std::string chunk(std::min(kChunk, most), '\0');
  while (bytes.size() < most) {
    const std::size_t wanted = std::min(chunk.size(), most - bytes.size());
    const auto n = uninterrupted([&] { return calls_->read(file_, chunk.data(), wanted); });
    if (n < 0) return false;
    if (n == 0) break;
    bytes.append(chunk, 0, static_cast<std::size_t>(n));
  }
  return true;
}

void OpenFile::start_flush() { (void)calls_->start_flush(file_); }

bool OpenFile::flush() {
  return uninterrupted([&] { return calls_->flush(file_); }) == 0;
}

bool OpenFile::lock() {
  return uninterrupted([&] { return calls_->lock(file_); }) == 0;
}

bool OpenFile::status(FileStatus& status) {
  return uninterrupted([&] { return calls_->status_of(file_, status); }) == 0;
}

bool OpenFile::close() {
  const int file = std::exchange(file_, -1);
  return file < 0 || calls_->close(file) == 0 || errno == EINTR;
}

FilePlace place_for_writing(const std::string& path) {
  require_no_nul(path);
  FilePlace place{folder_of(path), path.substr(path.find_last_of('/') + 1)};
  if (place.name.empty() || place.name == "." || place.name == "..") {
    refuse_writing(path, "this names a folder, not a file", "name a file");
  }
  return place;
}

OpenFolder::OpenFolder(SystemCalls& calls, const std::string& path)
    : calls_(calls), path_(path.empty() ? "." : path), folder_(calls, folder_at(calls, path_)) {}

std::string OpenFolder::path_of(const std::string& name) const { return joined_path(path_, name); }

OpenFile OpenFolder::open(const std::string& name, int flags, unsigned mode) const {
  const int more = O_NOFOLLOW | O_NONBLOCK | O_CLOEXEC;
  return {calls_, uninterrupted(
                      [&] { return calls_.open(folder_.descriptor(), name, flags | more, mode); })};
}

bool OpenFolder::status(const std::string& name, FileStatus& status) const {
  return uninterrupted([&] { return calls_.status(folder_.descriptor(), name, status); }) == 0;
}

bool OpenFolder::rename(const std::string& from, const std::string& to) const {
  return uninterrupted([&] { return calls_.rename(folder_.descriptor(), from, to); }) == 0;
}

bool OpenFolder::link(const std::string& from, const std::string& to) const {
  return uninterrupted([&] { return calls_.link(folder_.descriptor(), from, to); }) == 0;
}

bool OpenFolder::remove(const std::string& name) const {
  const int removed = uninterrupted([&] { return calls_.unlink(folder_.descriptor(), name); });
  return removed == 0 || errno == ENOENT;
}

bool OpenFolder::names(std::vector<std::string>& names) const {
  return uninterrupted([&] {
           names.clear();
           return calls_.names(folder_.descriptor(), names);
         }) == 0;
}

bool OpenFolder::flush() const {
  const int flushed = uninterrupted([&] { return calls_.flush(folder_.descriptor()); });
  return flushed == 0 || errno == EINVAL;
}

}  // namespace blockwright
