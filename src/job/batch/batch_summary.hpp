#pragma once

#include "batch_line.hpp"
#include "blockwright/job/job.hpp"

#include <cstddef>
#include <map>
#include <string>
#include <vector>

namespace blockwright {

/// What was made for a client whose file is not there any more.
struct GoneClient {
  std::string client;                ///< path of the file
  std::vector<std::string> outputs;  ///< names
};

/// Tells each client of a batch as she gets done, then the counts: text for a person, or one JSON
/// object with a line for each client.
class BatchSummary {
 public:
  /// `watch` and `batch` must outlive it.
  BatchSummary(const BatchWatch& watch, const BatchJob& batch, std::size_t total);

  void tell(const BatchLine& line);
  void end(const std::vector<GoneClient>& gone);

 private:
  [[nodiscard]] bool is_json() const { return batch_.each.report == ReportKind::Json; }
  void say(const std::string& text) const;
  void end_text(const std::vector<GoneClient>& gone);
  void end_json(const std::vector<GoneClient>& gone);

  const BatchWatch& watch_;
  const BatchJob& batch_;
  std::size_t total_, done_ = 0;
  std::map<std::string, std::size_t> counts_;  ///< by state
};

}  // namespace blockwright
