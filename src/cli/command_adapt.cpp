#include "commands.hpp"
#include "job_options.hpp"

namespace blockwright {

void add_adapt(CLI::App& app, int& exit_code) {
  auto options = std::make_shared<JobOptions>();
  options->job.command = Command::Adapt;
  CLI::App* command = app.add_subcommand(
      "adapt", "Make a garment's pieces from a client's block by the steps of a style file");
  command->add_option("CLIENT", options->job.client, "Client file (see docs/formats.md)");
  command->add_option("STYLE", options->job.style, "Style file (see docs/formats.md)");
  add_overlay_option(*command, options->job);
  add_job_options(*command, options->job);
  add_job_file_option(*command, options->job_file);
  command->callback(
      [command, options, &exit_code] { exit_code = run_job_command(*command, *options); });
}

}  // namespace blockwright
