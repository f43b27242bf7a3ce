#pragma once

#include "blockwright/job/job.hpp"

#include <CLI/CLI.hpp>

#include <memory>
#include <string>

namespace blockwright {

/// What a command was called with.
struct JobOptions {
  Job job;
  std::string job_file;
};

/// The options that every command has which makes pieces: client, session, output, paper.
void add_job_options(CLI::App& command, JobOptions& options);
/// --dart, --to, --part, --split and --hold-back.
void add_move_options(CLI::App& command, JobOptions& options);
void add_overlay_option(CLI::App& command, JobOptions& options);

/// Reads the job file if one was named (the command line wins), runs the job, prints its report and
/// gives back the exit code.
/// Prints the report, and the errors to standard error; gives back the exit code.
int print_result(const JobResult& result);
int run_job_command(const CLI::App& command, const JobOptions& options);

}  // namespace blockwright
