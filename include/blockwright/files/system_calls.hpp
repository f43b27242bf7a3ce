#pragma once

#include <cstddef>
#include <string>
#include <vector>

namespace blockwright {

/// What stands under a name.
enum class FileKind { None, File, Folder, Link, Other };

struct FileStatus {
  FileKind kind = FileKind::None;
  unsigned mode = 0;        ///< who may read and write it, as chmod has it
  unsigned long links = 0;  ///< names under which it is found
};

/// The calls to the operating system that DiskFiles makes, each as thin as can be. A test derives
/// from it and lets calls fail. Not for other uses: DiskFiles is the place to read and write.
///
/// Each gives -1 and sets errno where it fails. `folder` is a descriptor, or AT_FDCWD for the
/// working folder; names are taken from there. Links are followed where it says so, nowhere else.
class SystemCalls {
 public:
  virtual ~SystemCalls() = default;

  /// Follows links unless the flags hold O_NOFOLLOW.
  virtual int open(int folder, const std::string& name, int flags, unsigned mode);
  virtual int close(int file);
  virtual std::ptrdiff_t read(int file, char* to, std::size_t size);
  virtual std::ptrdiff_t write(int file, const char* from, std::size_t size);
  /// Bids the disk start writing, so that a flush after it need not wait as long.
  virtual int start_flush(int file);
  /// Returns when the file, or the folder's list of names, is on the disk.
  virtual int flush(int file);
  /// Locks a file for this descriptor alone, or fails at once with EWOULDBLOCK.
  virtual int lock(int file);
  /// A name that is not there is no failure: its kind is None.
  virtual int status(int folder, const std::string& name, FileStatus& status);
  virtual int status_of(int file, FileStatus& status);
  virtual int rename(int folder, const std::string& from, const std::string& to);
  /// A second name of the same file.
  virtual int link(int folder, const std::string& from, const std::string& to);
  virtual int unlink(int folder, const std::string& name);
  virtual int make_folder(const std::string& path, unsigned mode);
  /// Adds the names in an open folder, in no order.
  virtual int names(int folder, std::vector<std::string>& names);
};

}  // namespace blockwright
