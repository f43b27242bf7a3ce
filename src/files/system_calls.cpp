#include "blockwright/files/system_calls.hpp"

#include <cerrno>
#include <dirent.h>
#include <fcntl.h>
#include <sys/file.h>
#include <sys/stat.h>
#include <unistd.h>

namespace blockwright {
namespace {

constexpr unsigned kPermissions = 07777;

FileKind kind_of(mode_t mode) {
  if (S_ISREG(mode)) return FileKind::File;
  if (S_ISDIR(mode)) return FileKind::Folder;
  if (S_ISLNK(mode)) return FileKind::Link;
  return FileKind::Other;
}

FileStatus status_in(const struct stat& info) {
  return {kind_of(info.st_mode), info.st_mode & kPermissions, info.st_nlink};
}

}  // namespace

int SystemCalls::open(int folder, const std::string& name, int flags, unsigned mode) {
  return ::openat(folder, name.c_str(), flags, mode);
}

int SystemCalls::close(int file) { return ::close(file); }

std::ptrdiff_t SystemCalls::read(int file, char* to, std::size_t size) {
  return ::read(file, to, size);
}

std::ptrdiff_t SystemCalls::write(int file, const char* from, std::size_t size) {
  return ::write(file, from, size);
}

int SystemCalls::start_flush(int file) {
#ifdef SYNC_FILE_RANGE_WRITE
  return ::sync_file_range(file, 0, 0, SYNC_FILE_RANGE_WRITE);
#else
  return file < 0 ? -1 : 0;
#endif
}

int SystemCalls::flush(int file) { return ::fsync(file); }

int SystemCalls::lock(int file) { return ::flock(file, LOCK_EX | LOCK_NB); }

int SystemCalls::status(int folder, const std::string& name, FileStatus& status) {
  struct stat info {};
  const int result = ::fstatat(folder, name.c_str(), &info, AT_SYMLINK_NOFOLLOW);
  if (result != 0 && errno != ENOENT) return result;
  status = result == 0 ? status_in(info) : FileStatus{};
  return 0;
}

int SystemCalls::status_of(int file, FileStatus& status) {
  struct stat info {};
  const int result = ::fstat(file, &info);
  if (result == 0) status = status_in(info);
  return result;
}

int SystemCalls::rename(int folder, const std::string& from, const std::string& to) {
  return ::renameat(folder, from.c_str(), folder, to.c_str());
}

int SystemCalls::link(int folder, const std::string& from, const std::string& to) {
  return ::linkat(folder, from.c_str(), folder, to.c_str(), 0);
}

int SystemCalls::unlink(int folder, const std::string& name) {
  return ::unlinkat(folder, name.c_str(), 0);
}

int SystemCalls::make_folder(const std::string& path, unsigned mode) {
  return ::mkdir(path.c_str(), mode);
}

int SystemCalls::names(int folder, std::vector<std::string>& names) {
  const int again = ::openat(folder, ".", O_RDONLY | O_DIRECTORY | O_CLOEXEC);
  if (again < 0) return -1;
  DIR* const list = ::fdopendir(again);
  if (list == nullptr) {
    ::close(again);
    return -1;
  }
  errno = 0;
  while (const dirent* entry = ::readdir(list)) names.emplace_back(entry->d_name);
  const int error = errno;
  ::closedir(list);
  errno = error;
  return error == 0 ? 0 : -1;
}

}  // namespace blockwright
