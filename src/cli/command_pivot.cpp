#include "commands.hpp"
#include "job_options.hpp"

namespace blockwright {

void add_pivot(CLI::App& app, int& exit_code) {
  auto options = std::make_shared<JobOptions>();
  options->job.command = Command::Pivot;
  CLI::App* command = app.add_subcommand(
      "pivot", "Move, split or merge the darts of a client's block and see the result");
  command->add_option("CLIENT", options->job.client, "Client file (see docs/formats.md)");
  add_move_options(*command, options->job);
  add_overlay_option(*command, options->job);
  add_job_options(*command, options->job);
  add_job_file_option(*command, options->job_file);
  command->callback(
      [command, options, &exit_code] { exit_code = run_job_command(*command, *options); });
}

}  // namespace blockwright
