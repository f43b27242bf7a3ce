#pragma once

#include "blockwright/base/error.hpp"
#include "blockwright/job/file_store.hpp"

#include <map>
#include <string>
#include <utility>
#include <vector>

namespace blockwright {

/// Files in memory. Writing fails while `refuses_writing` is set.
class MemoryFiles : public FileStore {
 public:
  explicit MemoryFiles(std::map<std::string, std::string> present = {})
      : files(std::move(present)) {}

  std::map<std::string, std::string> files;
  bool refuses_writing = false;

  std::string read(const std::string& path) override {
    const auto it = files.find(path);
    if (it == files.end()) {
      throw FileError({Severity::Error, "file.read", path, "no such file", ""});
    }
    return it->second;
  }

  std::vector<std::string> list(const std::string& folder, const std::string& ending,
                                bool deep) override {
    std::vector<std::string> found;
    for (const auto& [path, bytes] : files) {
      const bool below = path.rfind(folder + "/", 0) == 0 && path.ends_with(ending);
      const bool here = path.find('/', folder.size() + 1) == std::string::npos;
      if (below && (deep || here)) found.push_back(path);
    }
    return found;
  }

  void write(const std::string& path, const std::string& bytes) override {
    if (refuses_writing) {
      throw FileError({Severity::Error, "file.write", path, "the disk is full", ""});
    }
    files[path] = bytes;
  }
};

}  // namespace blockwright
