#pragma once

#include "batch_line.hpp"
#include "blockwright/files/file_store.hpp"
#include "blockwright/job/job.hpp"

#include <string>

namespace blockwright {

/// What is the same for all clients of a batch or a stream. May be used by several threads.
class BatchWork {
 public:
  /// Throws what is wrong for everybody, before anybody is worked on: UsageError of an option,
  /// InputError of the style file. `files` must outlive it.
  BatchWork(const Job& each, int jobs, FileStore& files);

  /// One client file to its output and its record; where the record says that nothing has changed
  /// and the output is still there, nothing is made, unless `again`. Throws nothing: a bug in one
  /// client's run must not stop the others.
  [[nodiscard]] BatchLine client(const std::string& path, bool again) const;

  /// The client of a stream's line to a report; its output is written if `writes`, else the line
  /// carries the pattern.
  [[nodiscard]] BatchLine of_stream(const std::string& place, const std::string& text,
                                    bool writes) const;

 private:
  [[nodiscard]] BatchLine made(const Job& job, const std::string& text,
                               const std::string& key) const;

  Job each_;
  std::string style_;  ///< text of the style file
  FileStore& files_;
};

/// The line of a client that was not worked on.
BatchLine refused(const std::string& client, Problem problem);

}  // namespace blockwright
