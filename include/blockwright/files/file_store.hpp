#pragma once

#include "blockwright/files/system_calls.hpp"

#include <atomic>
#include <functional>
#include <memory>
#include <mutex>
#include <set>
#include <string>
#include <string_view>
#include <vector>

namespace blockwright {

/// A file to be written, complete in memory.
struct NewFile {
  std::string path;
  std::string bytes;
};

/// Which files of a folder are meant.
enum class Listing {
  Folder,          ///< its own, but none whose name begins with a dot
  WithSubfolders,  ///< those of its subfolders too
  Hidden,          ///< its own whose names begin with a dot
};

/// What a listing leaves out although its name asks for it.
struct NotRead {
  std::string path;
  std::string reason;  ///< "a link that leads nowhere"

  bool operator==(const NotRead&) const = default;
};

/// What the hint of a FileError adds where another folder is a way out.
inline constexpr std::string_view kOtherFolder = ", or choose another folder with --out";

/// Does what is to be done to a file that has one place, such as a client file: no FileError of it
/// advises another folder.
void in_its_place(const std::function<void()>& work);

/// A folder is held as long as this lives.
using FolderLock = std::shared_ptr<void>;

/// Where a job reads and writes files. The disk in the program, memory in tests.
class FileStore {
 public:
  virtual ~FileStore() = default;

  /// The whole content of a file. Throws FileError "file.read" that names it and the reason.
  virtual std::string read(const std::string& path) = 0;

  /// The files of a folder whose names end in `ending`, sorted by path (bytes), as paths that
  /// read() takes. Throws FileError "file.read" if there is no such folder. Requires of an
  /// implementation that read() and write_all() may be called by several threads.
  virtual std::vector<std::string> list(const std::string& folder, const std::string& ending,
                                        Listing which) = 0;

  /// What list() leaves out although its name ends in `ending`, sorted by path: folders, pipes,
  /// devices, links that lead to no file; and of subfolders those that cannot be opened, and links
  /// to folders, which are not followed. A store of files alone has nothing of the kind.
  virtual std::vector<NotRead> not_read(const std::string& /*folder*/,
                                        const std::string& /*ending*/, Listing /*which*/) {
    return {};
  }

  /// Writes a set of files, all of them or none: older files of their names stay until every new
  /// one is complete, and are as they were if anything fails. Missing folders are made.
  /// Requires: all lie in one folder and no name comes twice. Throws FileError "file.write".
  virtual void write_all(const std::vector<NewFile>& files) = 0;

  /// A set of one.
  void write(const std::string& path, const std::string& bytes) { write_all({{path, bytes}}); }

  /// Holds a folder, which is made if it is missing, against other runs that ask for it: for a run
  /// that writes many sets and takes what stands there into account. Whoever only writes one set
  /// need not. Throws FileError "file.busy" while another holds it, "file.write" if it cannot be
  /// held.
  virtual FolderLock lock(const std::string& folder) = 0;
};

/// Files on disk.
///
/// 1. Files are made with mode 0640, less the umask and what an older file of the name denies;
///    folders with 0750. Measurements are personal.
/// 2. Only regular files are read or replaced. A link of an output's name is refused, wherever it
///    leads; a folder that is named may be reached through links.
/// 3. A process killed while it writes a set leaves files beside (src/files/file_set.hpp). The next
///    that writes into the folder or holds it finishes: older files are put back if the set was
///    incomplete, and what is left beside is removed. Files beside of live processes are left
///    alone, and so is every other file.
/// 4. After a power failure each file is whole, old or new; on file systems that keep the order of
///    a folder's changes (ext4, XFS, Btrfs), the set is.
class DiskFiles : public FileStore {
 public:
  DiskFiles() = default;
  /// With other calls than the system's own, for tests. They must outlive it.
  explicit DiskFiles(SystemCalls& calls) : calls_(calls) {}

  std::string read(const std::string& path) override;
  std::vector<std::string> list(const std::string& folder, const std::string& ending,
                                Listing which) override;
  std::vector<NotRead> not_read(const std::string& folder, const std::string& ending,
                                Listing which) override;
  void write_all(const std::vector<NewFile>& files) override;
  FolderLock lock(const std::string& folder) override;

 private:
  SystemCalls own_;
  SystemCalls& calls_ = own_;
  std::atomic<unsigned> sets_{0};  ///< begun so far: names the files beside
  std::mutex clearing_;
  std::set<std::string> cleared_;  ///< folders where nothing of dead processes is left
};

}  // namespace blockwright
