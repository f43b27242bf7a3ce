#include "blockwright/base/error.hpp"
#include "commands.hpp"
#include "job_options.hpp"
#include "progress_bar.hpp"

#include <iostream>
#include <unistd.h>

namespace blockwright {
namespace {

struct BatchOptions {
  BatchJob batch;
  std::string job_file;
  bool jsonl = false;
  bool quiet = false;
};

void require_source(const BatchOptions& options) {
  const BatchJob& batch = options.batch;
  const bool has_files = !batch.folder.empty() || !batch.clients.empty();
  if (options.jsonl && (has_files || !batch.shard.empty())) {
    throw UsageError({Severity::Error, "job.value", "--jsonl",
                      "clients are read from standard input, not from a folder",
                      "leave out FOLDER and --shard"});
  }
  if (!options.jsonl && !has_files) {
    throw UsageError({Severity::Error, "job.value", "FOLDER", "no folder was named",
                      "call `blockwright batch FOLDER --out DIR`"});
  }
}

JobResult stream(const BatchOptions& options, FileStore& files) {
  const StreamJob job{options.batch.each, options.batch.jobs, !options.batch.each.out.empty()};
  BatchWatch watch;
  watch.say = [](std::string_view text) { std::cout << text << std::flush; };
  return run_stream(job, std::cin, files, watch);
}

JobResult folder(BatchJob batch, bool quiet, FileStore& files) {
  if (batch.each.out.empty()) batch.each.out = ".";
  ProgressBar bar(std::cerr, !quiet && isatty(STDERR_FILENO) != 0);
  BatchWatch watch;
  watch.quiet = quiet;
  watch.say = [&bar](std::string_view text) {
    bar.clear();
    std::cout << text << std::flush;
  };
  watch.progress = [&bar](std::size_t done, std::size_t total, std::size_t failed) {
    bar.draw(done, total, failed);
  };
  return run_batch(batch, files, watch);
}

int run(CLI::App& command, BatchOptions& options) {
  DiskFiles files;
  take_job_file(command, options.job_file, options.batch, read_batch_job, files);
  Job& each = options.batch.each;
  each.command = each.style.empty() ? Command::Draft : Command::Adapt;
  require_source(options);
  return print_result(options.jsonl ? stream(options, files)
                                    : folder(options.batch, options.quiet, files));
}

}  // namespace

void add_batch(CLI::App& app, int& exit_code) {
  auto options = std::make_shared<BatchOptions>();
  BatchJob& batch = options->batch;
  batch.each.out.clear();
  CLI::App* command =
      app.add_subcommand("batch", "Draft (or with --style adapt) every client file of a folder");
  command->add_option("FOLDER", batch.folder, "Folder with client files (*.json)");
  command->add_option("--style", batch.each.style, "Style file: adapt each client to it");
  command->add_option("--jobs", batch.jobs, "Clients worked on at the same time; default: 1");
  command->add_flag("--subfolders", batch.subfolders, "Take the files of subfolders too");
  command->add_flag("--again", batch.again,
                    "Make the output anew even where nothing has changed since the last time");
  command->add_option("--shard", batch.shard,
                      "Only this part of the folder of so many, e.g. 2/8; a file is always in the "
                      "same part");
  command->add_flag("--jsonl", options->jsonl,
                    "Read client objects, one in a line, from standard input and print a report "
                    "object in a line for each; files are written only with --out");
  command->add_flag("--quiet", options->quiet, "Print only who failed, and the counts");
  add_overlay_option(*command, batch.each);
  add_job_options(*command, batch.each);
  add_job_file_option(*command, options->job_file);
  command->callback([command, options, &exit_code] { exit_code = run(*command, *options); });
}

}  // namespace blockwright
