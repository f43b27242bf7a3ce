#pragma once

#include <string>
#include <vector>

namespace blockwright {

/// Where a job reads and writes files. The disk in the program, memory in tests.
class FileStore {
 public:
  FileStore() = default;
  FileStore(const FileStore&) = delete;
  FileStore& operator=(const FileStore&) = delete;
  FileStore(FileStore&&) = delete;
  FileStore& operator=(FileStore&&) = delete;
  virtual ~FileStore() = default;

  /// The whole content of a file. Throws FileError "file.read" that names it and the reason.
  virtual std::string read(const std::string& path) = 0;

  /// The files of a folder whose names end in `ending`, sorted by name (bytes), as paths that
  /// read() takes; with `deep`, those of its subfolders too. Throws FileError "file.read" if there
  /// is no such folder. Requires of an implementation that read() and write() may be called by
  /// several threads.
  virtual std::vector<std::string> list(const std::string& folder, const std::string& ending,
                                        bool deep) = 0;

  /// Writes a file whole or not at all: an older file of that name stays until the new one is
  /// complete. Missing folders are made. Throws FileError "file.write".
  virtual void write(const std::string& path, const std::string& bytes) = 0;
};

/// Files on disk. New files are readable by their owner and group only: measurements are personal.
class DiskFiles : public FileStore {
 public:
  std::string read(const std::string& path) override;
  std::vector<std::string> list(const std::string& folder, const std::string& ending,
                                bool deep) override;
  void write(const std::string& path, const std::string& bytes) override;
};

}  // namespace blockwright
