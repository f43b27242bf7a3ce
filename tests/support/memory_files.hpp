#pragma once

#include "blockwright/base/error.hpp"
#include "blockwright/files/file_store.hpp"

#include <map>
#include <memory>
#include <mutex>
#include <set>
#include <string>
#include <utility>
#include <vector>

namespace blockwright {

/// Files in memory; every folder is there. Writing fails while `refuses_writing` is set.
class MemoryFiles : public FileStore {
 public:
  explicit MemoryFiles(std::map<std::string, std::string> present = {})
      : files(std::move(present)) {}

  std::map<std::string, std::string> files;
  bool refuses_writing = false;

  std::string read(const std::string& path) override {
    const std::lock_guard lock(*mutex_);
    const auto it = files.find(path);
    if (it == files.end()) {
      throw FileError({Severity::Error, "file.read", path, "no such file", ""});
    }
    return it->second;
  }

  std::vector<std::string> list(const std::string& folder, const std::string& ending,
                                Listing which) override {
    std::vector<std::string> found;
    for (const auto& [path, bytes] : files) {
      const bool below = path.rfind(folder + "/", 0) == 0 && path.ends_with(ending);
      const bool here = path.find('/', folder.size() + 1) == std::string::npos;
      const bool hidden = path[path.find_last_of('/') + 1] == '.';
      const bool wanted = here || which == Listing::WithSubfolders;
      if (below && wanted && hidden == (which == Listing::Hidden)) found.push_back(path);
    }
    return found;
  }

  void write_all(const std::vector<NewFile>& set) override {
    if (refuses_writing && !set.empty()) {
      throw FileError({Severity::Error, "file.write", set.front().path, "the disk is full", ""});
    }
    const std::lock_guard lock(*mutex_);
    for (const NewFile& file : set) files[file.path] = file.bytes;
  }

  FolderLock lock(const std::string& folder) override {
    if (!held->insert(folder).second) {
      throw FileError({Severity::Error, "file.busy", folder, "another run is at work there", ""});
    }
    return {nullptr, [folders = held, folder](void*) { folders->erase(folder); }};
  }

  /// Folders that are held at the moment; a test may put some in.
  std::shared_ptr<std::set<std::string>> held = std::make_shared<std::set<std::string>>();

 private:
  std::shared_ptr<std::mutex> mutex_ = std::make_shared<std::mutex>();  ///< several threads read
};

}  // namespace blockwright
