#pragma once

#include "batch_line.hpp"
#include "blockwright/files/file_store.hpp"
#include "blockwright/job/job.hpp"

#include <string>
#include <string_view>

namespace blockwright {

/// One of several parts of a folder, counted from 1. A file belongs to a part by its name alone, so
/// that files which come or go move no other.
struct Shard {
  int part = 1;
  int of = 1;

  /// `name`: of the file, as seen from the folder.
  [[nodiscard]] bool holds(std::string_view name) const;
};

/// "2/8"; nothing is the whole folder. Throws UsageError "job.value".
Shard shard_named(const std::string& words);

/// "deep/ondine.json" of "people/deep/ondine.json" in the folder "people".
std::string_view below(std::string_view folder, std::string_view path);

/// What is the same for all clients of a batch or a stream. May be used by several threads.
class BatchWork {
 public:
  /// Throws what is wrong for everybody, before anybody is worked on: UsageError of an option,
  /// InputError of the style file. `batch` and `files` must outlive it.
  BatchWork(const BatchJob& batch, FileStore& files);

  /// One client file to its output and its stamp; where the stamp says that nothing has changed
  /// and the output is still there, nothing is made, unless it is asked for. Throws nothing: a bug
  /// in one client's run must not stop the others.
  [[nodiscard]] BatchLine client(const std::string& path) const;

  /// The client of a stream's line to a report; its output is written if `out` names a folder, else
  /// the line carries the pattern.
  [[nodiscard]] BatchLine of_stream(const std::string& place, const std::string& text) const;

 private:
  const BatchJob& batch_;
  std::string style_;  ///< text of the style file
  FileStore& files_;
};

/// What a client's output is made of besides the options: the hash of the program's sources, and
/// the texts of style and client file.
struct MadeOf {
  std::string_view sources, style, client;
};
/// A hash of the sources that this program was built of: a program that draws by other rules has
/// another one.
std::string_view sources_hash();
/// The key of the output's stamp.
std::string output_key(Job job, const MadeOf& parts);

/// The line of a client that was not worked on.
BatchLine refused(const std::string& client, const Problem& problem);

}  // namespace blockwright
