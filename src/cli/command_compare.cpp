#include "blockwright/base/error.hpp"
#include "commands.hpp"
#include "job_options.hpp"

namespace blockwright {
namespace {

struct CompareOptions {
  CompareJob job;
  std::string job_file;
};

int run(CLI::App& command, CompareOptions& options) {
  DiskFiles files;
  take_job_file(command, options.job_file, options.job, read_compare_job, files);
  if (options.job.client.empty()) {
    throw UsageError({Severity::Error, "job.value", "CLIENT", "no client file was named",
                      "call `blockwright compare FILE.json`, or name two files"});
  }
  return print_result(run_compare(options.job, files));
}

}  // namespace

void add_compare(CLI::App& app, int& exit_code) {
  auto options = std::make_shared<CompareOptions>();
  CompareJob* job = &options->job;
  CLI::App* command = app.add_subcommand(
      "compare", "Lay two versions of a block over each other: sessions, toiles or clients");
  command->add_option("CLIENT", job->client, "Client file");
  command->add_option("OTHER", job->other, "Another client file; default: the same");
  command
      ->add_option("--session", job->sessions,
                   "Date of the older, then of the newer session; default: the last two")
      ->allow_extra_args(false);
  command
      ->add_option("--toile", job->toiles,
                   "Number of the older, then of the newer toile; 0: with all corrections")
      ->allow_extra_args(false);
  command->add_option("--align", job->align,
                      "What lies on what at the centre: waist, bust or neck; default: waist");
  command->add_option("--out", job->out, "Folder for the output; default: the current one");
  command->add_option("--write", job->write, "What to write: svg,pdf; default: svg,pdf")
      ->delimiter(',')
      ->allow_extra_args(false);
  command->add_option("--paper", job->paper, "As for draft; default: a4");
  command->add_option("--unit", job->unit, "cm or in; default: as the client file");
  command->add_option("--report", job->report, "text or json; default: text");
  add_page_options(*command, job->margin, job->overlap);
  add_job_file_option(*command, options->job_file);
  command->callback([command, options, &exit_code] { exit_code = run(*command, *options); });
}

}  // namespace blockwright
