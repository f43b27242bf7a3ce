#include "blockwright/base/error.hpp"
#include "commands.hpp"
#include "fit_prompt.hpp"
#include "job_options.hpp"

#include <iostream>

namespace blockwright {
namespace {

struct FitOptions {
  FitJob job;
  std::string job_file;
};

int run(CLI::App& command, FitOptions& options) {
  DiskFiles files;
  take_job_file(command, options.job_file, options.job, read_fit_job, files);
  if (options.job.client.empty()) {
    throw UsageError({Severity::Error, "job.value", "CLIENT", "no client file was named",
                      "call `blockwright fit FILE.json`"});
  }
  if (options.job.ask) ask_for_corrections(options.job, files, std::cin, std::cout);
  return print_result(run_fit(options.job, files));
}

}  // namespace

void add_fit(CLI::App& app, int& exit_code) {
  auto options = std::make_shared<FitOptions>();
  FitJob& job = options->job;
  CLI::App* command = app.add_subcommand(
      "fit", "Show, add or withdraw the corrections of a toile fitting, in the order of work");
  command->add_option("CLIENT", job.client, "Client file (see docs/formats.md)");
  command
      ->add_option("--add", job.add,
                   "Correction in words: \"lower front_neck 1.0\", amount in the file's unit; "
                   "docs/fitting.md lists them; may be repeated")
      ->allow_extra_args(false);
  command->add_option("--as", job.as,
                      "How the amounts were read: length, tuck_depth, per_seam, per_half or "
                      "whole_girth");
  command->add_option("--side", job.side, "both, left or right; default: both");
  command->add_option("--seen", job.seen, "What was seen on the body, in your own words");
  command->add_option("--date", job.date, "Date of the fitting; default: the file's newest");
  command->add_option("--toile", job.toile, "Number of the toile; default: the file's newest");
  command->add_option("--by", job.by, "Who fitted");
  command->add_option("--note", job.note, "A note on the fitting");
  command
      ->add_option("--undo", job.undo, "Number of a correction to withdraw; it stays in the file")
      ->allow_extra_args(false);
  command->add_option("--redo", job.redo, "Number of a withdrawn correction to apply again")
      ->allow_extra_args(false);
  command->add_flag("--list", job.list, "Show the corrections; done in any case");
  command->add_flag("--ask", job.ask, "Ask at the prompt what is seen and by how much");
  command->add_option("--session", job.session,
                      "Date of the session to draft; default: the newest");
  command->add_option("--unit", job.unit, "cm or in for the report; default: as the client file");
  command->add_option("--report", job.report, "text or json; default: text");
  add_job_file_option(*command, options->job_file);
  command->callback([command, options, &exit_code] { exit_code = run(*command, *options); });
}

}  // namespace blockwright
