#pragma once

#include "blockwright/base/problem.hpp"
#include "blockwright/job/file_store.hpp"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace blockwright {

/// Everything that `blockwright draft` needs to know. Each member is an option of the command and a
/// key of a job file under the same name; values are kept as written and judged when the job runs.
struct DraftJob {
  std::string client;                               ///< path of the client file
  std::string session;                              ///< date, or empty for the newest
  std::string out = ".";                            ///< folder for the output
  std::vector<std::string> write = {"svg", "pdf"};  ///< svg, pdf, json
  std::string paper = "a4";
  std::string cut = "toile";    ///< toile, card or net
  std::string unit;             ///< cm or in; empty: as the client file
  std::string report = "text";  ///< text or json
  double allowance = 20.0;      ///< mm at shoulder, side and opening
  double margin = 10.0;         ///< mm at the paper's edge
  double overlap = 10.0;        ///< mm shared by neighbouring tiles
  bool steps = false;           ///< print the draft as instructions
};

/// What a job did.
struct JobResult {
  int exit_code = 0;               ///< 0 done; 1 this client failed; 2 could not start
  std::string output;              ///< the report, for standard output
  Problems problems;               ///< everything found, errors first
  std::vector<std::string> files;  ///< written, in order
};

/// Reads a job file (format "blockwright-job-1", docs/formats.md) over the defaults in `job`.
/// Throws InputError "job.syntax", "job.key", "job.type".
DraftJob read_job(const std::string& text, std::string_view file, DraftJob job);

/// Runs the passes in order: read, fill in, draft, check, lay out, write. Files are written only
/// when every pass is done and no check found an error. Throws nothing but std::logic_error (a
/// bug).
JobResult run_draft(const DraftJob& job, FileStore& files);

/// The JSON Schema of a file kind: "client", "job", "pattern" or "report". Throws UsageError
/// "schema.unknown".
std::string schema_named(std::string_view name);

/// Cause and cure of a problem code, for a person. Throws UsageError "explain.unknown", naming the
/// nearest codes.
std::string explanation_of(std::string_view code);

}  // namespace blockwright
