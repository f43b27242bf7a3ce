#include "commands.hpp"
#include "job_options.hpp"

namespace blockwright {

void add_draft(CLI::App& app, int& exit_code) {
  auto options = std::make_shared<JobOptions>();
  CLI::App* command = app.add_subcommand(
      "draft", "Draft the front and back block from a client's newest tape session");
  command->add_option("CLIENT", options->job.client, "Client file (see docs/formats.md)");
  add_job_options(*command, options->job);
  add_job_file_option(*command, options->job_file);
  command->add_flag("--steps", options->job.steps,
                    "Print the draft as steps for pencil, ruler and compass");
  command->callback(
      [command, options, &exit_code] { exit_code = run_job_command(*command, *options); });
}

}  // namespace blockwright
