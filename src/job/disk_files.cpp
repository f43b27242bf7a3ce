#include "blockwright/base/error.hpp"
#include "blockwright/job/file_store.hpp"

#include <algorithm>
#include <cerrno>
#include <cstring>
#include <fcntl.h>
#include <filesystem>
#include <string>
#include <sys/stat.h>
#include <system_error>
#include <unistd.h>
#include <vector>

namespace blockwright {
namespace {

constexpr std::size_t kChunk = 1 << 16;
/// A client or job file is a page of numbers; more than this is some other file.
constexpr std::size_t kLargestInput = std::size_t{16} << 20;
constexpr mode_t kOwnerAndGroup = 0640;

[[noreturn]] void fail(const char* code, const std::string& path, const std::string& what,
                       const std::string& hint) {
  throw FileError({Severity::Error, code, path, what, hint});
}

std::string reason(int error) { return std::generic_category().message(error); }

/// A file descriptor that is closed when it goes out of scope.
class Descriptor {
 public:
  explicit Descriptor(int fd) : fd_(fd) {}
  Descriptor(const Descriptor&) = delete;
  Descriptor& operator=(const Descriptor&) = delete;
  Descriptor(Descriptor&&) = delete;
  Descriptor& operator=(Descriptor&&) = delete;
  ~Descriptor() { close(); }
  [[nodiscard]] int get() const { return fd_; }
  int close() {
    const int result = fd_ >= 0 ? ::close(fd_) : 0;
    fd_ = -1;
    return result;
  }

 private:
  int fd_;
};

bool write_all(int fd, const std::string& bytes) {
  std::size_t done = 0;
  while (done < bytes.size()) {
    const ssize_t n = ::write(fd, bytes.data() + done, bytes.size() - done);
    if (n < 0 && errno == EINTR) continue;
    if (n <= 0) return false;
    done += static_cast<std::size_t>(n);
  }
  return true;
}

void make_folder_of(const std::string& path) {
  const auto folder = std::filesystem::path(path).parent_path();
  if (folder.empty()) return;
  std::error_code error;
  std::filesystem::create_directories(folder, error);
  if (error) {
    fail("file.write", folder.string(), "the folder cannot be made: " + error.message(),
         "choose another folder with --out");
  }
}

}  // namespace

std::string DiskFiles::read(const std::string& path) {
  const Descriptor file(::open(path.c_str(), O_RDONLY | O_CLOEXEC));
  if (file.get() < 0) {
    fail("file.read", path, "the file cannot be opened: " + reason(errno),
         "check the name and the folder");
  }
  std::string bytes;
  std::string chunk(kChunk, '\0');
  for (;;) {
    const ssize_t n = ::read(file.get(), chunk.data(), chunk.size());
    if (n < 0 && errno == EINTR) continue;
    if (n < 0) {
      fail("file.read", path, "the file cannot be read: " + reason(errno),
           "check that it is a file and that you may read it");
    }
    if (n == 0) return bytes;
    bytes.append(chunk, 0, static_cast<std::size_t>(n));
    if (bytes.size() > kLargestInput) {
      fail("file.read", path, "the file is larger than 16 MiB", "this is no client or job file");
    }
  }
}

std::vector<std::string> DiskFiles::list(const std::string& folder, const std::string& ending,
                                         bool deep) {
  namespace fs = std::filesystem;
  std::error_code error;
  std::vector<std::string> found;
  const auto take = [&](const fs::directory_entry& entry) {
    const std::string path = entry.path().string();
    if (path.ends_with(ending) && entry.is_regular_file()) found.push_back(path);
  };
  if (deep) {
    for (auto it = fs::recursive_directory_iterator(folder, error);
         !error && it != fs::recursive_directory_iterator(); it.increment(error)) {
      take(*it);
    }
  } else {
    for (auto it = fs::directory_iterator(folder, error); !error && it != fs::directory_iterator();
         it.increment(error)) {
      take(*it);
    }
  }
  if (error) {
    fail("file.read", folder, "the folder cannot be read: " + error.message(),
         "check the name of the folder");
  }
  std::sort(found.begin(), found.end());
  return found;
}

void DiskFiles::write(const std::string& path, const std::string& bytes) {
  make_folder_of(path);
  const std::string beside = path + ".part-" + std::to_string(::getpid());
  Descriptor file(::open(beside.c_str(), O_WRONLY | O_CREAT | O_TRUNC | O_NOFOLLOW | O_CLOEXEC,
                         kOwnerAndGroup));
  const char* hint =
      "check the free space and that you may write there; an older file of that name is unchanged";
  if (file.get() < 0) {
    fail("file.write", path, "the file cannot be made: " + reason(errno), hint);
  }
  const bool written = write_all(file.get(), bytes) && ::fsync(file.get()) == 0;
  const int error = written ? 0 : errno;
  const bool closed = file.close() == 0;
  if (written && closed && ::rename(beside.c_str(), path.c_str()) == 0) return;
  const std::string why = reason(error != 0 ? error : errno);
  ::unlink(beside.c_str());
  fail("file.write", path, "the file cannot be written: " + why, hint);
}

}  // namespace blockwright
