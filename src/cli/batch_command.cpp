#include "blockwright/base/error.hpp"
#include "commands.hpp"
#include "progress_bar.hpp"

#include <iostream>
#include <unistd.h>

namespace blockwright {
namespace {

void require_source(const BatchJob& batch) {
  const bool has_files = !batch.folder.empty() || !batch.clients.empty();
  if (batch.jsonl && (has_files || !batch.shard.empty())) {
    throw UsageError({Severity::Error, "job.value", "--jsonl",
                      "clients are read from standard input, not from a folder",
                      "leave out FOLDER and --shard"});
  }
  if (!batch.jsonl && !has_files) {
    throw UsageError({Severity::Error, "job.value", "FOLDER", "no folder was named",
                      "call `blockwright batch FOLDER --out DIR`"});
  }
}

JobResult run_lines(const BatchJob& batch, FileStore& files) {
  BatchWatch watch;
  watch.say = [](std::string_view text) { std::cout << text << std::flush; };
  return run_stream(batch, std::cin, files, watch);
}

JobResult run_folder(BatchJob& batch, FileStore& files) {
  if (batch.each.out.empty()) batch.each.out = ".";
  ProgressBar bar(std::cerr, !batch.quiet && isatty(STDERR_FILENO) != 0);
  BatchWatch watch;
  watch.say = [&bar](std::string_view text) {
    bar.clear();
    std::cout << text << std::flush;
  };
  watch.progress = [&bar](std::size_t done, std::size_t total, std::size_t failed) {
    bar.draw(done, total, failed);
  };
  return run_batch(batch, files, watch);
}

}  // namespace

JobResult run_batch_command(BatchJob& batch, FileStore& files) {
  batch.each.command = batch.each.style.empty() ? Command::Draft : Command::Adapt;
  require_source(batch);
  return batch.jsonl ? run_lines(batch, files) : run_folder(batch, files);
}

}  // namespace blockwright
