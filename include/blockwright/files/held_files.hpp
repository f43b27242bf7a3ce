#pragma once

#include "blockwright/files/file_store.hpp"

#include <memory>
#include <string>
#include <utility>
#include <vector>

namespace blockwright {

/// Lets a run read one text that is at hand already, and holds what it writes back, so that more
/// can be written in the same set.
class HeldFiles : public FileStore {
 public:
  /// `files` must outlive it.
  HeldFiles(FileStore& files, std::string path, std::string text)
      : files_(files), path_(std::move(path)), text_(std::move(text)) {}

  std::string read(const std::string& path) override {
    return path == path_ ? text_ : files_.read(path);
  }
  std::vector<std::string> list(const std::string& folder, const std::string& ending,
                                Listing which) override {
    return files_.list(folder, ending, which);
  }
  void write_all(const std::vector<NewFile>& set) override {
    held.insert(held.end(), set.begin(), set.end());
  }
  std::unique_ptr<FolderLock> lock(const std::string& folder) override {
    return files_.lock(folder);
  }

  std::vector<NewFile> held;

 private:
  FileStore& files_;
  std::string path_, text_;
};

}  // namespace blockwright
