#pragma once

#include "blockwright/files/system_calls.hpp"

#include <cerrno>
#include <string>
#include <string_view>
#include <vector>

namespace blockwright {

/// What the system could not do with a file, as a FileError "file.read": `what` and the reason that
/// `error` (of errno) gives, with its cure.
[[noreturn]] void fail_reading(const std::string& path, const std::string& what, int error);

/// The same as a FileError "file.write". Only while older files are as they were: it says so.
[[noreturn]] void fail_writing(const std::string& path, const std::string& what, int error);

/// A file that is refused before anything is done to it.
[[noreturn]] void refuse_reading(const std::string& path, const std::string& what,
                                 const std::string& cure);
[[noreturn]] void refuse_writing(const std::string& path, const std::string& what,
                                 const std::string& cure);

/// The result of a call, made again for as long as a signal interrupts it.
template <class Call>
auto uninterrupted(Call&& call) {
  auto result = call();
  while (result < 0 && errno == EINTR) result = call();
  return result;
}

/// A descriptor that is closed when it goes out of scope. What fails says so with errno.
class OpenFile {
 public:
  OpenFile(SystemCalls& calls, int file) : calls_(&calls), file_(file) {}
  OpenFile(const OpenFile&) = delete;
  OpenFile& operator=(const OpenFile&) = delete;
  OpenFile(OpenFile&& other) noexcept;
  OpenFile& operator=(OpenFile&& other) = delete;
  /// Leaves errno as it is.
  ~OpenFile();

  [[nodiscard]] bool is_open() const { return file_ >= 0; }
  [[nodiscard]] int descriptor() const { return file_; }

  bool write(std::string_view bytes);
  /// The rest of the file, at most `most` bytes of it.
  bool read(std::string& bytes, std::size_t most);
  /// Bids the disk begin; whether it does is of no matter.
  void start_flush();
  bool flush();
  bool lock();
  bool status(FileStatus& status);
  /// After an interruption the descriptor is gone all the same, and what was flushed is safe.
  bool close();

 private:
  SystemCalls* calls_;
  int file_;
};

/// A path taken apart: the folder, and the name in it.
struct FilePlace {
  std::string folder;  ///< "." where the path names none
  std::string name;
};

/// Throws FileError "file.write" if the path names no file: an empty name, "." or "..", a NUL in
/// it.
FilePlace place_for_writing(const std::string& path);

/// A folder that is open. Names are found from its descriptor, so that whatever happens to its path
/// meanwhile, nothing outside it is touched. Calls that fail say so with errno.
class OpenFolder {
 public:
  /// Opens a folder and makes what is missing of it. Throws FileError "file.write".
  OpenFolder(SystemCalls& calls, const std::string& path);

  /// As its files were named by the caller.
  [[nodiscard]] const std::string& path() const { return path_; }
  [[nodiscard]] std::string path_of(const std::string& name) const;

  /// Opens a file in it as `flags` of <fcntl.h> say, never through a link and never waiting for a
  /// pipe.
  [[nodiscard]] OpenFile open(const std::string& name, int flags, unsigned mode = 0) const;
  bool status(const std::string& name, FileStatus& status) const;
  bool rename(const std::string& from, const std::string& to) const;
  bool link(const std::string& from, const std::string& to) const;
  /// True also where there is no such file.
  bool remove(const std::string& name) const;
  bool names(std::vector<std::string>& names) const;
  /// A file system that cannot flush a folder is taken to do so by itself.
  bool flush() const;

 private:
  SystemCalls& calls_;
  std::string path_;
  OpenFile folder_;
};

}  // namespace blockwright
