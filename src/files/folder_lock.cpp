#include "blockwright/base/error.hpp"
#include "file_set.hpp"

#include <cerrno>
#include <fcntl.h>
#include <utility>

namespace blockwright {
namespace {

constexpr const char* kLockName = ".blockwright-lock";
constexpr unsigned kLockMode = 0640;
constexpr int kMostTries = 100;

class HeldFolder {
 public:
  HeldFolder(OpenFolder folder, OpenFile file)
      : folder_(std::move(folder)), file_(std::move(file)) {}
  /// While the lock is held nobody else holds a file of this name.
  ~HeldFolder() { (void)folder_.remove(kLockName); }

 private:
  OpenFolder folder_;
  OpenFile file_;
};

[[noreturn]] void refuse_busy(const OpenFolder& folder) {
  throw FileError({Severity::Error, "file.busy", folder.path(),
                   "another run is writing into this folder",
                   "wait until it ends and run again" + std::string(kOtherFolder)});
}

OpenFile lock_file(const OpenFolder& folder) {
  OpenFile file = folder.open(kLockName, O_RDWR | O_CREAT, kLockMode);
  FileStatus status;
  if (!file.is_open() || !file.status(status)) {
    fail_writing(folder.path(), "nothing can be written into this folder", errno);
  }
  if (status.kind != FileKind::File) {
    refuse_writing(folder.path_of(kLockName),
                   "this should be the lock of its folder, and is no file", "remove it");
  }
  return file;
}

/// Whether this process has the lock; not if its holder removed the file in the meantime.
bool has_lock(const OpenFolder& folder, OpenFile& file) {
  FileStatus status;
  if (!file.lock()) {
    if (errno == EWOULDBLOCK) refuse_busy(folder);
    fail_writing(folder.path(), "nothing can be written into this folder", errno);
  }
  return file.status(status) && status.links > 0;
}

}  // namespace

FolderLock held(OpenFolder folder) {
  for (int tried = 0; tried < kMostTries; ++tried) {
    OpenFile file = lock_file(folder);
    if (has_lock(folder, file)) {
      return std::make_shared<HeldFolder>(std::move(folder), std::move(file));
    }
  }
  refuse_busy(folder);
}

}  // namespace blockwright
