#pragma once

#include "blockwright/base/problem.hpp"
#include "blockwright/job/job.hpp"

#include <nlohmann/json_fwd.hpp>

#include <optional>
#include <string>
#include <vector>

namespace blockwright {

/// What a batch tells of one client.
struct BatchLine {
  std::string client;      ///< path of the file, or "line 7" of a stream
  bool failed = false;     ///< nothing was written, `problems` say why
  bool unchanged = false;  ///< what was written before still holds
  RunSummary summary;
  Problems problems;  ///< errors first
  std::vector<std::string> files;
  std::string report, pattern;  ///< of a stream: JSON texts
};

/// The line of a run that is over; its report is dropped.
BatchLine line_of(const std::string& client, JobResult result);

/// "failed", "unchanged", "warned" or "done".
std::string state_of(const BatchLine& line);

/// One line for a person, and one more with the worst problem, if there is any.
std::string line_text(const BatchLine& line);

/// The same with all problems.
nlohmann::ordered_json line_json(const BatchLine& line);
/// The line from that JSON, as text. Nothing if it is none.
std::optional<BatchLine> read_line(const std::string& json);

/// JSON on one line; bytes of a name that are not UTF-8 are replaced.
std::string on_one_line(const nlohmann::ordered_json& json);

}  // namespace blockwright
