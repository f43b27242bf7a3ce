#pragma once

#include "batch_line.hpp"
#include "blockwright/job/job.hpp"
#include "done_record.hpp"

#include <cstddef>
#include <map>
#include <string>
#include <vector>

namespace blockwright {

/// Tells each client of a batch as she gets done, then the counts: text for a person, or one JSON
/// object with a line for each client.
class BatchSummary {
 public:
  /// `watch` must outlive it.
  BatchSummary(const BatchWatch& watch, bool json, std::size_t total);

  void tell(const BatchLine& line);
  /// `gone`: what was made for clients whose file is not there any more.
  void end(const std::vector<DoneRecord>& gone);

 private:
  void say(const std::string& text) const;
  void end_text(const std::vector<DoneRecord>& gone);
  void end_json(const std::vector<DoneRecord>& gone);

  const BatchWatch& watch_;
  bool json_;
  std::size_t total_, done_ = 0;
  std::map<std::string, std::size_t> counts_;  ///< by state
};

}  // namespace blockwright
