#pragma once

#include "blockwright/job/options.hpp"

#include <CLI/CLI.hpp>

#include <vector>

namespace blockwright {

/// The options of a job as those of a command of the program.
class CommandOptions {
 public:
  /// The job of `options` must outlive this.
  CommandOptions(CLI::App& command, JobOptions options);

  /// Puts what the command was called with into the job: first the job file, if one was named, then
  /// what was typed, which wins.
  void take(FileStore& files) const;

 private:
  CLI::App* command_;
  JobOptions options_;
  std::vector<const CLI::Option*> typed_;  ///< one for each option
  CLI::Option* job_file_;
};

}  // namespace blockwright
