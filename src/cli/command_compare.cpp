#include "blockwright/base/error.hpp"
#include "commands.hpp"
#include "job_options.hpp"

namespace blockwright {
namespace {

int run(const CompareJob& job) {
  DiskFiles files;
  if (job.client.empty()) {
    throw UsageError({Severity::Error, "job.value", "CLIENT", "no client file was named",
                      "call `blockwright compare FILE.json`, or name two files"});
  }
  return print_result(run_compare(job, files));
}

}  // namespace

void add_compare(CLI::App& app, int& exit_code) {
  auto job = std::make_shared<CompareJob>();
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
  command->callback([job, &exit_code] { exit_code = run(*job); });
}

}  // namespace blockwright
