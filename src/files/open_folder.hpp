#pragma once

#include "open_file.hpp"

#include <string>
#include <vector>

namespace blockwright {

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
