#include "blockwright/base/error.hpp"
#include "commands.hpp"
#include "job_options.hpp"

namespace blockwright {
namespace {

struct BatchOptions {
  BatchJob batch;
  JobOptions each;
};

int run(BatchOptions options) {
  if (options.batch.folder.empty()) {
    throw UsageError({Severity::Error, "job.value", "FOLDER", "no folder was named",
                      "call `blockwright batch FOLDER --out DIR`"});
  }
  options.batch.each = options.each.job;
  if (!options.batch.each.style.empty()) options.batch.each.command = Command::Adapt;
  DiskFiles files;
  return print_result(run_batch(options.batch, files));
}

}  // namespace

void add_batch(CLI::App& app, int& exit_code) {
  auto options = std::make_shared<BatchOptions>();
  CLI::App* command =
      app.add_subcommand("batch", "Draft (or with --style adapt) every client file of a folder");
  command->add_option("FOLDER", options->batch.folder, "Folder with client files (*.json)");
  command->add_option("--style", options->each.job.style, "Style file: adapt each client to it");
  command->add_option("--jobs", options->batch.jobs,
                      "Clients worked on at the same time; default: 1");
  command->add_flag("--subfolders", options->batch.subfolders, "Take the files of subfolders too");
  add_overlay_option(*command, options->each);
  add_job_options(*command, options->each);
  command->remove_option(command->get_option("--job"));
  command->callback([options, &exit_code] { exit_code = run(*options); });
}

}  // namespace blockwright
