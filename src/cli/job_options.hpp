#pragma once

#include "blockwright/job/job.hpp"

#include <CLI/CLI.hpp>

#include <memory>
#include <string>
#include <string_view>

namespace blockwright {

/// What a command was called with.
struct JobOptions {
  Job job;
  std::string job_file;
};

/// The options that every command has which makes pieces: client, session, output, paper.
void add_job_options(CLI::App& command, Job& job);
/// --dart, --to, --part, --angle, --split and --hold-back.
void add_move_options(CLI::App& command, Job& job);
void add_overlay_option(CLI::App& command, Job& job);

/// --margin and --overlap.
void add_page_options(CLI::App& command, double& margin, double& overlap);
/// --job.
void add_job_file_option(CLI::App& command, std::string& file);
/// Puts the options that were given on the command line into the job once more.
void take_again(CLI::App& command);
/// Reads the job file over the job, if one was named; then the command line's options again: they
/// win. Requires: the command's options are bound to `job`.
template <class AnyJob>
void take_job_file(CLI::App& command, const std::string& file, AnyJob& job,
                   AnyJob (&read)(const std::string&, std::string_view, AnyJob), FileStore& files) {
  if (file.empty()) return;
  job = read(files.read(file), file, job);
  take_again(command);
}

/// Prints the report, and the errors to standard error; gives back the exit code.
int print_result(const JobResult& result);
/// Reads the job file if one was named, runs the job, prints its report and gives back the exit
/// code.
int run_job_command(CLI::App& command, JobOptions& options);

}  // namespace blockwright
